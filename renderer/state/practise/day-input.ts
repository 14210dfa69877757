/** What a learner's days are planned from. */
import type { DayPlanInput } from "../../../core/memory/plan-candidates";
import type { LearnerState } from "../learner.svelte";
import { decksToPlan } from "./deck-choices";
import { isPractised, type Practised } from "./practised";

/** A learner's decks and memory as they are now; of what was chosen only, where something was. */
export function dayInput(
  learner: LearnerState,
  of: Practised | undefined,
): DayPlanInput {
  return {
    learner: learner.learner.id,
    decks: decksToPlan(learner.decks, of),
    hold: learner.settings.hold,
    memories: learner.memories,
    today: learner.today,
    settings: learner.schedule,
    only: (id) => isPractised(id, of),
  };
}
