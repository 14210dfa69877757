import fc from "fast-check";
import { expect, it } from "vitest";
import { goalTest } from "../../../core/answer/goal-test";
import { quartersToGoal } from "../../../core/cases/case-goal";
import { goalOf } from "../../../core/cases/constraint";
import { casesOfStage } from "../../../core/cases/case-table";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { startOf } from "../../../core/cases/position";
import { STAGES } from "../../../core/cases/stage";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { applyTurns } from "../../../core/cube/held-cube";
import { pick, randomSource } from "../../../core/random-source";
import { arbitraryTurn } from "../notation/arbitrary-turns";

it("says whether a goal is reached as `quartersToGoal` does, in every stage, with pieces unknown too", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...STAGES),
      fc.integer(),
      fc.array(arbitraryTurn(), { maxLength: 3 }),
      fc.boolean(),
      fc.boolean(),
      (stage, seed, turns, isAnswered, isPartly) => {
        const random = randomSource(seed);
        const { id } = pick(random, casesOfStage(stage));
        const variant = randomVariant(random, id, { turnedAway: true });
        const all = randomPosition(random, id, variant, "down");
        const position = isPartly ? partlyKnownPosition(all, "named") : all;
        // Half of them answered, for chance alone reaches no goal.
        const { cubies } = applyTurns(startOf(position), [
          ...(isAnswered ? turnsForPosition(all) : []),
          ...turns,
        ]);
        const goal = goalOf(position);
        expect(goalTest(goal)(cubies)).toBe(
          quartersToGoal(cubies, goal) !== undefined,
        );
      },
    ),
    { numRuns: 1000 },
  );
});
