/** What the page of sheets says about its choices. */
import type { Opening } from "../../../../core/memory/variant-opening";
import type { PaperName } from "../../../../core/paper/paper-size";
import type { AnswerPlace } from "../../../../core/paper/practice-sheet";
import type { SheetKind } from "../../../../core/paper/sheet";
import type { TurnsTold } from "../../../../core/paper/shown-case";
import type { SheetColours } from "../../../state/sheets/sheet-desk.svelte";

/** A kind of sheet, and what it is for. */
export const KIND_WORDS: Readonly<
  Record<SheetKind, { readonly name: string; readonly note: string }>
> = {
  cases: {
    name: "With the ways",
    note: "to keep beside the cube, with boxes to tick for a week",
  },
  practice: {
    name: "To answer by hand",
    note: "positions to set up, room for turns and times",
  },
  overview: {
    name: "At a glance",
    note: "the whole deck, small, to hang up",
  },
  certificate: {
    name: "Certificate",
    note: "what a learner knows by heart, in numbers",
  },
};

/** Each paper's name. */
export const PAPER_WORDS: Readonly<Record<PaperName, string>> = {
  a4: "A4",
  letter: "Letter",
};

/** Each way of showing colours. */
export const COLOUR_WORDS: Readonly<Record<SheetColours, string>> = {
  greys: "greys with letters",
  own: "the cube’s own",
  "any-vision": "told apart by everybody",
};

/** How turns are told. */
export const TOLD_WORDS: Readonly<Record<TurnsTold, string>> = {
  both: "letters and words",
  words: "words alone",
};

/** Where answers are. */
export const ANSWER_WORDS: Readonly<Record<AnswerPlace, string>> = {
  end: "at the end",
  back: "on the back of each page",
  none: "none",
};

/** How far positions are opened up. */
export const OPENING_WORDS: Readonly<Record<Opening, string>> = {
  front: "home in front, piece lined up",
  turned: "any home, piece turned away",
  anywhere: "from any side",
};

/** How many of a deck's cases a sheet takes: "All 12 cases", "Both cases", "3 of 12 cases". */
export function casesInWords(wanted: number, all: number): string {
  if (wanted === 0) return "No cases";
  if (wanted < all) return `${wanted} of ${all} cases`;
  if (all === 1) return "Its one case";
  return all === 2 ? "Both cases" : `All ${all} cases`;
}

/** "1 page", "3 pages". */
export function pagesInWords(pages: number): string {
  return pages === 1 ? "1 page" : `${pages} pages`;
}
