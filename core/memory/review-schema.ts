/** Reading a stored review: rows and files are parsed, never believed. */
import * as v from "valibot";
import { CASE_ID } from "../cases/case-id-schema";
import { HOLDS } from "../cases/variant";
import { PIECE_NAMES } from "../cube/pieces";
import type { Result } from "../result";
import { ANSWER_WAYS, ASKINGS, HINTS, type Review } from "./review";
import {
  COUNT,
  FACELETS,
  LOCAL_DAY,
  MILLISECONDS,
  readBySchema,
  type StoredRowError,
  TARGET,
  VARIANT,
} from "./stored-row";

/** The fields of an answer that say what was asked and how it went, as a review has them and a shared answer too. */
export const ANSWER_ENTRIES = {
  case: CASE_ID,
  hold: v.picklist(HOLDS),
  answerWay: v.picklist(ANSWER_WAYS),
  asking: v.picklist(ASKINGS),
  at: MILLISECONDS,
  utcOffset: v.pipe(v.number(), v.minValue(-1440), v.maxValue(1440)),
  localDay: LOCAL_DAY,
  thinking: v.exactOptional(MILLISECONDS),
  turning: v.exactOptional(MILLISECONDS),
  total: MILLISECONDS,
  untimed: v.exactOptional(v.literal(true)),
  verdict: v.picklist(["right", "missed"]),
  answeredAs: v.exactOptional(CASE_ID),
  mistook: v.exactOptional(
    v.object({ piece: v.picklist(PIECE_NAMES), for: v.picklist(PIECE_NAMES) }),
  ),
  corrections: COUNT,
  reported: v.boolean(),
  interrupted: v.boolean(),
  target: TARGET,
};

const REVIEW = v.looseObject({
  id: v.string(),
  learner: v.string(),
  ...ANSWER_ENTRIES,
  variant: VARIANT,
  firstColour: v.string(),
  position: FACELETS,
  turns: v.array(v.object({ turn: v.string(), at: MILLISECONDS })),
  slips: COUNT,
  hints: v.array(v.picklist(HINTS)),
  hintTimes: v.exactOptional(v.array(MILLISECONDS)),
  looks: v.exactOptional(COUNT),
  deck: v.string(),
  gradingVersion: COUNT,
  weightsVersion: COUNT,
});

/**
 * The review that a stored row or a line of a file holds. Fields that this
 * version does not know are kept.
 */
export function parseReview(row: unknown): Result<Review, StoredRowError> {
  return readBySchema(REVIEW, row);
}
