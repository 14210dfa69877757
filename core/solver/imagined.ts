/**
 * A whole cube that agrees with what is known of one. Turns that do with it
 * what they should do so with every other that agrees.
 */
import {
  type Cubies,
  isFullyKnown,
  isOddPermutation,
  type PartlyKnownCubies,
  UNKNOWN,
} from "../cube/cubies";
import { withForcedPieces } from "../cube/forced-pieces";
import type { Pieces } from "../cube/pieces";
import { sampleState } from "../cube/sample-state";
import { LAST_LAYER_CORNERS, LAST_LAYER_EDGES } from "../cases/last-layer-look";
import { present } from "../invariant";
import { type RandomSource, shuffled } from "../random-source";

const NONE: Pieces = { corners: [], edges: [] };

/**
 * A random one of the cubes that agree with a state, `unplaced` pieces not
 * placed where that is not known.
 *
 * Shape: a state that can be (`canBe`).
 */
export function imagined(
  state: PartlyKnownCubies,
  random: RandomSource,
  unplaced: Pieces = NONE,
): Cubies {
  if (isFullyKnown(state)) return state;
  const { cornerOrientation, edgeOrientation, ...permutations } =
    withForcedPieces(state);
  const corners = named(
    permutations.cornerPermutation,
    cornerOrientation,
    LAST_LAYER_CORNERS,
    random,
  );
  const edges = named(
    permutations.edgePermutation,
    edgeOrientation,
    LAST_LAYER_EDGES,
    random,
  );
  mendParity(corners, edges);
  return sampleState(random, {
    cornerPermutation: corners.permutation,
    cornerOrientation,
    edgePermutation: edges.permutation,
    edgeOrientation,
    unplacedCorners: unplaced.corners,
    unplacedEdges: unplaced.edges,
  });
}

interface Named {
  readonly permutation: Uint8Array;
  /** Places to which a name was given. */
  readonly given: readonly number[];
}

/** Gives the pieces of the last layer of which only the turning is known their names, in any order. */
function named(
  permutation: Uint8Array,
  orientation: Uint8Array,
  lastLayer: readonly number[],
  random: RandomSource,
): Named {
  const given = [...permutation.keys()].filter(
    (at) => permutation[at] === UNKNOWN && orientation[at] !== UNKNOWN,
  );
  const names = shuffled(
    random,
    lastLayer.filter((piece) => !permutation.includes(piece)),
  );
  const result = permutation.slice();
  given.forEach((at, i) => {
    result[at] = present(
      names[i],
      "no more pieces are in a layer than belong there",
    );
  });
  return { permutation: result, given };
}

/** Where all pieces have names by now, exchanges two that were given. */
function mendParity(corners: Named, edges: Named): void {
  const isAllNamed = [corners, edges].every(
    ({ permutation }) => !permutation.includes(UNKNOWN),
  );
  if (
    !isAllNamed ||
    isOddPermutation(corners.permutation) ===
      isOddPermutation(edges.permutation)
  )
    return;
  const { permutation, given } = edges.given.length > 1 ? edges : corners;
  const [a, b] = given;
  if (a === undefined || b === undefined) return;
  const piece = permutation[a] ?? UNKNOWN;
  permutation[a] = permutation[b] ?? UNKNOWN;
  permutation[b] = piece;
}
