import { parseTurns } from "../notation/parse";
import { isWholeCubeTurn, type Turn } from "../cube/turns";
import { invariant } from "../invariant";

/**
 * The schools of ways: a way of its own for each case; one sequence repeated
 * under the home until the corner is in (`R' D' R D`, or `D' R' D R` beginning
 * with the bottom); the fewest turns; and the least trouble for the hands.
 */
export const WAY_SCHOOLS = [
  "first",
  "repeating",
  "repeating-bottom-first",
  "shortest",
  "easiest",
] as const;

export type WaySchool = (typeof WAY_SCHOOLS)[number];

/** The hand that makes most of the turns. */
export const HANDS = ["right", "left"] as const;

export type Hand = (typeof HANDS)[number];

/** A sequence that answers a case. */
export interface Way {
  readonly school: WaySchool;
  readonly hand: Hand;
  /** From a lined-up position with the home in front, as the learner sees it. */
  readonly turns: readonly Turn[];
}

/** The turns that one of our own tables writes down. */
export function turnsInTable(text: string): readonly Turn[] {
  const parsed = parseTurns(text);
  invariant(parsed.ok, `"${text}" is written in notation`);
  return parsed.value;
}

/** A sequence that repeats one part, as a person would rather read it. */
export interface Repetition {
  /** Whole-cube turns made first, if any. */
  readonly before: readonly Turn[];
  readonly part: readonly Turn[];
  /** At least 2. */
  readonly times: number;
}

function isSameTurn(a: Turn | undefined, b: Turn | undefined): boolean {
  return a?.layer === b?.layer && a?.quarters === b?.quarters;
}

/** Some turns made so many times one after the other. */
export interface Stretch {
  readonly part: readonly Turn[];
  /** 1 where nothing is repeated. */
  readonly times: number;
}

/** A repeated part has so many turns: a person knows it as one thing. */
const REPEATED_TURNS = [4, 5, 6] as const;

function timesAt(turns: readonly Turn[], start: number, length: number) {
  let times = 1;
  while (
    turns.length >= start + (times + 1) * length &&
    turns
      .slice(start, start + length)
      .every((turn, i) => isSameTurn(turn, turns[start + times * length + i]))
  )
    times += 1;
  return times;
}

/** A way as stretches, so that what is repeated inside it is read once. Shape: played one after the other they are the way. */
export function stretchesOf(turns: readonly Turn[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let single: Turn[] = [];
  const endSingle = () => {
    if (single.length > 0) stretches.push({ part: single, times: 1 });
    single = [];
  };
  for (let i = 0; i < turns.length;) {
    const found = REPEATED_TURNS.map((length) => ({
      length,
      times: timesAt(turns, i, length),
    })).find(({ times }) => times > 1);
    if (found === undefined) {
      single.push(...turns.slice(i, i + 1));
      i += 1;
      continue;
    }
    endSingle();
    stretches.push({
      part: turns.slice(i, i + found.length),
      times: found.times,
    });
    i += found.length * found.times;
  }
  endSingle();
  return stretches;
}

/** The shortest part of two turns and more that a way repeats from beginning to end, after turns of the whole cube; undefined where it repeats none. */
export function repetitionIn(turns: readonly Turn[]): Repetition | undefined {
  const start = turns.findIndex((turn) => !isWholeCubeTurn(turn));
  const rest = turns.slice(Math.max(start, 0));
  for (let length = 2; 2 * length <= rest.length; length++) {
    const isPeriod = rest.every((turn, i) =>
      isSameTurn(turn, rest[i % length]),
    );
    if (rest.length % length === 0 && isPeriod)
      return {
        before: turns.slice(0, start),
        part: rest.slice(0, length),
        times: rest.length / length,
      };
  }
  return undefined;
}
