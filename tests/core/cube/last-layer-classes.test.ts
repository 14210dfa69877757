import { describe, expect, it } from "vitest";
import type { Cubies } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { isCornerPlaced, isEdgePlaced } from "../../../core/cube/partly-known";
import { CORNERS, EDGES } from "../../../core/cube/pieces";
import { conjugate } from "../../../core/cube/symmetries";
import { inverseTurns } from "../../../core/notation/inverse";
import {
  LAST_LAYER_ORIENTATIONS,
  LAST_LAYER_PERMUTATIONS,
} from "../../reference/published-values";
import { turnsOf } from "../notation/turns-of";
import { START } from "./arbitrary-cubes";

/** The state that a sequence answers, as the learner sees it: last layer on top. */
function answeredBy(sequence: string): Cubies {
  const { cubies, hold } = applyTurns(START, inverseTurns(turnsOf(sequence)));
  return conjugate(cubies, hold);
}

function expectFirstTwoLayersPlaced(state: Cubies): void {
  for (const corner of CORNERS.slice(4))
    expect(isCornerPlaced(state, corner)).toBe(true);
  for (const edge of EDGES.slice(4))
    expect(isEdgePlaced(state, edge)).toBe(true);
}

/** Twists of the upper corners and flips of the upper edges, from each of four sides. */
function seenFromFourSides(state: Cubies): readonly string[] {
  const four = (values: Uint8Array, from: number) =>
    [0, 1, 2, 3].map((i) => values[(i + from) % 4] ?? NaN).join("");
  return [0, 1, 2, 3].map(
    (from) =>
      `${four(state.cornerOrientation, from)} ${four(state.edgeOrientation, from)}`,
  );
}

describe("the last layer's classes (last-layer.json)", () => {
  it.each(LAST_LAYER_ORIENTATIONS)(
    "orientation $number shows the twists and flips that it is listed with",
    ({ sequence, cornerTwists, edgeFlips, of216 }) => {
      const state = answeredBy(sequence);
      expectFirstTwoLayersPlaced(state);
      const sides = seenFromFourSides(state);
      expect([...sides].sort()[0]).toBe(`${cornerTwists} ${edgeFlips}`);
      expect(new Set(sides).size).toBe(of216);
    },
  );

  it("the 57 orientations and the solved one make up all 216", () => {
    const listed = LAST_LAYER_ORIENTATIONS.map(
      ({ cornerTwists, edgeFlips }) => `${cornerTwists} ${edgeFlips}`,
    );
    expect(new Set(listed).size).toBe(57);
    const sum = LAST_LAYER_ORIENTATIONS.reduce((n, { of216 }) => n + of216, 0);
    expect(sum + 1).toBe(216);
  });

  it.each(LAST_LAYER_PERMUTATIONS)(
    "permutation $name turns over no piece of the last layer",
    ({ sequence }) => {
      const state = answeredBy(sequence);
      expectFirstTwoLayersPlaced(state);
      expect([...state.cornerOrientation]).toEqual(new Array(8).fill(0));
      expect([...state.edgeOrientation]).toEqual(new Array(12).fill(0));
    },
  );
});
