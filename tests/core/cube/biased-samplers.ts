/**
 * Generators with one deliberate bias each, otherwise honest: what a test of
 * uniformity must be able to tell from the real one.
 */
import {
  type Cubies,
  isOddPermutation,
  type PartlyKnownCubies,
  trustedCubies,
  UNKNOWN,
} from "../../../core/cube/cubies";
import type { StateConstraint } from "../../../core/cube/sample-state";
import type { RandomSource } from "../../../core/random-source";

export const BIASES = [
  "none",
  "naive-shuffle",
  "uneven-twists",
  "uneven-flips",
  "twists-zeroed-when-impossible",
  "parity-mended-to-one-side",
  "unwanted-placed-pieces-kept",
  "unwanted-placed-pieces-turned",
] as const;

export type Bias = (typeof BIASES)[number];

function positionsFree(permutation: Uint8Array): number[] {
  return [...permutation.keys()].filter((at) => permutation[at] === UNKNOWN);
}

function exchange(list: Uint8Array | number[], i: number, j: number): void {
  const [a = 0, b = 0] = [list[i], list[j]];
  list[i] = b;
  list[j] = a;
}

function shuffledOver(
  fixed: Uint8Array,
  random: RandomSource,
  bias: Bias,
): Uint8Array {
  const positions = positionsFree(fixed);
  const pieces = [...fixed.keys()].filter((piece) => !fixed.includes(piece));
  for (let i = pieces.length - 1; i >= 0; i--)
    exchange(
      pieces,
      i,
      random.below(bias === "naive-shuffle" ? pieces.length : i + 1),
    );
  const result = Uint8Array.from(fixed);
  positions.forEach((at, i) => {
    result[at] = pieces[i] ?? UNKNOWN;
  });
  return result;
}

function turnedOver(
  fixed: Uint8Array,
  modulus: 2 | 3,
  random: RandomSource,
  bias: Bias,
): Uint8Array {
  const isUneven = bias === (modulus === 3 ? "uneven-twists" : "uneven-flips");
  const result = fixed.map((turned) =>
    turned === UNKNOWN
      ? isUneven
        ? // One chance in eight too many for 0.
          Math.max(0, random.below(modulus + 1) - 1)
        : random.below(modulus)
      : turned,
  );
  const sum = result.reduce((a, b) => a + b, 0) % modulus;
  const last = fixed.lastIndexOf(UNKNOWN);
  if (sum === 0 || last < 0) return result;
  if (modulus === 3 && bias === "twists-zeroed-when-impossible") {
    const zeroed = fixed.map((turned) => (turned === UNKNOWN ? 0 : turned));
    const rest = zeroed.reduce((a, b) => a + b, 0) % 3;
    zeroed[last] = (3 - rest) % 3;
    return zeroed;
  }
  result[last] = ((result[last] ?? 0) + modulus - sum) % modulus;
  return result;
}

function mendParity(edges: Uint8Array, fixed: Uint8Array, bias: Bias): void {
  const positions = positionsFree(fixed);
  const [first = 0] = positions;
  const last = positions.at(-1) ?? 0;
  if (bias === "parity-mended-to-one-side") {
    // "Put the greatest free piece last": no bijection, it favours that place.
    const greatest = Math.max(...positions.map((at) => edges[at] ?? 0));
    const at = edges.indexOf(greatest);
    exchange(
      edges,
      at === last ? first : at,
      at === last ? (positions[1] ?? 0) : last,
    );
  } else exchange(edges, first, last);
}

/** Turns unwanted placed pieces in their homes, and another free piece back. */
function turnUnwanted(
  permutation: Uint8Array,
  orientation: Uint8Array,
  fixed: Uint8Array,
  unwanted: readonly number[],
  modulus: 2 | 3,
): void {
  const other = positionsFree(fixed).find(
    (at) => !unwanted.includes(permutation[at] ?? UNKNOWN),
  );
  if (other === undefined) return;
  for (const piece of unwanted) {
    if (permutation[piece] !== piece || orientation[piece] !== 0) continue;
    orientation[piece] = 1;
    orientation[other] = ((orientation[other] ?? 0) + modulus - 1) % modulus;
  }
}

/** A state drawn with one bias; with "none" a second, plainer honest generator. */
export function drawBiased(
  random: RandomSource,
  constraint: StateConstraint,
  bias: Bias,
): Cubies {
  for (;;) {
    const corners = shuffledOver(constraint.cornerPermutation, random, bias);
    const edges = shuffledOver(constraint.edgePermutation, random, bias);
    if (isOddPermutation(corners) !== isOddPermutation(edges))
      mendParity(edges, constraint.edgePermutation, bias);
    const state: PartlyKnownCubies = {
      cornerPermutation: corners,
      cornerOrientation: turnedOver(
        constraint.cornerOrientation,
        3,
        random,
        bias,
      ),
      edgePermutation: edges,
      edgeOrientation: turnedOver(constraint.edgeOrientation, 2, random, bias),
    };
    if (bias === "unwanted-placed-pieces-turned") {
      const { cornerPermutation, edgePermutation } = constraint;
      const { unplacedCorners, unplacedEdges } = constraint;
      const { cornerOrientation, edgeOrientation } = state;
      turnUnwanted(
        corners,
        cornerOrientation,
        cornerPermutation,
        unplacedCorners,
        3,
      );
      turnUnwanted(edges, edgeOrientation, edgePermutation, unplacedEdges, 2);
    }
    const isUnwanted =
      constraint.unplacedCorners.some(
        (piece) =>
          corners[piece] === piece && state.cornerOrientation[piece] === 0,
      ) ||
      constraint.unplacedEdges.some(
        (piece) => edges[piece] === piece && state.edgeOrientation[piece] === 0,
      );
    if (!isUnwanted || bias === "unwanted-placed-pieces-kept")
      return trustedCubies(state);
  }
}
