/**
 * A learner's log, graded, sorted by what a memory is kept for, with the
 * memories it makes. Kept up to date review by review: an answer changes one
 * memory, and only that one is folded again.
 */
import type { Outcome } from "../../core/memory/grade";
import { type GradedReview, Grader, gradeLog } from "../../core/memory/grader";
import type { Review } from "../../core/memory/review";
import {
  inReplayOrder,
  isBefore,
  type Memory,
  memoryKey,
  memoryOf,
  type ScheduleSettings,
} from "../../core/memory/schedule";

/** A log with what it says. Treated as immutable. */
export interface LearnerLog {
  /** Oldest first; each once. */
  readonly reviews: readonly Review[];
  /** The same, graded. */
  readonly answers: readonly GradedReview[];
  /** The same, under each `memoryKey`. */
  readonly byMemory: ReadonlyMap<string, readonly GradedReview[]>;
  /** Every memory the log makes, by `memoryKey`. */
  readonly memories: ReadonlyMap<string, Memory>;
  /** What has graded them; copied before it grades another. */
  readonly grader: Grader;
}

/** The log of somebody who has not answered yet. */
export const EMPTY_LOG: LearnerLog = {
  reviews: [],
  answers: [],
  byMemory: new Map(),
  memories: new Map(),
  grader: new Grader(),
};

const keyOf = (review: Review) =>
  memoryKey(review.learner, review.case, review.hold);

function memoriesFrom(
  byMemory: LearnerLog["byMemory"],
  schedule: ScheduleSettings,
): LearnerLog["memories"] {
  const memories = new Map<string, Memory>();
  for (const [key, own] of byMemory) {
    const memory = memoryOf(own, schedule);
    if (memory !== undefined) memories.set(key, memory);
  }
  return memories;
}

/** The log that reviews in the order of replay make. */
export function learnerLog(
  reviews: readonly Review[],
  schedule: ScheduleSettings,
): LearnerLog {
  const grader = new Grader();
  const answers = gradeLog(reviews, grader);
  const byMemory = new Map<string, GradedReview[]>();
  for (const answer of answers) {
    const key = keyOf(answer.review);
    const own = byMemory.get(key);
    if (own === undefined) byMemory.set(key, [answer]);
    else own.push(answer);
  }
  const memories = memoriesFrom(byMemory, schedule);
  return { reviews, answers, byMemory, memories, grader };
}

/** What an answer that is not in the log yet is worth after it. */
export function outcomeAfter(log: LearnerLog, review: Review): Outcome {
  return log.grader.copy().grade(review).outcome;
}

/**
 * The log with one more answer; the same log where it holds it already. One
 * that comes before others, under a clock set back, has them graded again.
 */
export function withReview(
  log: LearnerLog,
  review: Review,
  schedule: ScheduleSettings,
): LearnerLog {
  const key = keyOf(review);
  const own = log.byMemory.get(key) ?? [];
  if (own.some((answer) => answer.review.id === review.id)) return log;
  const last = log.reviews.at(-1);
  const reviews = [...log.reviews, review];
  if (last !== undefined && !isBefore(last, review))
    return learnerLog(inReplayOrder(reviews), schedule);
  const grader = log.grader.copy();
  const answer = { review, ...grader.grade(review) };
  const ownAnswers = [...own, answer];
  const memory = memoryOf(ownAnswers, schedule);
  return {
    reviews,
    answers: [...log.answers, answer],
    byMemory: new Map(log.byMemory).set(key, ownAnswers),
    memories:
      memory === undefined
        ? log.memories
        : new Map(log.memories).set(key, memory),
    grader,
  };
}

/** The same log under other settings of the schedule. */
export function rescheduled(
  log: LearnerLog,
  schedule: ScheduleSettings,
): LearnerLog {
  return { ...log, memories: memoriesFrom(log.byMemory, schedule) };
}
