/** The review that an answer given now makes for whoever is at the desk. */
import type { Outcome } from "../../../core/memory/grade";
import type { LocalDay, Review } from "../../../core/memory/review";
import { now, utcOffset } from "../../platform/clock";
import { freshId } from "../../platform/random";
import type { LearnerState } from "../learner.svelte";
import {
  type ReviewContext,
  type ReviewedPart,
  reviewOf,
} from "./given-answer";

/** What was asked and how, and what was taken for it. Shape: `id` where the review's was chosen before; absent: a fresh one. */
export type ReviewedQuestion = Pick<
  ReviewContext,
  "item" | "position" | "answerWay" | "answeredAs" | "mistook"
> &
  Partial<Pick<ReviewContext, "id">>;

/** The review of an answer given now, counted for `localDay`, and what it is worth. Nothing is stored yet. */
export function reviewNow(
  given: ReviewedPart,
  question: ReviewedQuestion,
  learner: LearnerState,
  localDay: LocalDay,
): { readonly review: Review; readonly outcome: Outcome } {
  const at = now();
  const review = reviewOf(given, {
    ...question,
    id: question.id ?? freshId(),
    learner: learner.learner.id,
    scheme: learner.scheme,
    at,
    utcOffset: utcOffset(at),
    localDay,
    weightsVersion: learner.weightsVersion,
  });
  return { review, outcome: learner.outcomeOf(review) };
}
