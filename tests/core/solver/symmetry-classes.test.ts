import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import type { Cubies } from "../../../core/cube/cubies";
import { conjugate } from "../../../core/cube/symmetries";
import { present } from "../../../core/invariant";
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
  AXES_SYMMETRIES,
  AXIS_SYMMETRIES,
  conjugationTable,
  symmetryClasses,
} from "../../../core/solver/symmetry-classes";
import { arbitraryCubies } from "../cube/arbitrary-cubes";
import { arbitraryPhaseTwoCubies } from "./arbitrary-phase-two";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

type Row = readonly [
  string,
  CoordinateKind<number>,
  typeof AXES_SYMMETRIES,
  fc.Arbitrary<Cubies>,
];

const CLASSED: readonly Row[] = [
  ["twist", TWIST, AXES_SYMMETRIES, arbitraryCubies],
  ["flip", FLIP, AXES_SYMMETRIES, arbitraryCubies],
  ["corner order", CORNER_ORDER, AXIS_SYMMETRIES, arbitraryCubies],
  ["edge order", EDGE_ORDER, AXIS_SYMMETRIES, arbitraryPhaseTwoCubies],
];
const CONJUGATED: readonly Row[] = [
  ["flip", FLIP, AXES_SYMMETRIES, arbitraryCubies],
  ["slice", SLICE, AXES_SYMMETRIES, arbitraryCubies],
  ["slice order", SLICE_ORDER, AXIS_SYMMETRIES, arbitraryPhaseTwoCubies],
  ["corner split", CORNER_SPLIT, AXIS_SYMMETRIES, arbitraryCubies],
  ["edge split", EDGE_SPLIT, AXIS_SYMMETRIES, arbitraryPhaseTwoCubies],
];

describe("symmetry classes", () => {
  it("are as many as Kociemba counts: 324 twists, 336 flips, 2768 permutations of eight", () => {
    expect(
      CLASSED.map(
        ([, kind, symmetries]) =>
          symmetryClasses(kind, symmetries).representatives.length,
      ),
    ).toEqual([324, 336, 2768, 2768]);
  });

  it.each(CLASSED)(
    "%s: the symmetry kept with a value takes a state of that value to its class's representative",
    (_, kind, symmetries, states) => {
      const { classAndSymmetry, representatives } = symmetryClasses(
        kind,
        symmetries,
      );
      fc.assert(
        fc.property(states, (state) => {
          const packed = classAndSymmetry[coordinateOf(kind, state)] ?? NaN;
          const symmetry = symmetries[packed % symmetries.length];
          const seen = conjugate(state, present(symmetry, "s is in the group"));
          expect(coordinateOf(kind, seen)).toBe(
            representatives[Math.floor(packed / symmetries.length)],
          );
        }),
      );
    },
  );

  it.each(CONJUGATED)(
    "%s: a value seen through a symmetry is that of the state seen through it",
    (_, kind, symmetries, states) => {
      const table = conjugationTable(kind, symmetries);
      fc.assert(
        fc.property(states, (state) => {
          const value = coordinateOf(kind, state);
          for (const [s, symmetry] of symmetries.entries())
            expect(table[value * symmetries.length + s]).toBe(
              coordinateOf(kind, conjugate(state, symmetry)),
            );
        }),
      );
    },
  );
});
