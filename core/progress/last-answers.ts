/** "What did I answer last, and how?" as data. */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import type { GradedReview } from "../memory/grader";
import type { Review } from "../memory/review";

/** An answer as the progress page lists it. */
export type LastAnswer = Pick<GradedReview, "review" | "outcome">;

/** What of an answer a list of them shows, wherever it comes from. */
export interface ListedAnswer extends Pick<GradedReview, "outcome"> {
  readonly review: Pick<
    Review,
    | "id"
    | "localDay"
    | "interrupted"
    | "answerWay"
    | "total"
    | "untimed"
    | "thinking"
    | "turning"
    | "target"
  >;
}

/** Which answers are asked for. */
export interface AnswerFilter {
  readonly learner: string;
  readonly case?: CaseId;
  readonly hold?: Hold;
}

/**
 * The last answers of a learner, the newest first. Showings are no answers.
 *
 * Shape: `log` as `gradeLog` makes it, in the order of replay.
 */
export function lastAnswers(
  log: readonly GradedReview[],
  count: number,
  filter: AnswerFilter,
): readonly LastAnswer[] {
  const wanted = log.filter(
    ({ review }) =>
      review.learner === filter.learner &&
      (filter.case === undefined || review.case === filter.case) &&
      (filter.hold === undefined || review.hold === filter.hold) &&
      review.asking !== "shown",
  );
  return wanted.slice(Math.max(0, wanted.length - count)).toReversed();
}
