import { describe, expect, it } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import {
  FAR,
  type GoalDistances,
  goalDistances,
} from "../../../core/solver/goal-distances";
import {
  type GroupPlace,
  placeOfGroup,
  type PieceGroup,
  SLOT_PAIRS,
} from "../../../core/solver/piece-slots";
import { runToEnd } from "../../../core/steps";
import { CROSS_STATES_AT_HALF_TURN_DEPTH } from "../../reference/published-values";
import { turnsOf } from "../notation/turns-of";

const CROSS: PieceGroup = { kind: "edge", pieces: [0, 1, 2, 3] };
const LAYER_CORNERS: PieceGroup = { kind: "corner", pieces: [0, 1, 2, 3] };
const ONE_EDGE: PieceGroup = { kind: "edge", pieces: [1] };

function known(
  group: PieceGroup,
  goal: GroupPlace,
  reach: number,
): GoalDistances {
  const distances = goalDistances(group, goal);
  runToEnd(distances.extend(reach));
  return distances;
}

/** How many arrangements are at each distance. */
function histogram({ turns }: GoalDistances): number[] {
  const counts: number[] = [];
  for (const distance of turns)
    if (distance < FAR) counts[distance] = (counts[distance] ?? 0) + 1;
  return counts;
}

describe("distances to a goal", () => {
  const home = placeOfGroup(SOLVED, CROSS);

  it("of the cross are distributed as published", () => {
    expect(histogram(known(CROSS, home, 20))).toEqual(
      CROSS_STATES_AT_HALF_TURN_DEPTH,
    );
  });

  it("are found as far as asked, and further when asked again", () => {
    const distances = goalDistances(CROSS, home);
    expect(histogram(distances)).toEqual([1]);
    runToEnd(distances.extend(3));
    expect(distances.reach).toBe(3);
    expect(histogram(distances)).toEqual(
      CROSS_STATES_AT_HALF_TURN_DEPTH.slice(0, 4),
    );
    runToEnd(distances.extend(2));
    runToEnd(distances.extend(5));
    expect(histogram(distances)).toEqual(
      CROSS_STATES_AT_HALF_TURN_DEPTH.slice(0, 6),
    );
  });

  it("are the same there and back", () => {
    const turned = applyTurns(
      { cubies: SOLVED, hold: NO_ROTATION },
      turnsOf("R U F' D2 L B"),
    ).cubies;
    const away = placeOfGroup(turned, CROSS);
    const there = known(CROSS, away, 20).turns;
    const back = known(CROSS, home, 20).turns;
    const distance = there[home.first * SLOT_PAIRS + home.second];
    expect(distance).toBe(back[away.first * SLOT_PAIRS + away.second]);
    expect(distance).toBeGreaterThan(3);
  });

  it("reach all 136,080 arrangements of four corners and all 24 places of one edge", () => {
    const sum = (counts: number[]) => counts.reduce((a, b) => a + b, 0);
    const corners = placeOfGroup(SOLVED, LAYER_CORNERS);
    // 8 · 7 · 6 · 5 positions, 3^4 twists.
    expect(sum(histogram(known(LAYER_CORNERS, corners, 20)))).toBe(136_080);
    const edge = placeOfGroup(SOLVED, ONE_EDGE);
    expect(sum(histogram(known(ONE_EDGE, edge, 20)))).toBe(24);
  });
});
