import { describe, expect, it } from "vitest";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
} from "../../../core/cases/stage";
import { askedPieces, type CaseGoal } from "../../../core/cases/case-goal";
import { createCaseTableShelf, NEVER } from "../../../core/solver/case-tables";
import { runToEnd } from "../../../core/steps";
import { CROSS_STATES_AT_HALF_TURN_DEPTH } from "../../reference/published-values";
import { ALL_PLACED, LAST_LAYER_TURNED } from "./case-questions";

function tablesOf(goal: CaseGoal) {
  const shelf = createCaseTableShelf();
  return runToEnd(shelf.follow(askedPieces(goal))).tables;
}

/** How many arrangements are at each distance. */
function histogram(turns: Uint8Array): number[] {
  const counts: number[] = [];
  for (const distance of turns)
    if (distance < NEVER) counts[distance] = (counts[distance] ?? 0) + 1;
  return counts;
}

describe("the tables of a case search", () => {
  // In quarter turns: `cross-distribution.test.ts`.
  it("know the cross as published, in half turns", () => {
    const tables = tablesOf({
      placed: { corners: [], edges: FIRST_LAYER_EDGES },
    });
    expect(tables.map(({ turns }) => histogram(turns))).toEqual([
      CROSS_STATES_AT_HALF_TURN_DEPTH,
    ]);
  });

  // Source: check-values and the issue (computed).
  it("know the first layer's corners alone as computed elsewhere", () => {
    const tables = tablesOf({
      placed: { corners: FIRST_LAYER_CORNERS, edges: [] },
    });
    expect(tables.map(({ turns }) => histogram(turns))).toEqual([
      [1, 15, 198, 2030, 15396, 61768, 53528, 3144],
    ]);
  });

  it("take every way the goal allows for reached, and nothing else", () => {
    // Four turns of the layer for pieces placed; 4! orders for pieces turned.
    const reached = (goal: CaseGoal) =>
      tablesOf(goal).map(({ turns }) => histogram(turns)[0]);
    expect(reached(ALL_PLACED)).toEqual([1, 1, 1, 1, 1, 4, 4, 4, 4]);
    expect(reached(LAST_LAYER_TURNED)).toEqual([
      1, 1, 1, 1, 1, 24, 24, 144, 144,
    ]);
  });
});
