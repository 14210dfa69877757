import fc from "fast-check";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { type Cubies, compose, SOLVED } from "../../../core/cube/cubies";
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
import { ALL_TURNS, PHASE_TWO_TURNS } from "../../../core/solver/move-tables";
import type {
  PlainSide,
  PruningTable,
  ReducedSide,
} from "../../../core/solver/pruning-tables";
import { buildTwoPhaseTables } from "../../../core/solver/two-phase-tables";
import { arbitraryCubies } from "../cube/arbitrary-cubes";
import { arbitraryPhaseTwoCubies } from "./arbitrary-phase-two";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

interface Pair {
  readonly name: string;
  readonly first: CoordinateKind<number>;
  readonly second: CoordinateKind<number>;
  readonly reduced: ReducedSide;
  readonly plain: PlainSide;
  readonly table: PruningTable;
  readonly turns: readonly number[];
  readonly states: fc.Arbitrary<Cubies>;
}

const progress: number[] = [];
let pairs: readonly Pair[] = [];

beforeAll(() => {
  const steps = buildTwoPhaseTables();
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) progress.push(step.value);
  const { one, two } = step.value;
  const phaseOne = { turns: ALL_TURNS, states: arbitraryCubies };
  const phaseTwo = { turns: PHASE_TWO_TURNS, states: arbitraryPhaseTwoCubies };
  pairs = [
    {
      name: "twist and flip",
      first: TWIST,
      second: FLIP,
      reduced: one.twist,
      plain: one.flip,
      table: one.twistFlip,
      ...phaseOne,
    },
    {
      name: "twist and slice",
      first: TWIST,
      second: SLICE,
      reduced: one.twist,
      plain: one.slice,
      table: one.twistSlice,
      ...phaseOne,
    },
    {
      name: "flip and slice",
      first: FLIP,
      second: SLICE,
      reduced: one.flip,
      plain: one.slice,
      table: one.flipSlice,
      ...phaseOne,
    },
    {
      name: "corners and slice order",
      first: CORNER_ORDER,
      second: SLICE_ORDER,
      reduced: two.corners,
      plain: two.sliceOrder,
      table: two.cornersSlice,
      ...phaseTwo,
    },
    {
      name: "edges and slice order",
      first: EDGE_ORDER,
      second: SLICE_ORDER,
      reduced: two.edges,
      plain: two.sliceOrder,
      table: two.edgesSlice,
      ...phaseTwo,
    },
    {
      name: "corners and edge split",
      first: CORNER_ORDER,
      second: EDGE_SPLIT,
      reduced: two.corners,
      plain: two.edgeSplit,
      table: two.cornersSplit,
      ...phaseTwo,
    },
    {
      name: "edges and corner split",
      first: EDGE_ORDER,
      second: CORNER_SPLIT,
      reduced: two.edges,
      plain: two.cornerSplit,
      table: two.edgesSplit,
      ...phaseTwo,
    },
  ];
});

function bound(pair: Pair, state: Cubies): number {
  const { classAndSymmetry, symmetryCount } = pair.reduced.classes;
  const packed = classAndSymmetry[coordinateOf(pair.first, state)] ?? NaN;
  const s = packed % symmetryCount;
  const second = coordinateOf(pair.second, state);
  const row = ((packed - s) / symmetryCount) * pair.plain.moves.size;
  const column = pair.plain.conjugation[second * symmetryCount + s] ?? NaN;
  return pair.table[row + column] ?? NaN;
}

function after(state: Cubies, turn: number): Cubies {
  return compose(state, FACE_TURNS[turn] ?? SOLVED);
}

/** Pairs of values by their least number of turns, found without any table. */
function trueDistances(pair: Pair, depth: number): Map<string, number> {
  const { first, second } = pair;
  const key = (state: Cubies) =>
    `${coordinateOf(first, state)} ${coordinateOf(second, state)}`;
  const distances = new Map([[key(SOLVED), 0]]);
  let layer = [SOLVED];
  for (let turns = 1; turns <= depth; turns++) {
    const next: Cubies[] = [];
    for (const state of layer) {
      for (const turn of pair.turns) {
        const moved = after(state, turn);
        if (distances.has(key(moved))) continue;
        distances.set(key(moved), turns);
        next.push(moved);
      }
    }
    layer = next;
  }
  return distances;
}

describe("pruning tables", () => {
  it("report progress that rises from 0 to 1 while they are built", () => {
    expect(progress.length).toBeGreaterThan(50);
    expect(progress).toEqual(progress.toSorted((a, b) => a - b));
    expect(Math.min(...progress)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...progress)).toBeLessThanOrEqual(1);
  });

  it("hold the true distance of every pair within three turns of solved", () => {
    for (const pair of pairs) {
      const distances = trueDistances(pair, 3);
      const { first, second } = pair;
      const wrong: string[] = [];
      for (const [key, distance] of distances) {
        const [a = 0, b = 0] = key.split(" ").map(Number);
        const state = stateWith(first, a, second, b);
        if (bound(pair, state) !== distance) wrong.push(`${pair.name} ${key}`);
      }
      expect(wrong).toEqual([]);
      expect(distances.size).toBeGreaterThan(200);
    }
  });

  it("change by at most one with any turn, so that no value exceeds the true distance", () => {
    for (const pair of pairs)
      fc.assert(
        fc.property(pair.states, (state) => {
          for (const turn of pair.turns) {
            const change = bound(pair, after(state, turn)) - bound(pair, state);
            expect(Math.abs(change)).toBeLessThanOrEqual(1);
          }
        }),
        { numRuns: 50 },
      );
  });

  it("are full, and 0 only where both coordinates are solved", () => {
    for (const { table, name } of pairs) {
      const zeros = table.reduce((n, value) => n + (value === 0 ? 1 : 0), 0);
      expect([name, table.includes(255), zeros]).toEqual([name, false, 1]);
    }
  });
});

/** A state, perhaps an impossible one, with two given values. */
function stateWith(
  first: CoordinateKind<number>,
  a: number,
  second: CoordinateKind<number>,
  b: number,
): Cubies {
  const state = {
    cornerPermutation: SOLVED.cornerPermutation.slice(),
    cornerOrientation: SOLVED.cornerOrientation.slice(),
    edgePermutation: SOLVED.edgePermutation.slice(),
    edgeOrientation: SOLVED.edgeOrientation.slice(),
  };
  first.write(a, state[first.array]);
  second.write(b, state[second.array]);
  return { ...SOLVED, ...state };
}
