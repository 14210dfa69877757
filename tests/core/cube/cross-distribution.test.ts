import { describe, expect, it } from "vitest";
import { compose, cubiesFrom, SOLVED } from "../../../core/cube/cubies";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import { edgePosition, knownOnly } from "../../../core/cube/partly-known";
import { type Edge, edge, EDGES } from "../../../core/cube/pieces";
import {
  CROSS_STATES_AT_HALF_TURN_DEPTH,
  CROSS_STATES_AT_QUARTER_TURN_DEPTH,
} from "../../reference/published-values";

const CROSS: readonly Edge[] = [edge("UR"), edge("UF"), edge("UL"), edge("UB")];

/** Where one edge is and whether it is flipped: 2 × position + orientation, 0–23. */
type EdgeState = number;

/** What each face turn does to an edge, wherever it is. Shape: turn × 24. */
const EDGE_STATE_AFTER: readonly Uint8Array[] = FACE_TURNS.map((turn) =>
  Uint8Array.from({ length: 24 }, (_, at: EdgeState) => {
    // One known edge, `UR`, on an otherwise unknown cube.
    const position = Math.floor(at / 2);
    const placing = EDGES.map((e) =>
      e === position ? 0 : e === 0 ? position : e,
    );
    const flips = EDGES.map((e) => (e === position ? at % 2 : 0));
    const start = knownOnly(
      cubiesFrom(
        [...SOLVED.cornerPermutation],
        [0, 0, 0, 0, 0, 0, 0, 0],
        placing,
        flips,
      ),
      new Set(),
      new Set([edge("UR")]),
    );
    const after = compose(start, turn);
    const now = edgePosition(after, edge("UR")) ?? NaN;
    return 2 * now + (after.edgeOrientation[now] ?? NaN);
  }),
);

function crossStatesByDepth(turns: readonly Uint8Array[]): number[] {
  const seen = new Uint8Array(2 ** 20);
  const pack = (states: readonly EdgeState[]) =>
    states.reduce((sum, state) => sum * 32 + state, 0);
  const placed = pack(CROSS.map((e) => 2 * e));
  seen[placed] = 1;
  let level = [placed];
  const counts: number[] = [];
  while (level.length > 0) {
    counts.push(level.length);
    const next: number[] = [];
    for (const state of level)
      for (const turn of turns) {
        let reached = 0;
        for (let shift = 15; shift >= 0; shift -= 5)
          reached = reached * 32 + (turn[(state >> shift) & 31] ?? 0);
        if (seen[reached] === 1) continue;
        seen[reached] = 1;
        next.push(reached);
      }
    level = next;
  }
  return counts;
}

describe("the first-layer edges by distance from placed", () => {
  it("are as published in the half-turn metric (Vandenbergh, Cross study)", () => {
    const counts = crossStatesByDepth(EDGE_STATE_AFTER);
    expect(counts).toEqual(CROSS_STATES_AT_HALF_TURN_DEPTH);
    const all = counts.reduce((a, b) => a + b);
    expect(all).toBe(190_080);
    const mean = counts.reduce((sum, n, depth) => sum + n * depth, 0) / all;
    expect(mean).toBeCloseTo(5.812, 3);
  });

  it("are as computed elsewhere in the quarter-turn metric", () => {
    const quarters = EDGE_STATE_AFTER.filter((_, index) => index % 3 !== 1);
    expect(crossStatesByDepth(quarters)).toEqual(
      CROSS_STATES_AT_QUARTER_TURN_DEPTH,
    );
  });
});
