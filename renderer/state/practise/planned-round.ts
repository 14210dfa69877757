/** Where a round comes from: what the learner's decks and memory make of today, and a round cut from it. */
import { planDay } from "../../../core/memory/day-plan";
import type { AreAlike } from "../../../core/memory/fresh-order";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import {
  planRecognising,
  withRightChoices,
} from "../../../core/memory/recognising-round";
import type { RecognisingWay } from "../../../core/memory/review";
import { type Round, startRound } from "../../../core/memory/round";
import { planRound } from "../../../core/memory/round-plan";
import { secondsPractised } from "../../../core/memory/time-needed";
import { planToday, type TodayPlan } from "../../../core/memory/today";
import { randomSource } from "../../../core/random-source";
import { now } from "../../platform/clock";
import { freshId, freshSeed } from "../../platform/random";
import type { LearnerState } from "../learner.svelte";
import { alikeFor } from "./alike-for";
import { askingTimes } from "./asking-times";
import { dayInput } from "./day-input";
import { metDeck } from "./deck-choices";
import { mixedUpPairs } from "./mixed-up-pairs";
import { type Practised, tellingApart, WEAK_SPOTS } from "./practised";
import { weakSpotsOf } from "./weak-spots-round";

/** What of the learner's decks is due and new today and fits what is left of their minutes. */
export function todayOf(
  learner: LearnerState,
  areAlike: AreAlike = alikeFor(learner),
): TodayPlan {
  const { reviews, settings, today } = learner;
  const timesOf = askingTimes(learner);
  return planToday({
    ...dayInput(learner, undefined),
    minutes: settings.minutes,
    practised: secondsPractised(reviews, today),
    secondsFor: (planned) => timesOf(planned).times.toAsk(planned),
    areAlike,
  });
}

/** A new round of what was chosen, or of what today brings; undefined: there is nothing. */
export function plannedRound(
  learner: LearnerState,
  of: Practised | undefined,
): Round | undefined {
  learner.refreshToday();
  if (of === WEAK_SPOTS) return roundOf(learner, weakSpotsOf(learner).asked);
  const way = tellingApart(of);
  if (way !== undefined) return roundToTellApart(learner, way);
  if (of !== undefined) return extraRound(learner, of);
  const areAlike = alikeFor(learner);
  const planned = planRound(todayOf(learner, areAlike), { areAlike });
  return roundOf(learner, planned);
}

/** A round of questions about the cases that were met, whatever deck they are in. */
function roundToTellApart(
  learner: LearnerState,
  way: RecognisingWay,
): Round | undefined {
  const { due, resting } = planDay({
    ...dayInput(learner, undefined),
    decks: [...learner.decks, metDeck(learner)],
    only: (id) => learner.memoryOf(id) !== undefined,
  });
  const planned = planRecognising(
    [...due, ...resting],
    way,
    withRightChoices(learner.reviews, mixedUpPairs(learner)),
    randomSource(freshSeed()),
  );
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
