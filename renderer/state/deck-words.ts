/**
 * What a deck says and what changes in it, as people read it: labels of its
 * choices, names of the steps that can be undone, and differences between two
 * versions as sentences.
 */
import type { CaseId } from "../../core/cases/case-ids";
import { caseTitle } from "../../core/cases/case-words";
import { stageName, stageNames } from "../../core/cases/stage-words";
import type { WholeCubeNaming } from "../../core/cases/whole-cube-naming";
import { stageOfCase } from "../../core/cases/case-table";
import type { Stage } from "../../core/cases/stage";
import type { Hold } from "../../core/cases/variant";
import type { Deck, DeckCase, DeckWay } from "../../core/deck/deck";
import type { CASE_FIELDS, DeckChange } from "../../core/deck/deck-changes";
import { turnsOfDeckWay } from "../../core/deck/way-of-deck";
import { dayNumber } from "../../core/memory/local-day";
import { listInWords } from "../../core/notation/sentence";
import {
  SCHOOL_NAMES,
  wayInWords,
  wayOnOneLine,
} from "../components/way-words";
import { dateWithYear } from "../components/time-words";
import { ANSWER_WAY_NAMES } from "./practise/answer-way-names";

type CaseField = (typeof CASE_FIELDS)[number];
type DeckField = Exclude<keyof Deck, "id" | "cases" | "extra">;

/** What a step is called; one about a case carries the case, so that steps of two cases never join. */
export type StepLabel =
  | DeckField
  | "add"
  | "add-all"
  | "remove"
  | "move"
  | "file"
  | `${CaseField} ${CaseId}`;

const STEP_WORDS: Readonly<
  Record<
    DeckField | CaseField | "add" | "add-all" | "remove" | "move" | "file",
    string
  >
> = {
  name: "name",
  description: "description",
  message: "message",
  note: "note",
  hold: "hold",
  newPerRound: "new cases a round",
  stages: "order of the stages",
  ceiling: "weekly class",
  add: "case put in",
  "add-all": "cases put in",
  remove: "case taken out",
  move: "order",
  file: "what the file changed",
  target: "target",
  way: "way",
  placed: "others at home",
  home: "where home is",
  lining: "lined up or not",
  pieces: "marked or not",
  answerWays: "ways of answering",
};

/** A step in a few words: "target", "case taken out". */
export function stepInWords(label: StepLabel): string {
  const kind = label.split(" ", 1)[0] as keyof typeof STEP_WORDS;
  return STEP_WORDS[kind];
}

/** What the words depend on: whose colours, and whether turns are told in words alone. */
export interface DeckReading {
  readonly naming: WholeCubeNaming;
  readonly notation: "both" | "words";
}

/** How many cases: "a deck of 6". */
export function deckSize({ cases }: Pick<Deck, "cases">): string {
  return cases.length === 0 ? "an empty deck" : `a deck of ${cases.length}`;
}

/** How many cases: "1 case", "6 cases". */
export function caseCount(count: number): string {
  return count === 1 ? "1 case" : `${count} cases`;
}

const HOME = {
  undefined: "in front until the case is kept",
  front: "always in front",
  anywhere: "anywhere",
} as const;
const LINING = {
  undefined: "turned away once the case settles",
  "lined-up": "always lined up",
  "turned-away": "turned away",
} as const;
const PIECES = {
  undefined: "marked until the case is kept",
  marked: "always marked",
  unmarked: "not marked",
} as const;

/** Stages whose titles no other stage has. */
const TOLD_BY_TITLE: readonly Stage[] = [
  "pairs",
  "last-layer-turned",
  "last-layer-placed",
];

/** What a case is one of, where another stage may have one of the same title. */
function kindOfCase(stage: Stage): string | undefined {
  if (stage === "first-layer-edges") return "edge";
  if (stage === "first-layer-corners") return "corner";
  return TOLD_BY_TITLE.includes(stage)
    ? undefined
    : stageNames(stage).short.toLowerCase();
}

/** A case among others: its title, and what it is one of where that is not seen. */
export function caseInWords(id: CaseId, naming: WholeCubeNaming): string {
  const title = caseTitle(id, naming);
  const kind = kindOfCase(stageOfCase(id));
  return kind === undefined ? title : `${title} (${kind})`;
}

function wayWords(
  id: CaseId,
  way: DeckWay | undefined,
  { naming, notation }: DeckReading,
): string {
  if (way === undefined) return "left to the app";
  const hand =
    way.kind === "turns" || way.hand === undefined ? "" : `, ${way.hand} hand`;
  const turns = turnsOfDeckWay(id, way, naming.hold, "right");
  if (way.kind === "school" || turns === undefined)
    return way.kind === "school"
      ? `${SCHOOL_NAMES[way.school].toLowerCase()}${hand}`
      : `“${way.turns}”`;
  return `“${notation === "words" ? wayInWords(turns) : wayOnOneLine(turns)}”`;
}

/** A text in quotation marks; one that is not there in words. */
function quoted(text: string | undefined): string {
  return text === undefined || text === "" ? "nothing" : `“${text}”`;
}

const COUNT_WORDS = ["none", "one", "two", "three"] as const;

