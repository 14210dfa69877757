/**
 * Where free pieces lie over many drawn states, held against what counting
 * says. Counting shares nothing with the generator but the constraint.
 */
import { type PartlyKnownCubies, UNKNOWN } from "../../../core/cube/cubies";
import type { StateConstraint } from "../../../core/cube/sample-state";
import { chiSquare } from "../cube/chi-square";

/** The place of each free piece, as one number, over many positions. */
function placesOf(
  states: readonly PartlyKnownCubies[],
  kind: "corner" | "edge",
  piece: number,
): number[] {
  return states.map((state) => {
    const [permutation, orientation] =
      kind === "corner"
        ? [state.cornerPermutation, state.cornerOrientation]
        : [state.edgePermutation, state.edgeOrientation];
    const at = permutation.indexOf(piece);
    return 4 * at + (orientation[at] ?? UNKNOWN);
  });
}

/** The places of one kind of piece, as a constraint leaves them. */
interface Kind {
  readonly name: "corner" | "edge";
  readonly permutation: Uint8Array;
  readonly orientation: Uint8Array;
  readonly unplaced: readonly number[];
  readonly orientations: 2 | 3;
}

function kindsOf(constraint: StateConstraint): readonly [Kind, Kind] {
  return [
    {
      name: "corner",
      permutation: constraint.cornerPermutation,
      orientation: constraint.cornerOrientation,
      unplaced: constraint.unplacedCorners,
      orientations: 3,
    },
    {
      name: "edge",
      permutation: constraint.edgePermutation,
      orientation: constraint.edgeOrientation,
      unplaced: constraint.unplacedEdges,
      orientations: 2,
    },
  ];
}

function freePieces({ permutation }: Kind): number[] {
  return [...permutation.keys()].filter(
    (piece) => !permutation.includes(piece),
  );
}

function freePositions({ permutation }: Kind): number[] {
  return [...permutation.keys()].filter((at) => permutation[at] === UNKNOWN);
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}

/** In how many ways a kind's pieces lie and turn, some of them placed; the other kind decides about parity. */
function waysToLie(kind: Kind, placed: number): number {
  const turnable = kind.orientation.filter((turned) => turned === UNKNOWN);
  return (
    factorial(freePositions(kind).length - placed) *
    kind.orientations ** (turnable.length - placed - 1)
  );
}

function subsets(list: readonly number[]): number[][] {
  return list.reduce<number[][]>(
    (sets, one) => [...sets, ...sets.map((set) => [...set, one])],
    [[]],
  );
}

/**
 * Chances of a free piece's places, by counting: all states that agree with
 * what is placed, less those with an unwanted piece placed, plus those with
 * two, and so on (inclusion and exclusion). Where nothing unwanted can be
 * placed, even over the free positions, turned any way.
 */
function countedPlaces(kind: Kind, piece: number): ReadonlyMap<number, number> {
  const positions = freePositions(kind);
  const canBePlaced = kind.unplaced.filter(
    (one) => freePieces(kind).includes(one) && positions.includes(one),
  );
  const weights = new Map<number, number>();
  let all = 0;
  for (const placed of subsets(canBePlaced)) {
    const states = (-1) ** placed.length * waysToLie(kind, placed.length);
    all += states;
    const places = placed.includes(piece)
      ? [4 * piece]
      : positions
          .filter((at) => !placed.includes(at))
          .flatMap((at) =>
            Array.from(
              { length: kind.orientations },
              (_, turned) => 4 * at + turned,
            ),
          );
    for (const place of places)
      weights.set(place, (weights.get(place) ?? 0) + states / places.length);
  }
  return new Map(
    [...weights]
      .map(([place, weight]) => [place, weight / all] as const)
      // A place that is never taken: one sample there is a stray.
      .filter(([, chance]) => chance > 1e-9),
  );
}

/**
 * The free pieces whose places over many drawn states are not as often as
 * counting says; none for a uniform generator.
 *
 * Errors: throws where fewer than 20 samples are expected in a place, or no
 *         piece is free: the test would say nothing.
 */
export function unevenPieces(
  states: readonly PartlyKnownCubies[],
  constraint: StateConstraint,
): string[] {
  const tests = kindsOf(constraint).flatMap((kind) =>
    freePieces(kind).map((piece) => ({
      name: `${kind.name} ${piece}`,
      found: chiSquare(
        placesOf(states, kind.name, piece),
        countedPlaces(kind, piece),
      ),
    })),
  );
  if (
    tests.length === 0 ||
    tests.some(({ found }) => found.smallestExpected < 20)
  )
    throw new RangeError("a test of uniformity needs more samples");
  return tests.filter(({ found }) => !found.passes).map(({ name }) => name);
}
