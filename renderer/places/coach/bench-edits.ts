/** What a coach does on the bench, as steps of the deck's history and words to read out. */
import type { CaseId } from "../../../core/cases/case-ids";
import type { WholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type { Deck } from "../../../core/deck/deck";
import {
  addCase,
  addCases,
  changeCase,
  changeDeck,
  type DeckCasePatch,
  type DeckPatch,
  moveCase,
  removeCase,
} from "../../../core/deck/deck-edits";
import type { DeckStep } from "../../state/deck-bench.svelte";
import {
  caseInWords,
  placeInDeck,
  type StepLabel,
} from "../../state/deck-words";

/** Fields that are written letter by letter. */
const TEXTS: readonly string[] = ["name", "description", "message", "note"];

function onlyKey<Patch extends object>(patch: Patch): keyof Patch & string {
  return Object.keys(patch)[0] as keyof Patch & string;
}

/** The step that puts a case in, at a place or at the end. */
export function addStep(id: CaseId, at?: number): DeckStep {
  return { label: "add", edit: (deck) => addCase(deck, id, at) };
}

/** The step that puts many cases in at the end, all at once. */
export function addAllStep(ids: readonly CaseId[]): DeckStep {
  return { label: "add-all", edit: (deck) => addCases(deck, ids) };
}

/** The step that takes a case out. */
export function removeStep(id: CaseId): DeckStep {
  return { label: "remove", edit: (deck) => removeCase(deck, id) };
}

/** The step that moves a case to a place, wherever it is. */
export function moveStep(id: CaseId, to: number): DeckStep {
  return {
    label: "move",
    edit: (deck) => moveCase(deck, placeOf(deck, id), to),
  };
}

/** The step that a case dropped before so many rows makes; undefined where it is there already. */
export function dropStep(
  deck: Deck,
  id: CaseId,
  gap: number,
): DeckStep | undefined {
  const from = placeOf(deck, id);
  if (from < 0) return addStep(id, gap);
  if (gap === from || gap === from + 1) return undefined;
  return moveStep(id, gap > from ? gap - 1 : gap);
}

/** The step that changes one field of the deck. */
export function deckStep(patch: DeckPatch): DeckStep {
  const label = onlyKey(patch);
  return {
    label,
    edit: (deck) => changeDeck(deck, patch),
    joins: TEXTS.includes(label),
  };
}

/** The step that changes one field of a case. */
export function caseStep(id: CaseId, patch: DeckCasePatch): DeckStep {
  const field = onlyKey(patch);
  const label: StepLabel = `${field} ${id}`;
  return {
    label,
    edit: (deck) => changeCase(deck, id, patch),
    joins: TEXTS.includes(field),
  };
}

/** A case's place in a deck, counted from 0; −1 where it is not in it. */
export function placeOf({ cases }: Pick<Deck, "cases">, id: CaseId): number {
  return cases.findIndex((entry) => entry.case === id);
}

/** The number that somebody wrote, with a point or a comma; undefined where it is none. */
export function numberIn(text: string): number | undefined {
  const written = text.trim().replace(",", ".");
  return /^\d+(?:\.\d*)?$/.test(written) ? Number(written) : undefined;
}

/** What has become of the deck after many cases came in: "21 cases put in, 24 in all." */
export function addedSaid(
  count: number,
  { cases }: Pick<Deck, "cases">,
): string {
  return `${count} cases put in, ${cases.length} in all.`;
}

/** What has become of a case, to be read out: "Under its home, white on the front (corner): now third of 6." */
export function placeSaid(
  deck: Deck,
  id: CaseId,
  naming: WholeCubeNaming,
): string {
  const place = placeOf(deck, id);
  const title = caseInWords(id, naming);
  return place < 0
    ? `${title}: taken out, ${deck.cases.length} left.`
    : `${title}: now ${placeInDeck(place)} of ${deck.cases.length}.`;
}
