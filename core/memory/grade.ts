/**
 * How answers are graded, second version. Everything here is computed from the
 * raw measurements of the log, so that a later version can grade it again;
 * what one answer is worth depends on those before it.
 *
 * Version 1 graded each answer by itself and by its deck's target: who is slow
 * at first was told so for weeks, and the schedule learnt nothing from times.
 * Version 2 measures thinking time against the learner's own: how surely a
 * case was recalled shows in how long it took this person, for this case, in
 * this way of answering. Turning has a track of its own,
 * `core/progress/turning-speed.ts`.
 */
import type { Review } from "./review";

/** The version of the rules in this folder; stored with every review. */
export const GRADING_VERSION = 2;

/** What an answer was worth by itself, lowest first: it moves a round on. */
export const GRADES = ["missed", "hesitant", "clean"] as const;

export type Grade = (typeof GRADES)[number];

/** The measured outcomes that people are shown, best first. */
export const OUTCOMES = ["quick", "steady", "slow", "missed"] as const;

export type Outcome = (typeof OUTCOMES)[number];

/**
 * What a memory is told of a day. `taught` is a case that was shown on the day
 * it was first asked: nobody has recalled anything yet.
 */
export type RecallGrade = Outcome | "taught";

/** What of a review decides whether it was missed. */
export type Judged = Pick<Review, "verdict" | "hints">;

/** What of a review decides its grade. */
export type Graded = Judged & Pick<Review, "corrections">;

/** What grading makes of an answer. */
export interface GradedAnswer {
  readonly outcome: Outcome;
  /** What the memory of the case is told; absent: the answer does not count for it. */
  readonly recall?: RecallGrade;
}

/** From how many spreads above the usual on an answer is slow. */
const SLOW = 1;

/** From how many below it is quick. */
const QUICK = -1.3;

/** Beyond so many the learner was somewhere else. */
const AWAY = 4;

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

/** The outcome that the facts of an answer leave when its time says nothing. */
export function outcomeByFacts(grade: Grade): Outcome {
  switch (grade) {
    case "missed":
      return "missed";
    case "hesitant":
      return "slow";
    case "clean":
      return "steady";
  }
}

/** Whether a time says that the learner was away. Units: spreads above the usual. */
export function isAway(z: number): boolean {
  return z > AWAY;
}

/** A time written on paper is slow from over so many targets on. Source: our guess; children time one another, and begin with the set-up or without. */
const SLOW_ON_PAPER = 2;

/**
 * The outcome of a clean answer written on paper: coarse, and never quick.
 * Without a time it is steady.
 */
export function outcomeOnPaper({
  untimed,
  total,
  target,
}: Pick<Review, "total" | "target"> & {
  readonly untimed?: true | undefined;
}): Outcome {
  return untimed !== true && total > SLOW_ON_PAPER * target * 1000
    ? "slow"
    : "steady";
}

/** The outcome of a clean answer by its time. Units: spreads above the usual. */
export function outcomeByTime(z: number): Outcome {
  if (isAway(z)) return "steady";
  if (z > SLOW) return "slow";
  return z < QUICK ? "quick" : "steady";
}
