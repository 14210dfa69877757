/**
 * How an answer is graded, first version. Everything here is computed from the
 * raw measurements of a review, so that a later version can regrade the log.
 *
 * Version 1: a missed answer is the lowest grade, a corrected or hinted one
 * the next, a clean one the third. Times decide what people are shown (quick,
 * steady, slow) and do not touch the schedule yet: baselines per learner, case
 * and way of answering come first.
 */
import type { Review } from "./review";

/** The version of the rules in this file; stored with every review. */
export const GRADING_VERSION = 1;

/** What an answer was worth, lowest first. */
export const GRADES = ["missed", "hesitant", "clean"] as const;

export type Grade = (typeof GRADES)[number];

/** The measured outcomes that people are shown, best first. */
export const OUTCOMES = ["quick", "steady", "slow", "missed"] as const;

export type Outcome = (typeof OUTCOMES)[number];

/** What of a review decides whether it was missed. */
export type Judged = Pick<Review, "verdict" | "hints">;

/** What of a review decides its grade. */
export type Graded = Judged & Pick<Review, "corrections">;

/** What of a review decides its outcome. */
export type Timed = Graded & Pick<Review, "total" | "target" | "interrupted">;

/**
 * Whether an answer was missed. Being shown the whole way is a miss too,
 * whatever the learner then did with it.
 */
export function isMissed(review: Judged): boolean {
  return review.verdict === "missed" || review.hints.includes("whole-way");
}

/** The grade of an answer. Finger slips do not touch it. */
export function gradeOf(review: Graded): Grade {
  if (isMissed(review)) return "missed";
  return review.corrections > 0 || review.hints.length > 0
    ? "hesitant"
    : "clean";
}

/**
 * The outcome of an answer, measured against its target: quick within half of
 * it, steady within the whole, slow beyond.
 *
 * A corrected or hinted answer is steady at best. After an interruption the
 * time is not known: a right answer is then steady, neither praised nor blamed.
 * Half the target is the bound for quick because the targets of the first
 * layer after four weeks are about half of the starting ones.
 *
 * Units: `total` in milliseconds, `target` in seconds.
 */
export function outcomeOf(review: Timed): Outcome {
  const grade = gradeOf(review);
  if (grade === "missed") return "missed";
  if (review.interrupted) return "steady";
  const target = review.target * 1000;
  if (review.total > target) return "slow";
  return grade === "clean" && review.total <= target / 2 ? "quick" : "steady";
}
