/** What a learner mixed up of late. */
import { dayAfter } from "../../../core/memory/local-day";
import {
  type Confusion,
  confusionsOf,
} from "../../../core/progress/confusions";
import { CONFUSION_DAYS } from "../../../core/progress/progress-facts";
import type { LearnerState } from "../learner.svelte";

/** The cases that a learner mixed up of late, most often first. */
export function mixedUpPairs({
  today,
  reviews,
}: Pick<LearnerState, "today" | "reviews">): readonly Confusion[] {
  return confusionsOf(reviews, dayAfter(today, -CONFUSION_DAYS)).pairs;
}
