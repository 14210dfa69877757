/** Reading a stored run or the striking out of one: rows and files are parsed, never believed. */
import * as v from "valibot";
import { HOLDS } from "../cases/variant";
import {
  LOCAL_DAY,
  MILLISECONDS,
  readBySchema,
  type StoredRowError,
} from "../memory/stored-row";
import type { Result } from "../result";
import {
  RUN_ENDINGS,
  RUN_KINDS,
  RUN_PARTS,
  RUN_RULES,
  type RunRow,
} from "./run";

const ID = v.pipe(v.string(), v.minLength(1));

/** Sequences of the two-phase search are at most 23 turns; a longer one may come from elsewhere. */
const LONGEST_MIX = 1000;

const RUN = v.pipe(
  v.looseObject({
    id: ID,
    learner: ID,
    kind: v.picklist(RUN_KINDS),
    rules: v.picklist(RUN_RULES),
    at: MILLISECONDS,
    utcOffset: v.pipe(v.number(), v.minValue(-1440), v.maxValue(1440)),
    localDay: LOCAL_DAY,
    hold: v.picklist(HOLDS),
    mix: v.exactOptional(v.pipe(v.string(), v.maxLength(LONGEST_MIX))),
    inspection: v.exactOptional(MILLISECONDS),
    time: MILLISECONDS,
    splits: v.array(MILLISECONDS),
    ending: v.picklist(RUN_ENDINGS),
    wasHidden: v.exactOptional(v.boolean()),
  }),
  v.check(
    ({ kind, splits, time }) =>
      splits.length < RUN_PARTS[kind].length &&
      splits.every((at, n) => at >= (splits[n - 1] ?? 0) && at <= time),
  ),
);

const STRIKE = v.looseObject({
  id: ID,
  learner: ID,
  at: MILLISECONDS,
  strikes: ID,
});

/**
 * The run, or the striking out of one, that a stored row or a line of a file
 * holds. Fields that this version does not know are kept.
 *
 * Errors: as a review's; `contradiction` for the whole where taps do not rise,
 *         go beyond the end, or are more than there are parts.
 */
export function parseRunRow(row: unknown): Result<RunRow, StoredRowError> {
  const strikes =
    typeof row === "object" && row !== null && Object.hasOwn(row, "strikes");
  return strikes ? readBySchema(STRIKE, row) : readBySchema(RUN, row);
}
