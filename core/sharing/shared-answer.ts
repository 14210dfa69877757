/**
 * One answer as it is shared with a coach: of a review what grading it anew
 * needs and what says what was taken for what; the turns and the position only
 * where the learner shares those too. Nothing else of a review is in it, so a
 * field that a review gains one day is not shared before somebody decides so.
 *
 * Whose answer it is stands in the block that carries it and not in its line:
 * a block can say nothing about anybody else.
 */
import * as v from "valibot";
import { HINTS, type Review } from "../memory/review";
import { ANSWER_ENTRIES } from "../memory/review-schema";
import {
  FACELETS,
  MILLISECONDS,
  readBySchema,
  type StoredRowError,
} from "../memory/stored-row";
import type { Result } from "../result";

/** An answer that a learner shared. Fields mean what they mean in a review; a `GradableReview`. */
export interface SharedAnswer extends Pick<
  Review,
  | "id"
  | "learner"
  | "case"
  | "hold"
  | "answerWay"
  | "asking"
  | "at"
  | "utcOffset"
  | "localDay"
  | "thinking"
  | "turning"
  | "total"
  | "verdict"
  | "answeredAs"
  | "mistook"
  | "corrections"
  | "hints"
  | "reported"
  | "interrupted"
  | "target"
> {
  /** Whether no time was written down; `total` is 0 then. */
  readonly untimed?: true;
  /** Absent: not shared. */
  readonly turns?: Review["turns"];
  /** Absent: not shared. */
  readonly position?: string;
}

/** A shared answer as its line has it, without its learner. */
export type AnswerLine = Omit<SharedAnswer, "learner">;

/**
 * How much of their answers a learner shares: nothing, how they answered, or
 * also the turns they made and the position they saw. Stored: never renamed.
 */
export const SHARED_PARTS = ["nothing", "answers", "turns"] as const;

/** See `SHARED_PARTS`. */
export type SharedPart = (typeof SHARED_PARTS)[number];

/** The most turns an answer may have. An hour of turns, one a second. */
const MOST_TURNS = 3600;

const ANSWER = v.looseObject({
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(200)),
  ...ANSWER_ENTRIES,
  hints: v.pipe(v.array(v.picklist(HINTS)), v.maxLength(1000)),
  turns: v.exactOptional(
    v.pipe(
      v.array(
        v.object({
          turn: v.pipe(v.string(), v.maxLength(10)),
          at: MILLISECONDS,
        }),
      ),
      v.maxLength(MOST_TURNS),
    ),
  ),
  position: v.exactOptional(FACELETS),
});

/** The answer that a block's line or a stored row holds; fields that this version does not know are kept. */
export function parseAnswerLine(
  row: unknown,
): Result<AnswerLine, StoredRowError> {
  return readBySchema(ANSWER, row);
}

/** What is shared of a review. */
export function answerLineOf(
  review: Review & { readonly untimed?: true },
  part: Exclude<SharedPart, "nothing">,
): AnswerLine {
  const { id, hold, answerWay, asking, at, utcOffset, localDay } = review;
  const { total, verdict, corrections, hints, reported, interrupted } = review;
  const { thinking, turning, untimed, answeredAs, mistook, target } = review;
  return {
    id,
    case: review.case,
    hold,
    answerWay,
    asking,
    at,
    utcOffset,
    localDay,
    ...(thinking !== undefined && { thinking }),
    ...(turning !== undefined && { turning }),
    total,
    ...(untimed !== undefined && { untimed }),
    verdict,
    ...(answeredAs !== undefined && { answeredAs }),
    ...(mistook !== undefined && { mistook }),
    corrections,
    hints,
    reported,
    interrupted,
    target,
    ...(part === "turns" && {
      turns: review.turns,
      position: review.position,
    }),
  };
}
