/** How long a learner's cases take them, each in the way in which it would be answered. */
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import type { AnswerWay } from "../../../core/memory/review";
import { type TimeNeeded, timeNeeded } from "../../../core/memory/time-needed";
import type { LearnerState } from "../learner.svelte";
import { answerWayOf } from "./deck-choices";

/** The times of a planned case: a deck may want it answered in another way than the learner chose. */
export function askingTimes({ reviews, settings }: LearnerState): (
  planned: PlannedCase,
) => {
  readonly way: AnswerWay;
  readonly times: TimeNeeded;
} {
  const byWay: Partial<Record<AnswerWay, TimeNeeded>> = {};
  return (planned) => {
    const way = answerWayOf(planned, settings);
    const times = (byWay[way] ??= timeNeeded(reviews, way));
    return { way, times };
  };
}
