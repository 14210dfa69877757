import { describe, expect, it, vi } from "vitest";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
} from "../../../core/cases/stage";
import {
  compose,
  type PartlyKnownCubies,
  SOLVED,
} from "../../../core/cube/cubies";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import { applyTurns } from "../../../core/cube/held-cube";
import { agreesWith, knownOnly } from "../../../core/cube/partly-known";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { randomSource } from "../../../core/random-source";
import {
  type FaceTurnSequence,
  faceTurnsOf,
  normalised,
} from "../../../core/solver/face-turn-sequence";
import { createSequenceSearch } from "../../../core/solver/sequence-search";
import { runToEnd } from "../../../core/steps";
import { turnsOf } from "../notation/turns-of";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const CORNERS = new Set(FIRST_LAYER_CORNERS);
const EDGES = new Set(FIRST_LAYER_EDGES);

function after(turns: string): PartlyKnownCubies {
  const cube = { cubies: SOLVED, hold: NO_ROTATION };
  return applyTurns(cube, turnsOf(turns)).cubies;
}

function effect(from: PartlyKnownCubies, turns: FaceTurnSequence) {
  return turns.reduce(
    (state, turn) => compose(state, FACE_TURNS[turn] ?? SOLVED),
    from,
  );
}

function found(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
  length: number,
  seed = 1,
): readonly FaceTurnSequence[] {
  const all: FaceTurnSequence[] = [];
  const search = createSequenceSearch(from, to, randomSource(seed));
  runToEnd(
    search.ofLength(length, (turns) => {
      all.push(turns);
      return true;
    }),
  );
  return all;
}

/** The same, by trying every sequence with no bound at all. */
function foundBlindly(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
  length: number,
): readonly string[] {
  let sequences: FaceTurnSequence[] = [[]];
  for (let i = 0; i < length; i++)
    sequences = sequences.flatMap((turns) =>
      FACE_TURNS.map((_, turn) => [...turns, turn]),
    );
  return sequences
    .filter((turns) => normalised(turns).join() === turns.join())
    .filter((turns) => agreesWith(effect(from, turns), to))
    .map(String)
    .toSorted();
}

describe("the search for sequences", () => {
  it("finds exactly those that trying everything finds, each once", () => {
    const cross = knownOnly(after("F2"), new Set(), EDGES);
    const layer = knownOnly(after("R' D' R"), CORNERS, EDGES);
    for (const length of [1, 2, 3]) {
      for (const to of [cross, layer]) {
        expect(found(SOLVED, to, length).map(String).toSorted()).toEqual(
          foundBlindly(SOLVED, to, length),
        );
      }
    }
    expect(found(SOLVED, cross, 1)).toHaveLength(1);
    expect(found(SOLVED, layer, 3).length).toBeGreaterThan(0);
  });

  it("finds only sequences that lead to the goal, from anywhere and of any length", () => {
    const from = after("U R2 F D'");
    const to = knownOnly(after("L D2 B"), CORNERS, EDGES);
    for (const length of [6, 7, 8]) {
      for (const turns of found(from, to, length)) {
        expect(turns).toHaveLength(length);
        expect(agreesWith(effect(from, turns), to)).toBe(true);
      }
    }
    // Taking the one way back and going the other is one of them.
    const direct = normalised(
      faceTurnsOf(NO_ROTATION, turnsOf("D F' R2 U' L D2 B")),
    );
    expect(found(from, to, 7).map(String)).toContain(String(direct));
  });

  it("says them in another order for another seed, and stops when told", () => {
    const to = knownOnly(after("F2"), new Set(), EDGES);
    const first = found(SOLVED, to, 4, 1).map(String);
    const second = found(SOLVED, to, 4, 2).map(String);
    expect(first).not.toEqual(second);
    expect(first.toSorted()).toEqual(second.toSorted());
    let count = 0;
    const search = createSequenceSearch(SOLVED, to, randomSource(1));
    runToEnd(search.ofLength(4, () => ++count < 5));
    expect(count).toBe(5);
  });
});
