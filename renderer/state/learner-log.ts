/**
 * A learner's log, sorted by what a memory is kept for, with the memories it
 * makes. Kept up to date review by review: an answer changes one memory, and
 * only that one is folded again.
 */
import type { Review } from "../../core/memory/review";
import {
  type Memory,
  memoryKey,
  memoryOf,
  type ScheduleSettings,
} from "../../core/memory/schedule";

/** A log with what it says. Treated as immutable. */
export interface LearnerLog {
  /** Oldest first; each once. */
  readonly reviews: readonly Review[];
  /** The same, under each `memoryKey`. */
  readonly byMemory: ReadonlyMap<string, readonly Review[]>;
  /** Every memory the log makes, by `memoryKey`. */
  readonly memories: ReadonlyMap<string, Memory>;
}

/** The log of somebody who has not answered yet. */
export const EMPTY_LOG: LearnerLog = {
  reviews: [],
  byMemory: new Map(),
  memories: new Map(),
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
  const byMemory = new Map<string, Review[]>();
  for (const review of reviews) {
    const key = keyOf(review);
    const own = byMemory.get(key);
    if (own === undefined) byMemory.set(key, [review]);
    else own.push(review);
  }
  return { reviews, byMemory, memories: memoriesFrom(byMemory, schedule) };
}

/** The log with one more answer; the same log where it holds it already. */
export function withReview(
  log: LearnerLog,
  review: Review,
  schedule: ScheduleSettings,
): LearnerLog {
  const key = keyOf(review);
  const own = log.byMemory.get(key) ?? [];
  if (own.some(({ id }) => id === review.id)) return log;
  const answers = [...own, review];
  const memory = memoryOf(answers, schedule);
  return {
    reviews: [...log.reviews, review],
    byMemory: new Map(log.byMemory).set(key, answers),
    memories:
      memory === undefined
        ? log.memories
        : new Map(log.memories).set(key, memory),
  };
}

/** The same log under other settings of the schedule. */
export function rescheduled(
  log: LearnerLog,
  schedule: ScheduleSettings,
): LearnerLog {
  return { ...log, memories: memoriesFrom(log.byMemory, schedule) };
}
