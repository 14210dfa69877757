/** Look-alikes as the cases and a learner's own mistakes make them. */
import { areAlike } from "../../../core/cases/alike";
import type { AreAlike } from "../../../core/memory/fresh-order";
import type { LearnerState } from "../learner.svelte";
import { mixedUpPairs } from "./mixed-up-pairs";

/** Whether two cases are easily taken for each other, or were by this learner. */
export function alikeFor(learner: LearnerState): AreAlike {
  const pairs = mixedUpPairs(learner);
  return (a, b) =>
    areAlike(a, b) ||
    pairs.some(
      ({ case: id, answeredAs }) =>
        (id === a && answeredAs === b) || (id === b && answeredAs === a),
    );
}
