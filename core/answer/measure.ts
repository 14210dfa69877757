/**
 * How long an answer took and what was corrected on the way, from its events.
 *
 * Definitions: the design's architecture, "How an answer ends".
 * - Thinking time ends with the first turn of a face, wide layer or slice that
 *   is not a turn of the free layer. Whole-cube turns, looks and lining up are
 *   searching: neither turning nor mistakes.
 * - Turning time runs from that turn to the last one.
 * - A correction is taking a turn back, a restart, or a committed turn undone
 *   at once. Within a second on the same layer it is a finger slip instead.
 * - On a cube in the hands, thinking and turning are known only with the tap
 *   "I know it" between the other two.
 * - Written turns are turns as soon as they can be read: thinking ends when
 *   the text first holds one that commits, turning when it last changed, and
 *   wiping one out again is taking it back. Completing one (`R` to `R'`) is not.
 */
import type { Rotation } from "../cube/symmetries";
import { inverseTurn, type Turn } from "../cube/turns";
import type { Hint, Milliseconds, TimedTurn } from "../memory/review";
import { formatTurn } from "../notation/format";
import { executionTurns, outerBlockTurns } from "../notation/metrics";
import {
  bodyTurnOf,
  type MadeTurn,
  SLIP_WITHIN,
  TurnTrail,
} from "./turn-trail";

/**
 * Something that happened during an answer.
 *
 * Units: `at` in milliseconds since the case was shown, never falling.
 */
export type AnswerEvent = { readonly at: number } & (
  | {
      readonly kind: "turn";
      readonly turn: Turn;
      /** Whether a held key repeated it by itself: ignored, and must not turn the cube. */
      readonly repeat?: boolean;
    }
  | { readonly kind: "take-back" }
  | { readonly kind: "restart" }
  | { readonly kind: "look" }
  | { readonly kind: "hint"; readonly hint: Hint }
  /** My cube: the case is seen. The answer's times count from here. */
  | { readonly kind: "seen" }
  /** My cube: "I know it". */
  | { readonly kind: "know" }
  /** Write it: the text was changed and now reads as these turns, as far as it can be read. */
  | { readonly kind: "typed"; readonly turns: readonly Turn[] }
  /** "I am done": Enter, the last tap, the text handed in. */
  | { readonly kind: "done" }
  | { readonly kind: "show-me" }
);

/** What was measured of an answer; absent times are not known. */
export interface Measurement {
  readonly thinking?: Milliseconds;
  readonly turning?: Milliseconds;
  readonly total: Milliseconds;
  /** Everything done to the cube in order, a turn taken back as its inverse. */
  readonly turns: readonly TimedTurn[];
  /** The turns that stood at the end, as the learner made them. */
  readonly standing: readonly Turn[];
  /** Corrections that were no finger slips. */
  readonly corrections: number;
  readonly slips: number;
  readonly looks: number;
  /** When each hint was first asked for, in that order. */
  readonly hintTimes: readonly Milliseconds[];
  /** Length of what stood at the end (WCA 12a5). */
  readonly outerBlock: number;
  /** The same with whole-cube turns (WCA 12a6). */
  readonly execution: number;
}

/** How the cube was held when the case was shown. */
export interface AnswerContext {
  readonly hold: Rotation;
}

/** What was done, whichever way it was answered. */
interface Doings {
  readonly made: readonly MadeTurn[];
  readonly standing: readonly Turn[];
  readonly committedAt: number | undefined;
  readonly lastTurnAt: number | undefined;
  readonly corrections: number;
  readonly slips: number;
}

function turned(events: readonly AnswerEvent[], hold: Rotation): Doings {
  const trail = new TurnTrail(hold);
  for (const event of events) {
    if (event.kind === "turn") trail.turn(event.turn, event.at);
    else if (event.kind === "take-back") trail.takeBack(event.at);
    else if (event.kind === "restart") trail.restart(event.at);
  }
  return trail;
}

/** Which turns of a text are turning rather than searching. */
function turningOf(turns: readonly Turn[], start: Rotation): boolean[] {
  let hold = start;
  let hasCommitted = false;
  return turns.map((turn) => {
    const { kind, holdAfter } = bodyTurnOf(hold, turn);
    hold = holdAfter;
    hasCommitted ||= kind === "committing";
    return hasCommitted && kind !== "whole-cube";
  });
}

