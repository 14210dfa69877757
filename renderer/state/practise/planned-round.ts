/** Where a round comes from: what the learner's decks and memory make of today, and a round cut from it. */
import type { CaseId } from "../../../core/cases/case-ids";
import { areAlike } from "../../../core/cases/alike";
import { confusedPairs } from "../../../core/memory/confused-pairs";
import { planDay } from "../../../core/memory/day-plan";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { type Round, startRound } from "../../../core/memory/round";
import { planRound } from "../../../core/memory/round-plan";
import { secondsPractised, timeNeeded } from "../../../core/memory/time-needed";
import { planToday, type TodayPlan } from "../../../core/memory/today";
import { now } from "../../platform/clock";
import { freshId, freshSeed } from "../../platform/random";
import type { LearnerState } from "../learner.svelte";
import { dayInput } from "./day-input";
import { type Practised, WEAK_SPOTS } from "./practised";
import { weakSpotsOf } from "./weak-spots-round";

/** What of the learner's decks is due and new today and fits what is left of their minutes. */
export function todayOf(learner: LearnerState): TodayPlan {
  const { reviews, settings, today } = learner;
  return planToday({
    ...dayInput(learner, undefined),
    minutes: settings.minutes,
    practised: secondsPractised(reviews, today),
    secondsFor: timeNeeded(reviews, settings.answerWay).toAsk,
  });
}

type LookAlike = (a: CaseId, b: CaseId) => boolean;

/** Look-alikes as the cases and this learner's own mistakes make them. */
function alikeFor({ reviews }: LearnerState): LookAlike {
  const areConfused = confusedPairs(reviews);
  return (a, b) => areAlike(a, b) || areConfused(a, b);
}

/** A new round of what was chosen, or of what today brings; undefined: there is nothing. */
export function plannedRound(
  learner: LearnerState,
  of: Practised | undefined,
): Round | undefined {
  learner.refreshToday();
  if (of === WEAK_SPOTS) return roundOf(learner, weakSpotsOf(learner).asked);
  if (of !== undefined) return extraRound(learner, of);
  const planned = planRound(todayOf(learner), { areAlike: alikeFor(learner) });
  return roundOf(learner, planned);
}

/** A round of what was chosen, or of the decks, that neither the minutes nor the schedule hold back. */
export function extraRound(
  learner: LearnerState,
  of?: Practised,
): Round | undefined {
  const planned = planRound(planDay(dayInput(learner, of)), {
    extra: true,
    areAlike: alikeFor(learner),
  });
  return roundOf(learner, planned);
}

function roundOf(
  learner: LearnerState,
  planned: readonly PlannedCase[],
): Round | undefined {
  if (planned.length === 0) return undefined;
  return startRound(planned, {
    id: freshId(),
    learner: learner.learner.id,
    day: learner.today,
    seed: freshSeed(),
    now: now(),
  });
}
