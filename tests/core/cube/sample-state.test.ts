import { describe, expect, it } from "vitest";
import {
  type Cubies,
  SOLVED,
  trustedCubies,
  UNKNOWN,
} from "../../../core/cube/cubies";
import {
  CORNERS,
  type Corner,
  corner,
  EDGES,
  type Edge,
  edge,
} from "../../../core/cube/pieces";
import {
  ANY_STATE,
  emptyCubies,
  sampleState,
  type StateConstraint,
  stateSampler,
} from "../../../core/cube/sample-state";
import { validateCubies } from "../../../core/cube/validity";
import { randomSource } from "../../../core/random-source";
import { type Bias, BIASES, drawBiased } from "./biased-samplers";
import { chiSquare, evenly } from "./chi-square";

const SEED = 5;

/** The solved cube with some positions left free. */
function allButFree(
  corners: readonly Corner[],
  edges: readonly Edge[],
  unplaced: { corners?: readonly Corner[]; edges?: readonly Edge[] } = {},
): StateConstraint {
  const freed = (fixed: Uint8Array, free: readonly number[]) =>
    fixed.map((value, at) => (free.includes(at) ? UNKNOWN : value));
  return {
    cornerPermutation: freed(SOLVED.cornerPermutation, corners),
    cornerOrientation: freed(SOLVED.cornerOrientation, corners),
    edgePermutation: freed(SOLVED.edgePermutation, edges),
    edgeOrientation: freed(SOLVED.edgeOrientation, edges),
    unplacedCorners: unplaced.corners ?? [],
    unplacedEdges: unplaced.edges ?? [],
  };
}

const FEW_FREE = allButFree(
  [corner("URF"), corner("DFR"), corner("DLF")],
  [edge("UF"), edge("DF"), edge("FR")],
  { corners: [corner("URF")], edges: [edge("DF")] },
);

/** Two corners in each other's homes, twisted in any way, and one more free. */
const TWISTED_SWAP: StateConstraint = (() => {
  const constraint = allButFree([corner("DBL")], [edge("BL"), edge("DB")]);
  const [a, b] = [corner("URF"), corner("UFL")];
  constraint.cornerPermutation[a] = b;
  constraint.cornerPermutation[b] = a;
  constraint.cornerOrientation[a] = UNKNOWN;
  constraint.cornerOrientation[b] = UNKNOWN;
  return constraint;
})();

const ONLY_CORNERS_FREE = allButFree(
  [corner("ULB"), corner("DFR"), corner("DRB")],
  [edge("UL")],
);

function key(state: Cubies): string {
  return [
    state.cornerPermutation,
    state.cornerOrientation,
    state.edgePermutation,
    state.edgeOrientation,
  ].join(" ");
}

function everyFilling(fixed: Uint8Array, choices: number): number[][] {
  let lists: number[][] = [[]];
  for (const value of fixed)
    lists = lists.flatMap((list) =>
      value === UNKNOWN
        ? Array.from({ length: choices }, (_, next) => [...list, next])
        : [[...list, value]],
    );
  return lists;
}

function everyPermutation(fixed: Uint8Array): number[][] {
  const free = [...fixed.keys()].filter((piece) => !fixed.includes(piece));
  return everyFilling(fixed, free.length)
    .map((list) =>
      list.map((value, at) =>
        fixed[at] === UNKNOWN ? (free[value] ?? UNKNOWN) : value,
      ),
    )
    .filter((list) => new Set(list).size === list.length);
}

/**
 * All states of a constraint, by trying every assembly and keeping those that
 * `validateCubies` lets pass: slow, and no part of the generator.
 */
function enumerate(constraint: StateConstraint): string[] {
  const keys: string[] = [];
  for (const cp of everyPermutation(constraint.cornerPermutation))
    for (const co of everyFilling(constraint.cornerOrientation, 3))
      for (const ep of everyPermutation(constraint.edgePermutation))
        for (const eo of everyFilling(constraint.edgeOrientation, 2)) {
          const state = trustedCubies({
            cornerPermutation: Uint8Array.from(cp),
            cornerOrientation: Uint8Array.from(co),
            edgePermutation: Uint8Array.from(ep),
            edgeOrientation: Uint8Array.from(eo),
          });
          const isUnwanted =
            constraint.unplacedCorners.some(
              (piece) => cp[piece] === piece && co[piece] === 0,
            ) ||
            constraint.unplacedEdges.some(
              (piece) => ep[piece] === piece && eo[piece] === 0,
            );
          if (!isUnwanted && validateCubies(state).ok) keys.push(key(state));
        }
  return keys;
}

function* drawn(constraint: StateConstraint, n: number): Generator<string> {
  const random = randomSource(SEED);
  const sampler = stateSampler(constraint);
  const state = emptyCubies();
  for (let i = 0; i < n; i++) {
    sampler.drawInPlace(random, state);
    yield key(state);
  }
}

function* drawnWithBias(
  constraint: StateConstraint,
  n: number,
  bias: Bias,
): Generator<string> {
  const random = randomSource(SEED);
  for (let i = 0; i < n; i++) yield key(drawBiased(random, constraint, bias));
}

