/**
 * One answered (or interrupted) case, as it is kept for ever: the raw
 * measurements, never a grade. Memory states, day plans and progress are
 * computed from these and may be thrown away at any time.
 */
import type { CaseId } from "../cases/case-ids";
import type { Hold, Variant } from "../cases/variant";
import type { PieceName } from "../cube/pieces";

declare const localDayBrand: unique symbol;
declare const millisecondsBrand: unique symbol;

/** A learner's own day, counted from 1 January 1970; turns over at 3 in the morning unless they choose otherwise. */
export type LocalDay = number & { readonly [localDayBrand]: true };

/** A duration or an instant (since the Unix epoch), in milliseconds. */
export type Milliseconds = number & { readonly [millisecondsBrand]: true };

/** The ways of answering a case with turns: those that a learner or a deck chooses among. */
export const TURNED_WAYS = ["on-screen", "my-cube", "write-it"] as const;

export type TurnedWay = (typeof TURNED_WAYS)[number];

/**
 * The ways of answering by choosing: which case it is, where the piece is, or
 * where it belongs. They tell what is taken for what, and nothing of whether
 * an answer was recalled.
 */
export const RECOGNISING_WAYS = [
  "which-is-it",
  "find-it",
  "where-is-home",
] as const;

export type RecognisingWay = (typeof RECOGNISING_WAYS)[number];

/**
 * The ways of answering away from every screen, written down by hand and
 * entered later by somebody else: right or missed, and a time at most.
 */
export const PAPER_WAYS = ["on-paper"] as const;

export type PaperWay = (typeof PAPER_WAYS)[number];

/** The ways of answering that this version knows. Stored in logs: never renamed; packed by their place, so a new one comes last. */
export const ANSWER_WAYS = [
  ...TURNED_WAYS,
  ...RECOGNISING_WAYS,
  ...PAPER_WAYS,
] as const;

export type AnswerWay = (typeof ANSWER_WAYS)[number];

/** Whether an answer was chosen rather than turned: it says nothing about memory or speed. */
export function isRecognising(way: AnswerWay): way is RecognisingWay {
  return RECOGNISING_WAYS.some((one) => one === way);
}

/** Whether an answer was written on paper: it is coarse, and says nothing about speed on a screen. */
export function isOnPaper(way: AnswerWay): way is PaperWay {
  return PAPER_WAYS.some((one) => one === way);
}

/**
 * What the learner was given: shown the way step by step, asked to do it with
 * the way in sight, asked alone, asked once more after a miss in the round, or
 * asked beyond the schedule, which the memory does not hear of.
 */
export const ASKINGS = ["shown", "helped", "alone", "again", "extra"] as const;

export type Asking = (typeof ASKINGS)[number];

/** Help asked for during an answer, in rising order. */
export const HINTS = ["piece", "home", "first-turn", "whole-way"] as const;

export type Hint = (typeof HINTS)[number];

/** One turn of an answer, in WCA notation, and when it was made. */
export interface TimedTurn {
  readonly turn: string;
  /** Since the case was shown. */
  readonly at: Milliseconds;
}

/**
 * A wrong choice among pieces (Find it) or homes (Where is home?, each named
 * like the piece that belongs there). Names are those of the body frame, in
 * which U has the first colour.
 */
export interface Mistook {
  readonly piece: PieceName;
  readonly for: PieceName;
}

/** A stored review. Fields are never renamed; absent means not measured. */
export interface Review {
  /** A random UUID: logs merge in any order as a union. */
  readonly id: string;
  readonly learner: string;
  readonly case: CaseId;
  readonly hold: Hold;
  readonly variant: Variant;
  /** The colour of the first layer, in the learner's own name for it. */
  readonly firstColour: string;
  /** What the learner saw: 54 facelets in the body frame, `?` where unknown. */
  readonly position: string;
  readonly answerWay: AnswerWay;
  readonly asking: Asking;
  /** When it was answered, UTC. */
  readonly at: Milliseconds;
  /** Minutes east of UTC on the learner's machine then. */
  readonly utcOffset: number;
  readonly localDay: LocalDay;
  /** Case shown to the first turn that commits. Absent: not known. */
  readonly thinking?: Milliseconds;
  /** First turn that commits to the last turn. Absent: not known. */
  readonly turning?: Milliseconds;
  /** Case shown to the end of the answer; 0 where it is untimed. */
  readonly total: Milliseconds;
  /** There where nobody took the time, as on paper. */
  readonly untimed?: true;
  readonly turns: readonly TimedTurn[];
  readonly verdict: "right" | "missed";
  /** The case that was taken for the one shown: the answer was right for it, or it was chosen. Absent: the mistake was another, or is not known. */
  readonly answeredAs?: CaseId;
  /** The piece or home that was chosen in the place of the one asked for. Absent: none was, or it is not known. */
  readonly mistook?: Mistook;
  /** Corrections that were no finger slips. */
  readonly corrections: number;
  /** Corrections within one second on the same layer. */
  readonly slips: number;
  readonly hints: readonly Hint[];
  /** When the hints were asked for, since the case was shown: the last so many of them, where the case was begun anew in between. */
  readonly hintTimes?: readonly Milliseconds[];
  /** How often the learner looked underneath, behind or around. Absent: not counted. */
  readonly looks?: number;
  /** Whether the learner reported what the cube shows, instead of the app seeing it. */
  readonly reported: boolean;
  /** Whether the window closed or reloaded during the answer. */
  readonly interrupted: boolean;
  readonly deck: string;
  /** Seconds for the whole answer that the deck asks for, given this way of answering. */
  readonly target: number;
  readonly gradingVersion: number;
  readonly weightsVersion: number;
}