/** Turns of a text, and everything that was made and wiped out on the way there. */
class WrittenTrail {
  readonly made: MadeTurn[] = [];
  /** What stands, each with where it was made. */
  #standing: { turn: Turn; at: number; index: number }[] = [];

  get standing(): readonly Turn[] {
    return this.#standing.map(({ turn }) => turn);
  }

  /** The text now reads as these turns; answers those that were wiped out. */
  read(turns: readonly Turn[], at: number): readonly MadeTurn[] {
    const wiped = this.#standing.slice(turns.length);
    for (const { turn } of wiped.toReversed())
      this.made.push({ turn: inverseTurn(turn), at });
    this.#standing = turns.map((turn, i) => {
      const before = this.#standing[i];
      if (before === undefined) {
        this.made.push({ turn, at });
        return { turn, at, index: this.made.length - 1 };
      }
      // A turn completed keeps the time at which it was begun.
      this.made[before.index] = { turn, at: before.at };
      return { ...before, turn };
    });
    return wiped;
  }
}

function written(events: readonly AnswerEvent[], hold: Rotation): Doings {
  const trail = new WrittenTrail();
  let committedAt: number | undefined;
  let lastTurnAt: number | undefined;
  let corrections = 0;
  let slips = 0;
  for (const event of events) {
    if (event.kind !== "typed") continue;
    const { at, turns } = event;
    const before = turningOf(trail.standing, hold);
    const wipedOut = trail
      .read(turns, at)
      .filter((_, i) => before[turns.length + i] === true);
    const [first] = wipedOut;
    if (first !== undefined) {
      const isSlip = wipedOut.length === 1 && at - first.at <= SLIP_WITHIN;
      if (isSlip) slips += 1;
      else corrections += 1;
    }
    if (turningOf(turns, hold).includes(true)) committedAt ??= at;
    if (committedAt !== undefined) lastTurnAt = at;
  }
  const { made, standing } = trail;
  return { made, standing, committedAt, lastTurnAt, corrections, slips };
}

function timesOf(
  events: readonly AnswerEvent[],
  doings: Doings,
): Pick<Measurement, "thinking" | "turning" | "total"> {
  const ending = events.findLast(
    ({ kind }) => kind === "done" || kind === "show-me",
  );
  const seen = events.find(({ kind }) => kind === "seen")?.at ?? 0;
  const end = (ending ?? events.at(-1))?.at ?? seen;
  const know = events.find(({ kind }) => kind === "know")?.at;
  const from = know ?? doings.committedAt;
  const to = know === undefined ? doings.lastTurnAt : end;
  const total = milliseconds(end - seen);
  return from === undefined || to === undefined
    ? { total }
    : {
        total,
        thinking: milliseconds(from - seen),
        turning: milliseconds(to - from),
      };
}

function milliseconds(value: number): Milliseconds {
  return Math.max(0, value) as Milliseconds;
}

/** What the events of one answer say: see the definitions at the head of this file. */
export function measureAnswer(
  events: readonly AnswerEvent[],
  { hold }: AnswerContext,
): Measurement {
  const counted = events.filter(
    (event) => event.kind !== "turn" || event.repeat !== true,
  );
  const isWritten = counted.some(({ kind }) => kind === "typed");
  const doings = isWritten ? written(counted, hold) : turned(counted, hold);
  const { made, standing, corrections, slips } = doings;
  const hinted = new Map<Hint, number>();
  for (const event of counted)
    if (event.kind === "hint" && !hinted.has(event.hint))
      hinted.set(event.hint, event.at);
  return {
    ...timesOf(counted, doings),
    turns: made.map(({ turn, at }) => ({
      turn: formatTurn(turn),
      at: milliseconds(at),
    })),
    standing,
    corrections,
    slips,
    looks: counted.filter(({ kind }) => kind === "look").length,
    hintTimes: [...hinted.values()].map(milliseconds),
    outerBlock: outerBlockTurns(standing),
    execution: executionTurns(standing),
  };
}
