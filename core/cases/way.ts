import { parseTurns } from "../notation/parse";
import type { Turn } from "../cube/turns";
import { invariant } from "../invariant";

/**
 * The schools of ways: a way of its own for each case; one sequence repeated
 * under the home until the corner is in (`R' D' R D`, or `D' R' D R` beginning
 * with the bottom); and the fewest turns.
 */
export const WAY_SCHOOLS = [
  "first",
  "repeating",
  "repeating-bottom-first",
  "shortest",
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
