import type { CaseId } from "../cases/case-ids";
import type { Stage } from "../cases/stage";
import type { Hold } from "../cases/variant";
import type { Hand, WaySchool } from "../cases/way";
import type { TurnedWay } from "../memory/review";

/** Fields that a newer Turnwise wrote and this one does not know: kept, and written again. Values are JSON. */
export type UnknownFields = Readonly<Record<string, unknown>>;

/** The way that a deck advises: that of a school, or turns of the coach's own. Any right answer counts. */
export type DeckWay =
  | {
      readonly kind: "school";
      readonly school: WaySchool;
      /** Absent: the learner's own. */
      readonly hand?: Hand;
    }
  | {
      readonly kind: "turns";
      /** In notation, from a lined-up position with the home in front, as the learner sees it: the first layer up for its own cases, down for all others. */
      readonly turns: string;
    };

/** One case of a deck, as its coach wants it answered. What is absent is left to the app. */
export interface DeckCase {
  readonly case: CaseId;
  /** What a whole answer should take. Units: seconds. */
  readonly target: number;
  readonly way?: DeckWay;
  /** To the learner. */
  readonly note?: string;
  /** How many other homes are placed, never more than the case allows; absent: as many as it allows. */
  readonly placed?: 0 | 1 | 2 | 3;
  /** Where the home is; absent: in front until the case is kept. */
  readonly home?: "front" | "anywhere";
  /** Whether a piece in the free layer is lined up; absent: until the case settles. */
  readonly lining?: "lined-up" | "turned-away";
  /** Whether pieces that do not matter are bare; absent: until the case is kept. */
  readonly pieces?: "marked" | "unmarked";
  /** The ways of answering allowed, each once, at least one; absent: all. */
  readonly answerWays?: readonly TurnedWay[];
  readonly extra?: UnknownFields;
}

/** What of a deck's case decides how it is asked. */
export type AskingChoice = Pick<
  DeckCase,
  "placed" | "home" | "lining" | "pieces" | "answerWays"
>;

/** How often each case comes at least, whatever its memory says: for a weekly class. */
export interface DeckCeiling {
  /** Units: days, 1 to 60. */
  readonly everyDays: number;
  /** The last day on which it holds, as YYYY-MM-DD. */
  readonly until: string;
  /** The author's own comment. */
  readonly note?: string;
  readonly extra?: UnknownFields;
}

/** What came along in a file of a newer form. */
export interface DeckExtra {
  /** The form that the file was written in, and is written in again. */
  readonly version: number;
  readonly readableFrom: number;
  readonly fields: UnknownFields;
}

/**
 * An ordered selection of cases with targets.
 *
 * Which colour the first layer has is always the learner's own: a deck never
 * says.
 */
export interface Deck {
  /** A UUID, or one of the starter decks' own. Stored in logs and settings: never renamed. */
  readonly id: string;
  readonly name: string;
  /** One line that says what is in it. */
  readonly description: string;
  /** In the order in which they are learnt; no case twice. */
  readonly cases: readonly DeckCase[];
  /** How many cases that the learner has not met come into one round. */
  readonly newPerRound: number;
  /** Absent: the learner's own. */
  readonly hold?: Hold;
  /** The order in which the stages' new cases come, each stage once; absent: the order of the column. */
  readonly stages?: readonly Stage[];
  readonly ceiling?: DeckCeiling;
  /** To the learner. */
  readonly message?: string;
  /** The author's own comment; no learner sees it. */
  readonly note?: string;
  readonly extra?: DeckExtra;
}
