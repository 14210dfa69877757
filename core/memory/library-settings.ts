/**
 * The scheduling library under our settings: without learning steps, because
 * repeats within a round are ours, and without fuzz, so that a log always
 * replays to the same days. With its short-term memory off the first intervals
 * would differ from the published ones.
 */
import { default_w, fsrs } from "ts-fsrs";
import type { Grade } from "./grade";

/**
 * The library's number for a grade. Its fourth and best is not used yet: it
 * would need a baseline of the learner's own times.
 */
export const RATING: Readonly<Record<Grade, 1 | 2 | 3>> = {
  missed: 1,
  hesitant: 2,
  clean: 3,
};

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
const BY_LEVEL = new Map<number, Algorithm>();

/** The memory model for a level, with the library's default weights where none are given. */
export function algorithm(
  level: number,
  weights?: readonly number[],
): Algorithm {
  if (weights !== undefined) return algorithmOf(level, weights);
  const known = BY_LEVEL.get(level);
  if (known !== undefined) return known;
  const made = algorithmOf(level, default_w);
  BY_LEVEL.set(level, made);
  return made;
}
