import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { compose, SOLVED } from "../../../core/cube/cubies";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import {
  CORNER_ORDER,
  CORNER_SPLIT,
  type CoordinateKind,
  coordinateOf,
  EDGE_ORDER,
  EDGE_SPLIT,
  FLIP,
  SLICE,
  SLICE_ORDER,
  TWIST,
} from "../../../core/solver/coordinates";
import {
  ALL_TURNS,
  buildMoveTable,
  PHASE_TWO_TURNS,
} from "../../../core/solver/move-tables";
import { permutationRank } from "../../../core/solver/permutation-rank";
import { runToEnd } from "../../../core/steps";
import { arbitraryCubies } from "../cube/arbitrary-cubes";
import { arbitraryPhaseTwoCubies } from "./arbitrary-phase-two";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const PHASE_ONE: readonly (readonly [string, CoordinateKind<number>])[] = [
  ["twist", TWIST],
  ["flip", FLIP],
  ["slice", SLICE],
];
const PHASE_TWO: readonly (readonly [string, CoordinateKind<number>])[] = [
  ["corner order", CORNER_ORDER],
  ["edge order", EDGE_ORDER],
  ["slice order", SLICE_ORDER],
  ["corner split", CORNER_SPLIT],
  ["edge split", EDGE_SPLIT],
];

describe("coordinates", () => {
  it("have as many values as the two-phase algorithm's (Kociemba)", () => {
    expect([...PHASE_ONE, ...PHASE_TWO].map(([, kind]) => kind.size)).toEqual([
      2187, 2048, 495, 40320, 40320, 24, 70, 70,
    ]);
  });

  it.each([...PHASE_ONE, ...PHASE_TWO])(
    "%s: every value is read back from the array written for it, and 0 is solved",
    (_, kind) => {
      const wrong: number[] = [];
      for (let value = 0; value < kind.size; value++) {
        const array = SOLVED[kind.array].slice();
        kind.write(value, array);
        if (kind.read(array) !== value) wrong.push(value);
      }
      expect(wrong).toEqual([]);
      expect(coordinateOf(kind, SOLVED)).toBe(0);
    },
  );

  it("a permutation's rank is its place in dictionary order", () => {
    const array = SOLVED.cornerPermutation.slice();
    const words = Array.from({ length: CORNER_ORDER.size }, (_, rank) => {
      CORNER_ORDER.write(rank, array);
      return array.join("");
    });
    expect(words).toEqual([...new Set(words)].toSorted());
    expect(permutationRank(Uint8Array.from([9, 10, 8]), 0, 3, 8)).toBe(3);
  });
});

describe("move tables", () => {
  it.each(PHASE_ONE)(
    "%s: the table and composing pieces agree after any turn of any state",
    (_, kind) => {
      const table = runToEnd(buildMoveTable(kind, ALL_TURNS));
      fc.assert(
        fc.property(arbitraryCubies, (state) => {
          for (const [turn, effect] of FACE_TURNS.entries())
            expect(table.next[18 * coordinateOf(kind, state) + turn]).toBe(
              coordinateOf(kind, compose(state, effect)),
            );
        }),
      );
    },
  );

  it.each(PHASE_TWO)(
    "%s: the table and composing pieces agree after any turn of phase 2",
    (_, kind) => {
      const table = runToEnd(buildMoveTable(kind, PHASE_TWO_TURNS));
      fc.assert(
        fc.property(arbitraryPhaseTwoCubies, (state) => {
          for (const [k, turn] of PHASE_TWO_TURNS.entries()) {
            const effect = FACE_TURNS[turn] ?? SOLVED;
            expect(table.next[10 * coordinateOf(kind, state) + k]).toBe(
              coordinateOf(kind, compose(state, effect)),
            );
          }
        }),
      );
    },
  );
});
