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