/** How many other pieces are home: "as many as can be", "two". */
export function placedInWords(placed: DeckCase["placed"]): string {
  return placed === undefined ? "as many as can be" : COUNT_WORDS[placed];
}

/** What a deck of another hold means for what is remembered. */
export const OTHER_HOLD =
  "What is known of a case held the other way does not count there, so such a case begins new.";

function holdWords(hold: Hold | undefined): string {
  if (hold === undefined) return "as the learner likes";
  return hold === "up" ? "first layer up" : "first layer down";
}

/** Stages in their order: "first-layer corners, then first-layer edges". */
export function stagesInWords(stages: readonly Stage[] | undefined): string {
  return stages === undefined
    ? "the order of the cases"
    : stages.map((stage) => stageName(stage).toLowerCase()).join(", then ");
}

/** A day of a deck as people write it: "1 February 2027". */
export function deckDay(day: string): string {
  return dateWithYear(
    dayNumber(Math.floor(Date.parse(`${day}T00:00:00Z`) / 86_400_000)),
  );
}

/** A ceiling: "each case comes at least every 7 days until 1 February 2027". */
export function ceilingInWords(ceiling: Deck["ceiling"]): string {
  if (ceiling === undefined) return "as memory says";
  const { everyDays, until } = ceiling;
  const often = everyDays === 1 ? "every day" : `every ${everyDays} days`;
  return `each case comes at least ${often} until ${deckDay(until)}`;
}

function answerWaysInWords(ways: DeckCase["answerWays"]): string {
  return ways === undefined
    ? "all"
    : listInWords(ways.map((way) => ANSWER_WAY_NAMES[way]));
}

const PLACE_WORDS = ["first", "second", "third", "fourth", "fifth", "sixth"];

/** A place in a deck counted from 0, after "now": "third", "number 12". */
export function placeInDeck(place: number): string {
  return PLACE_WORDS[place] ?? `number ${place + 1}`;
}

function deckFieldSentence(
  change: Extract<DeckChange, { readonly code: "deck-field" }>,
): string {
  switch (change.field) {
    case "name":
      return `It is now called ${quoted(change.after)}; it was ${quoted(change.before)}.`;
    case "description":
      return `Its description is now ${quoted(change.after)}; it was ${quoted(change.before)}.`;
    case "message":
      return `Its message to the learner is now ${quoted(change.after)}; it was ${quoted(change.before)}.`;
    case "note":
      return "The author’s own note is another.";
    case "hold":
      return `Hold: ${holdWords(change.after)}; it was ${holdWords(change.before)}. ${OTHER_HOLD}`;
    case "newPerRound":
      return `New cases a round: ${change.after}; it was ${change.before}.`;
    case "stages":
      return `Order of the stages: ${stagesInWords(change.after)}; it was ${stagesInWords(change.before)}.`;
    case "ceiling":
      return `How often: ${ceilingInWords(change.after)}; it was ${ceilingInWords(change.before)}.`;
  }
}

function caseFieldSentence(
  change: Extract<DeckChange, { readonly code: "case-field" }>,
  reading: DeckReading,
): string {
  const differs = (what: string, after: string, before: string) =>
    `${what} ${after}; it was ${before}.`;
  switch (change.field) {
    case "target":
      return differs(
        "target",
        `${change.after} seconds`,
        `${change.before} seconds`,
      );
    case "way":
      return differs(
        "the way is",
        wayWords(change.case, change.after, reading),
        wayWords(change.case, change.before, reading),
      );
    case "note":
      return differs(
        "the note is",
        quoted(change.after),
        quoted(change.before),
      );
    case "placed":
      return differs(
        "others at home:",
        placedInWords(change.after),
        placedInWords(change.before),
      );
    case "home":
      return differs("home", HOME[`${change.after}`], HOME[`${change.before}`]);
    case "lining":
      return differs(
        "the piece is",
        LINING[`${change.after}`],
        LINING[`${change.before}`],
      );
    case "pieces":
      return differs(
        "pieces",
        PIECES[`${change.after}`],
        PIECES[`${change.before}`],
      );
    case "answerWays":
      return differs(
        "ways of answering:",
        answerWaysInWords(change.after),
        answerWaysInWords(change.before),
      );
  }
}

/** One difference as a sentence. */
function changeSentence(change: DeckChange, reading: DeckReading): string {
  switch (change.code) {
    case "deck-added":
      return `A new deck, ${quoted(change.name)}.`;
    case "deck-field":
      return deckFieldSentence(change);
    case "case-added":
      return `Put in: ${caseInWords(change.case, reading.naming)}, now ${placeInDeck(change.at)}.`;
    case "case-removed":
      return `Taken out: ${caseInWords(change.case, reading.naming)}.`;
    case "case-moved":
      return `Moved: ${caseInWords(change.case, reading.naming)}, now ${placeInDeck(change.to)}; it was ${placeInDeck(change.from)}.`;
    case "case-field":
      return `${caseInWords(change.case, reading.naming)}: ${caseFieldSentence(change, reading)}`;
  }
}

/** Differences between two versions of a deck, one sentence each. */
export function changesInWords(
  changes: readonly DeckChange[],
  reading: DeckReading,
): readonly string[] {
  return changes.map((change) => changeSentence(change, reading));
}
