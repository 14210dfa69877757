/** What becomes of an attempt that ended: its diagnosis, and the review that goes into the log. */
import { confusedWith } from "../../../core/answer/explanation";
import type { LocalDay } from "../../../core/memory/review";
import { now, utcOffset } from "../../platform/clock";
import { freshId } from "../../platform/random";
import type { LearnerState } from "../learner.svelte";
import { AnsweredCase, type Attempt } from "./answered-case.svelte";
import { diagnosisOf, type GivenAnswer, reviewOf } from "./given-answer";

/** An answer given now, counted for `localDay`. Nothing is stored yet. */
export function reviewedAnswer(
  attempt: Attempt,
  given: GivenAnswer,
  learner: LearnerState,
  localDay: LocalDay,
): AnsweredCase {
  const at = now();
  const { item } = attempt;
  const diagnosis = diagnosisOf(given, attempt.position, attempt.way);
  const { explanation } = diagnosis;
  const review = reviewOf(given, {
    id: freshId(),
    learner: learner.learner.id,
    item,
    answeredAs: explanation && confusedWith(explanation),
    position: attempt.position,
    answerWay: attempt.answerWay,
    scheme: learner.scheme,
    at,
    utcOffset: utcOffset(at),
    localDay,
    weightsVersion: learner.weightsVersion,
  });
  const before = learner.memoryOf(item.case, item.hold);
  const outcome = learner.outcomeOf(review);
  const usual = learner.usualFor(review);
  return new AnsweredCase(
    attempt,
    given,
    { review, diagnosis, outcome, usual },
    before,
  );
}
