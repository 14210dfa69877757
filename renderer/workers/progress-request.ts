/** What the window asks of progress's worker, and how the worker reads it. */
import * as v from "valibot";
import {
  LOCAL_DAY,
  readBySchema,
  type StoredRowError,
} from "../../core/memory/stored-row";
import { PACKED_LOG } from "../../core/progress/packed-log-schema";
import type { Result } from "../../core/result";

const SETTINGS = v.object({
  level: v.exactOptional(v.pipe(v.number(), v.minValue(0), v.maxValue(1))),
  weights: v.exactOptional(v.pipe(v.array(v.number()), v.readonly())),
});

const FACTS = v.object({
  question: v.literal("facts"),
  log: PACKED_LOG,
  today: LOCAL_DAY,
  settings: SETTINGS,
});

const SUMMARY = v.object({
  question: v.literal("summary"),
  log: PACKED_LOG,
  settings: SETTINGS,
});

const REQUEST = v.variant("question", [FACTS, SUMMARY]);

/** For the progress page: a learner's log, the day, and what the schedule goes by. */
export type FactsRequest = v.InferOutput<typeof FACTS>;

/** For the class page, which asks for many and whatever the day. */
export type SummaryRequest = v.InferOutput<typeof SUMMARY>;

/** Reads what the window asks. */
export function parseProgressRequest(
  message: unknown,
): Result<FactsRequest | SummaryRequest, StoredRowError> {
  return readBySchema(REQUEST, message);
}
