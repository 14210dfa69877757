import { describe, expect, it } from "vitest";
import { compose, type Cubies, SOLVED } from "../../../core/cube/cubies";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import {
  STATES_AT_HALF_TURN_DEPTH,
  STATES_AT_QUARTER_TURN_DEPTH,
} from "../../reference/published-values";

const QUARTER_TURNS = FACE_TURNS.filter((_, index) => index % 3 !== 1);

/** A whole state, five bits a piece and three pieces a letter. */
function key(state: Cubies): string {
  const corners = [state.cornerPermutation, state.cornerOrientation] as const;
  const edges = [state.edgePermutation, state.edgeOrientation] as const;
  return String.fromCharCode(
    threePieces(...corners, 0, 4),
    threePieces(...corners, 3, 4),
    threePieces(...corners, 6, 4),
    threePieces(...edges, 0, 2),
    threePieces(...edges, 3, 2),
    threePieces(...edges, 6, 2),
    threePieces(...edges, 9, 2),
  );
}

function threePieces(
  pieces: Uint8Array,
  turned: Uint8Array,
  first: number,
  room: 2 | 4,
): number {
  let code = 0;
  for (let i = first; i < first + 3; i++)
    code = code * 32 + (pieces[i] ?? 0) * room + (turned[i] ?? 0);
  return code;
}

function statesByDepth(turns: readonly Cubies[], deepest: number): number[] {
  let before = new Set<string>();
  let now = new Set([key(SOLVED)]);
  let states = [SOLVED];
  const counts = [now.size];
  for (let depth = 1; depth <= deepest; depth++) {
    const next = new Set<string>();
    const reachedStates: Cubies[] = [];
    for (const state of states)
      for (const turn of turns) {
        const reached = compose(state, turn);
        const name = key(reached);
        // A turn goes at most one level back, so older levels cannot recur.
        if (before.has(name) || now.has(name) || next.has(name)) continue;
        next.add(name);
        if (depth < deepest) reachedStates.push(reached);
      }
    before = now;
    now = next;
    states = reachedStates;
    counts.push(now.size);
  }
  return counts;
}

describe("the number of states by distance from solved", () => {
  it("is as published in the half-turn metric, to depth 5 (OEIS A080601)", () => {
    expect(statesByDepth(FACE_TURNS, 5)).toEqual(STATES_AT_HALF_TURN_DEPTH);
  }, 60_000);

  it("is as published in the quarter-turn metric, to depth 5 (OEIS A080602)", () => {
    expect(statesByDepth(QUARTER_TURNS, 5)).toEqual(
      STATES_AT_QUARTER_TURN_DEPTH,
    );
  }, 60_000);
});
