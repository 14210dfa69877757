import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FREE_LAYER } from "../../../core/cases/stage";
import { SOLVED } from "../../../core/cube/cubies";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { FACE_INDEX } from "../../../core/cube/faces";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import { randomSource } from "../../../core/random-source";
import { askedPieces, type CaseGoal } from "../../../core/cases/case-goal";
import { halvesOf, valueOfHalf } from "../../../core/solver/case-halves";
import { buildNearby } from "../../../core/solver/case-nearby";
import {
  afterSequence,
  faceOfTurn,
  inverseSequence,
} from "../../../core/solver/face-turn-sequence";
import { runToEnd } from "../../../core/steps";
import { ALL_PLACED, LAST_LAYER_TURNED, TWO_LAYERS } from "./case-questions";

const REACH = 3;

function nearbyTo(goal: CaseGoal) {
  const halves = halvesOf(askedPieces(goal));
  const nearby = runToEnd(buildNearby(halves, REACH));
  /** Whether the state after a turn may be near. */
  return (before: typeof SOLVED, turn: number): boolean => {
    const marks = halves.map((half, h) => {
      const value = valueOfHalf(half, before);
      return nearby.marksAfter[h]?.[value * FACE_TURNS.length + turn] ?? NaN;
    });
    return nearby.has(marks.reduce((sum, mark) => (sum + mark) | 0, 0) >>> 0);
  };
}

describe.each([
  ["all placed", ALL_PLACED],
  ["the last layer turned", LAST_LAYER_TURNED],
  ["the first two layers placed", { placed: TWO_LAYERS }],
] as const)("the states near %s", (_, goal) => {
  const isNear = nearbyTo(goal);

  it("hold every state that so many turns bring to the goal, the free layer turned anyhow", () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(17), { maxLength: REACH - 1 }),
        fc.nat(17),
        fc.nat(3),
        fc.nat(17),
        (first, last, free, turn) => {
          fc.pre(faceOfTurn(last) !== FACE_INDEX[FREE_LAYER]);
          const rest = free === 0 ? [] : [8 + free];
          const away = inverseSequence([...first, last, ...rest]);
          // The turn asked about leads to where the others lead away from.
          const before = afterSequence(SOLVED, [
            ...away,
            ...inverseSequence([turn]),
          ]);
          expect(isNear(before, turn)).toBe(true);
        },
      ),
    );
  });

  it("hold hardly any other", () => {
    const random = randomSource(9);
    for (let i = 0; i < 1000; i++)
      expect(isNear(sampleState(random, ANY_STATE), 0)).toBe(false);
  });
});
