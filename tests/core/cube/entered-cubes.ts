import fc from "fast-check";
import { type Cubies, cubiesFrom } from "../../../core/cube/cubies";
import { stickersOf } from "../../../core/cube/facelets";
import { type Face, FACES } from "../../../core/cube/faces";
import type { HeldCube } from "../../../core/cube/held-cube";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { ROTATIONS } from "../../../core/cube/symmetries";
import {
  COLOUR_NAMES,
  type ColourName,
  type ColourScheme,
} from "../../../core/picture/colour-sets";
import { randomSource } from "../../../core/random-source";

/** Any reachable state, each as often as any other. */
export const randomCubies: fc.Arbitrary<Cubies> = fc
  .integer()
  .map((seed) => sampleState(randomSource(seed), ANY_STATE));

/** Any six colours on the six faces. */
export const anyScheme: fc.Arbitrary<ColourScheme> = fc
  .shuffledSubarray([...COLOUR_NAMES], { minLength: 6, maxLength: 6 })
  .map((names) => {
    const at = (i: number) => names[i] ?? "white";
    return { U: at(0), R: at(1), F: at(2), D: at(3), L: at(4), B: at(5) };
  });

/** Any random state in any hold. */
export const anyHeldCube: fc.Arbitrary<HeldCube<Cubies>> = fc.record({
  cubies: randomCubies,
  hold: fc.constantFrom(...ROTATIONS),
});

/** What is seen of a cube of some colouring. */
export function colouredStickers(
  cube: HeldCube<Cubies>,
  scheme: Readonly<Record<Face, ColourName>>,
): ColourName[] {
  return stickersOf(cube).map((face) => scheme[face ?? "U"]);
}

/** The stickers with some of them given other colours. */
export function changedAt<T>(
  stickers: readonly T[],
  changes: Iterable<readonly [number, T]>,
): T[] {
  const changed = [...stickers];
  for (const [at, colour] of changes) changed[at] = colour;
  return changed;
}

/** A cube put together anew: a corner turned by thirds, an edge flipped, two pieces exchanged. */
export function reassembled(
  { cubies, hold }: HeldCube<Cubies>,
  how: {
    readonly corner?: number;
    readonly thirds?: number;
    readonly edge?: number;
    readonly isFlipped?: boolean;
    readonly swappedCorners?: readonly [number, number];
    readonly swappedEdges?: readonly [number, number];
  },
): HeldCube<Cubies> {
  const orientation = [...cubies.cornerOrientation];
  const flips = [...cubies.edgeOrientation];
  const corner = how.corner ?? 0;
  const edge = how.edge ?? 0;
  orientation[corner] = ((orientation[corner] ?? 0) + (how.thirds ?? 0)) % 3;
  if (how.isFlipped === true) flips[edge] = 1 - (flips[edge] ?? 0);
  const swapped = (pieces: Uint8Array, pair?: readonly [number, number]) => {
    const list = [...pieces];
    if (pair === undefined) return list;
    const [a, b] = pair;
    return changedAt(list, [
      [a, list[b] ?? 0],
      [b, list[a] ?? 0],
    ]);
  };
  return {
    cubies: cubiesFrom(
      swapped(cubies.cornerPermutation, how.swappedCorners),
      orientation,
      swapped(cubies.edgePermutation, how.swappedEdges),
      flips,
    ),
    hold,
  };
}

/** The faces as colours: for tests that do not care for names. */
export const FACE_COLOURS: Readonly<Record<Face, ColourName>> = {
  U: "white",
  R: "red",
  F: "green",
  D: "yellow",
  L: "orange",
  B: "blue",
};

/** The six colours of `FACE_COLOURS`. */
export const SIX_COLOURS: readonly ColourName[] = FACES.map(
  (face) => FACE_COLOURS[face],
);
