/** "What did I answer last, and how?" as data. */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import { type Outcome, outcomeOf } from "../memory/grade";
import type { Review } from "../memory/review";
import { inReplayOrder } from "../memory/schedule";

/** An answer as the progress page lists it. */
export interface LastAnswer {
  readonly review: Review;
  readonly outcome: Outcome;
}

/** Which answers are asked for. */
export interface AnswerFilter {
  readonly learner: string;
  readonly case?: CaseId;
  readonly hold?: Hold;
}

/** The last answers of a learner, the newest first. Showings are no answers. */
export function lastAnswers(
  log: readonly Review[],
  count: number,
  filter: AnswerFilter,
): readonly LastAnswer[] {
  const wanted = log.filter(
    (review) =>
      review.learner === filter.learner &&
      (filter.case === undefined || review.case === filter.case) &&
      (filter.hold === undefined || review.hold === filter.hold) &&
      review.asking !== "shown",
  );
  return inReplayOrder(wanted)
    .slice(Math.max(0, wanted.length - count))
    .toReversed()
    .map((review) => ({ review, outcome: outcomeOf(review) }));
}
