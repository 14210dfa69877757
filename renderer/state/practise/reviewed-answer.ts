/** What becomes of an attempt that ended: its diagnosis, and the review that goes into the log. */
import { confusedWith } from "../../../core/answer/explanation";
import type { LocalDay } from "../../../core/memory/review";
import type { LearnerState } from "../learner.svelte";
import { AnsweredCase, type Attempt } from "./answered-case.svelte";
import { diagnosisOf, type GivenAnswer } from "./given-answer";
import { reviewNow } from "./review-now";

/** An answer given now, counted for `localDay`. Nothing is stored yet. Shape: `id` as for `ReviewedQuestion`. */
export function reviewedAnswer(
  attempt: Attempt,
  given: GivenAnswer,
  learner: LearnerState,
  localDay: LocalDay,
  id?: string,
): AnsweredCase {
  const { item, position, answerWay } = attempt;
  const diagnosis = diagnosisOf(given, position, attempt.way);
  const { explanation } = diagnosis;
  const answeredAs = explanation && confusedWith(explanation);
  const { review, outcome } = reviewNow(
    given,
    {
      item,
      position,
      answerWay,
      answeredAs,
      ...(id === undefined ? {} : { id }),
    },
    learner,
    localDay,
  );
  const before = learner.memoryOf(item.case, item.hold);
  const usual = learner.usualFor(review);
  return new AnsweredCase(
    attempt,
    given,
    { review, diagnosis, outcome, usual },
    before,
  );
}
