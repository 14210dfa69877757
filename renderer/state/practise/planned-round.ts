/** Where a round comes from: what the learner's decks and memory make of today, and a round cut from it. */
import { type DayPlan, planDay } from "../../../core/memory/day-plan";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { type Round, startRound } from "../../../core/memory/round";
import { planRound } from "../../../core/memory/round-plan";
import { now } from "../../platform/clock";
import { freshId, freshSeed } from "../../platform/random";
import type { LearnerState } from "../learner.svelte";
import { decksToPlan } from "./deck-choices";
import { isPractised, type Practised } from "./practised";

/** A learner's day, and the round it begins with; undefined: it is done. */
export interface PlannedRound {
  readonly day: DayPlan;
  readonly round: Round | undefined;
}

/** A new round of what was chosen, or of what is due and new. */
export function plannedRound(
  learner: LearnerState,
  of: Practised | undefined,
): PlannedRound {
  learner.refreshToday();
  const day = planDay({
    learner: learner.learner.id,
    decks: decksToPlan(learner.decks, of),
    hold: learner.settings.hold,
    memories: learner.memories,
    today: learner.today,
    settings: learner.schedule,
    only: (id) => isPractised(id, of),
  });
  const planned = planRound(day, { extra: of !== undefined });
  const round = planned.length === 0 ? undefined : roundOf(learner, planned);
  return { day, round };
}

/** A round of cases that need no practice today. */
export function extraRound(learner: LearnerState, day: DayPlan): Round {
  return roundOf(learner, planRound(day, { extra: true }));
}

function roundOf(
  learner: LearnerState,
  planned: readonly PlannedCase[],
): Round {
  return startRound(planned, {
    id: freshId(),
    learner: learner.learner.id,
    day: learner.today,
    seed: freshSeed(),
    now: now(),
  });
}
