/** Reading a member's summary that comes from a worker or from the store's cache. */
import * as v from "valibot";
import { CASE_ID } from "../cases/case-id-schema";
import { HOLDS } from "../cases/variant";
import {
  COUNT,
  LOCAL_DAY,
  readBySchema,
  type StoredRowError,
} from "../memory/stored-row";
import type { Result } from "../result";
import type { MemberSummary } from "./member-summary";

const AMOUNT = v.pipe(v.number(), v.finite(), v.minValue(0));

const RECORD = v.object({
  case: CASE_ID,
  hold: v.picklist(HOLDS),
  lastDay: LOCAL_DAY,
  memory: v.exactOptional(
    v.object({
      stability: AMOUNT,
      lastDay: LOCAL_DAY,
      lastsUntil: LOCAL_DAY,
      missedLast: v.boolean(),
      days: COUNT,
    }),
  ),
  wasKept: v.boolean(),
  lastDays: v.pipe(
    v.array(v.object({ lastDay: LOCAL_DAY, wasRight: v.boolean() })),
    v.readonly(),
  ),
  times: v.exactOptional(
    v.object({
      answers: COUNT,
      total: AMOUNT,
      target: AMOUNT,
      lastDay: LOCAL_DAY,
    }),
  ),
  takenFor: v.pipe(
    v.array(v.object({ case: CASE_ID, times: COUNT })),
    v.readonly(),
  ),
});

const SUMMARY = v.object({
  answers: COUNT,
  lastDay: v.exactOptional(LOCAL_DAY),
  cases: v.pipe(v.array(RECORD), v.readonly()),
});

/** The summary that a message or a cached row holds. */
export function parseMemberSummary(
  value: unknown,
): Result<MemberSummary, StoredRowError> {
  return readBySchema(SUMMARY, value);
}
