/** What the window asks of progress's worker, and how the worker reads it. */
import * as v from "valibot";
import {
  LOCAL_DAY,
  readBySchema,
  type StoredRowError,
} from "../../core/memory/stored-row";
import { PACKED_LOG } from "../../core/progress/packed-log-schema";
import type { Result } from "../../core/result";

const REQUEST = v.object({
  log: PACKED_LOG,
  today: LOCAL_DAY,
  settings: v.object({
    level: v.exactOptional(v.pipe(v.number(), v.minValue(0), v.maxValue(1))),
    weights: v.exactOptional(v.pipe(v.array(v.number()), v.readonly())),
  }),
});

/** A learner's log, the day, and what the schedule goes by. */
export type ProgressRequest = v.InferOutput<typeof REQUEST>;

/** Reads what the window asks. */
export function parseProgressRequest(
  message: unknown,
): Result<ProgressRequest, StoredRowError> {
  return readBySchema(REQUEST, message);
}
