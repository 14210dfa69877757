/**
 * What the window and the worker that fits weights say to each other. A worker
 * lives for one fit: compiled code cannot be interrupted, so to cancel is to
 * end it.
 */
import * as v from "valibot";
import { type FitOutcome, WEIGHT_COUNT } from "../../core/memory/fit";
import { present } from "../../core/invariant";
import { OUTCOMES, type RecallGrade } from "../../core/memory/grade";
import type { GradedReview } from "../../core/memory/grader";
import { dayNumber } from "../../core/memory/local-day";
import { type RecalledDay, RecalledDays } from "../../core/memory/recalls";
import { memoryKey } from "../../core/memory/schedule";
import {
  readBySchema,
  type StoredRowError,
} from "../../core/memory/stored-row";
import type { Result } from "../../core/result";

/** Every grade by its number on the wire. */
const GRADES = [...OUTCOMES, "taught"] as const satisfies RecallGrade[];

const WEIGHTS = v.pipe(
  v.array(v.pipe(v.number(), v.finite())),
  v.length(WEIGHT_COUNT),
);

const REQUEST = v.pipe(
  v.object({
    /** For each day that counted, in order: whose memory, which day, which grade. */
    memories: v.instance(Uint32Array),
    days: v.instance(Int32Array),
    grades: v.instance(Uint8Array),
    inUse: v.optional(WEIGHTS),
  }),
  v.check(
    ({ memories, days, grades }) =>
      memories.length === days.length &&
      days.length === grades.length &&
      grades.every((grade) => grade < GRADES.length),
  ),
);

const COUNT = v.pipe(v.number(), v.integer(), v.minValue(0));

const OUTCOME = v.variant("kind", [
  v.object({ kind: v.literal("too-few"), has: COUNT, needs: COUNT }),
  v.object({
    kind: v.picklist(["fitted", "kept"]),
    weights: v.union([WEIGHTS, v.undefined()]),
    answers: COUNT,
    lossBefore: v.number(),
    lossAfter: v.number(),
  }),
]);

const REPLY = v.variant("kind", [
  v.object({
    kind: v.literal("progress"),
    progress: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  }),
  v.object({ kind: v.literal("done"), outcome: OUTCOME }),
  v.object({ kind: v.literal("failed"), reason: v.string() }),
]);

/** What the window asks for: days that counted, as plain arrays. */
export type FitRequest = v.InferOutput<typeof REQUEST>;

/** What the worker says. After "done" or "failed" it says no more. */
export type FitReply =
  | Exclude<v.InferOutput<typeof REPLY>, { readonly kind: "done" }>
  | { readonly kind: "done"; readonly outcome: FitOutcome };

/** Reads what the window asks. */
export function parseFitRequest(
  message: unknown,
): Result<FitRequest, StoredRowError> {
  return readBySchema(REQUEST, message);
}

/** Reads what the worker says. */
export function parseFitReply(
  message: unknown,
): Result<FitReply, StoredRowError> {
  return readBySchema(REPLY, message);
}

/** A request for a fit to a learner's graded answers, in the order of replay. */
export function fitRequest(
  answers: readonly GradedReview[],
  inUse: readonly number[] | undefined,
): FitRequest {
  const counted = answers.filter(({ recall }) => recall !== undefined);
  const numbers = new Map<string, number>();
  const memories = counted.map(({ review }) => {
    const key = memoryKey(review.learner, review.case, review.hold);
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  });
  return {
    memories: Uint32Array.from(memories),
    days: Int32Array.from(counted, ({ review }) => review.localDay),
    grades: Uint8Array.from(counted, ({ recall }) =>
      GRADES.findIndex((grade) => grade === recall),
    ),
    ...(inUse === undefined ? {} : { inUse: [...inUse] }),
  };
}

/** The days that a request holds. Shape: as `parseFitRequest` reads it. */
export function daysOfRequest({
  memories,
  days,
  grades,
}: Pick<FitRequest, "memories" | "days" | "grades">): readonly RecalledDay[] {
  const recalled = new RecalledDays();
  return Array.from(memories, (memory, i) =>
    recalled.add(
      String(memory),
      { localDay: dayNumber(present(days[i], "one for each memory")) },
      present(GRADES[present(grades[i], "as many again")], "a grade's number"),
    ),
  );
}
