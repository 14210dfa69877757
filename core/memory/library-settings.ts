/**
 * The scheduling library under our settings: without learning steps, because
 * repeats within a round are ours, and without fuzz, so that a log always
 * replays to the same days. With its short-term memory off the first intervals
 * would differ from the published ones.
 */
import { default_w, fsrs } from "ts-fsrs";
import type { RecallGrade } from "./grade";

const RATING = { taught: 1, missed: 1, slow: 2, steady: 3, quick: 4 } as const;

/** The library's number for what a memory is told, 1 the lowest. */
export function ratingOf(
  grade: RecallGrade,
  isQuickCounted: boolean,
): 1 | 2 | 3 | 4 {
  return grade === "quick" && !isQuickCounted ? RATING.steady : RATING[grade];
}

function algorithmOf(level: number, weights: readonly number[]) {
  return fsrs({
    w: weights,
    request_retention: level,
    enable_fuzz: false,
    enable_short_term: true,
    learning_steps: [],
    relearning_steps: [],
  });
}

/** The library's memory model with its weights and the level it plans for. */
export type Algorithm = ReturnType<typeof algorithmOf>;

// Setting one up takes longer than a thousand chances; a page asks for many.
const BY_WEIGHTS = new WeakMap<readonly number[], Map<number, Algorithm>>();

/** The memory model for a level, with the library's default weights where none are given. */
export function algorithm(
  level: number,
  weights: readonly number[] = default_w,
): Algorithm {
  const byLevel = BY_WEIGHTS.get(weights) ?? new Map<number, Algorithm>();
  BY_WEIGHTS.set(weights, byLevel);
  const made = byLevel.get(level) ?? algorithmOf(level, weights);
  byLevel.set(level, made);
  return made;
}