describe("where few pieces are free", () => {
  const cells = enumerate(FEW_FREE);
  const n = 100 * cells.length;

  it("enumerates what arithmetic says", () => {
    // 3!·3!/2 permutations, 3^2 twists, 2^2 flips; with URF placed 2!·3!/2
    // permutations, 3 twists, 4 flips; likewise with DF placed, and with both
    // 2!·2!/2 permutations, 3 twists, 2 flips.
    expect(cells).toHaveLength(648 - 72 - 108 + 12);
    expect(enumerate(TWISTED_SWAP)).toHaveLength(18);
    expect(enumerate(ONLY_CORNERS_FREE)).toHaveLength(27);
  });

  it.each([
    ["three corners and three edges", FEW_FREE],
    ["the twists of two corners in each other's homes", TWISTED_SWAP],
    ["three corners, so that corners must mend the parity", ONLY_CORNERS_FREE],
  ])("every reachable state is equally likely: %s", (_what, constraint) => {
    const all = enumerate(constraint);
    expect(
      chiSquare(drawn(constraint, 100 * all.length), evenly(all)),
    ).toMatchObject({ passes: true });
  });

  it("a second, plainer honest generator passes the same test", () => {
    expect(
      chiSquare(drawnWithBias(FEW_FREE, n, "none"), evenly(cells)),
    ).toMatchObject({ passes: true });
  });

  it.each(BIASES.filter((bias) => bias !== "none"))(
    "the test tells a generator with one bias: %s",
    (bias) => {
      const found = chiSquare(drawnWithBias(FEW_FREE, n, bias), evenly(cells));
      expect(found.passes).toBe(false);
      // For its bias, and not because the test itself was ill set up.
      expect(found.smallestExpected).toBeGreaterThanOrEqual(20);
      expect(found.statistic).toBeGreaterThan(found.limit);
      expect(found.strays > 0).toBe(bias === "unwanted-placed-pieces-kept");
    },
  );
});

/** Where one piece is and how it is turned, over many states. */
function* whereabouts(
  draw: (i: number) => Cubies,
  n: number,
  find: (state: Cubies) => number,
): Generator<number> {
  for (let i = 0; i < n; i++) yield find(draw(i));
}

const CELLS = evenly(Array.from({ length: 24 }, (_, cell) => cell));

function cornerCell(piece: Corner) {
  return (state: Cubies): number => {
    const at = state.cornerPermutation.indexOf(piece);
    return 3 * at + (state.cornerOrientation[at] ?? UNKNOWN);
  };
}

function edgeCell(piece: Edge) {
  return (state: Cubies): number => {
    const at = state.edgePermutation.indexOf(piece);
    return 2 * at + (state.edgeOrientation[at] ?? UNKNOWN);
  };
}

describe("where every piece is free", () => {
  // 24 places of each piece, 500 expected in each.
  const n = 12_000;
  const states = (() => {
    const random = randomSource(SEED);
    return Array.from({ length: n }, () => sampleState(random, ANY_STATE));
  })();
  const stateAt = (i: number) => states[i] ?? SOLVED;

  it("every state drawn can be reached", () => {
    expect(states.filter((state) => !validateCubies(state).ok)).toEqual([]);
  });

  it("each piece is as often in each place, turned each way, as in any other", () => {
    for (const find of [...CORNERS.map(cornerCell), ...EDGES.map(edgeCell)])
      expect(chiSquare(whereabouts(stateAt, n, find), CELLS)).toMatchObject({
        passes: true,
      });
  });

  it.each([
    "naive-shuffle",
    "uneven-twists",
    "uneven-flips",
    "parity-mended-to-one-side",
  ] as const)("the test tells a generator with one bias: %s", (bias) => {
    const random = randomSource(SEED);
    const biased = Array.from({ length: n }, () =>
      drawBiased(random, ANY_STATE, bias),
    );
    const failures = [
      ...CORNERS.map(cornerCell),
      ...EDGES.map(edgeCell),
    ].filter(
      (find) =>
        !chiSquare(
          whereabouts((i) => biased[i] ?? SOLVED, n, find),
          CELLS,
        ).passes,
    );
    expect(failures.length).toBeGreaterThan(0);
  });

  it("the same seed draws the same states, whatever was drawn before", () => {
    const sampler = stateSampler(ANY_STATE);
    const first = emptyCubies();
    sampler.drawInPlace(randomSource(9), first);
    const again = emptyCubies();
    sampler.drawInPlace(randomSource(10), again);
    expect(key(again)).not.toBe(key(first));
    sampler.drawInPlace(randomSource(9), again);
    expect(key(again)).toBe(key(first));
  });
});

describe("a constraint that leaves nothing to draw", () => {
  it("is refused: one corner twisted, one edge flipped, two pieces swapped", () => {
    const twisted = allButFree([], []);
    twisted.cornerOrientation[0] = 1;
    const flipped = allButFree([], []);
    flipped.edgeOrientation[3] = 1;
    const swapped = allButFree([], [edge("UR")]);
    swapped.cornerPermutation.set([1, 0]);
    for (const constraint of [twisted, flipped, swapped])
      expect(() => stateSampler(constraint)).toThrow("broken invariant");
  });
});
