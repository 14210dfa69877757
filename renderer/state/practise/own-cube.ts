/**
 * The cube in the learner's hands, as far as the app knows it: what they said
 * it has, followed through every turn the app asked for.
 *
 * Pieces stand in the body frame: the first layer is face U, whatever colour
 * it has on this cube and however it is held.
 */
import { FIRST_TWO_LAYERS } from "../../../core/cases/slot-stages";
import {
  type PartlyKnownCubies,
  SOLVED,
  UNKNOWN,
} from "../../../core/cube/cubies";
import {
  isCornerPlaced,
  isEdgePlaced,
  knownOnly,
} from "../../../core/cube/partly-known";
import {
  CORNERS,
  type Corner,
  EDGES,
  type Edge,
} from "../../../core/cube/pieces";

/** What a learner can say about their cube at a glance, the most first. */
export const OWN_CUBE_HAS = [
  "solved",
  "two-layers",
  "first-layer",
  "cross",
] as const;

export type OwnCubeHas = (typeof OWN_CUBE_HAS)[number];

/** A piece, of either kind. */
export type CubePiece =
  | { readonly kind: "corner"; readonly piece: Corner }
  | { readonly kind: "edge"; readonly piece: Edge };

/** A place, named by the piece that belongs there. */
export type CubePlace = CubePiece;

const FIRST_LAYER_CORNERS: ReadonlySet<Corner> = new Set(CORNERS.slice(0, 4));
const FIRST_LAYER_EDGES: ReadonlySet<Edge> = new Set(EDGES.slice(0, 4));

/** A cube of which nothing is known. */
export const UNKNOWN_CUBE: PartlyKnownCubies = knownOnly(
  SOLVED,
  new Set(),
  new Set(),
);

/** The cube that has what the learner said. */
export function cubeThatHas(has: OwnCubeHas): PartlyKnownCubies {
  switch (has) {
    case "solved":
      return SOLVED;
    case "two-layers":
      return knownOnly(
        SOLVED,
        new Set(FIRST_TWO_LAYERS.corners),
        new Set(FIRST_TWO_LAYERS.edges),
      );
    case "first-layer":
      return knownOnly(SOLVED, FIRST_LAYER_CORNERS, FIRST_LAYER_EDGES);
    case "cross":
      return knownOnly(SOLVED, new Set(), FIRST_LAYER_EDGES);
  }
}

/** Whether the app knows where a piece of the learner's cube is. */
export function isKnown(cube: PartlyKnownCubies, piece: CubePiece): boolean {
  return piece.kind === "corner"
    ? cube.cornerPermutation.includes(piece.piece)
    : cube.edgePermutation.includes(piece.piece);
}

/** Whether a piece of the learner's cube is known to be in its home, colours matching. */
export function isHome(cube: PartlyKnownCubies, piece: CubePiece): boolean {
  return piece.kind === "corner"
    ? isCornerPlaced(cube, piece.piece)
    : isEdgePlaced(cube, piece.piece);
}

/** The cube with one piece seen at a place; whatever was thought to be there is no longer known. */
export function withPieceAt(
  cube: PartlyKnownCubies,
  piece: CubePiece,
  position: number,
  orientation: number,
): PartlyKnownCubies {
  const place = (
    permutation: Uint8Array,
    turned: Uint8Array,
  ): readonly [Uint8Array, Uint8Array] => {
    const pieces = permutation.slice();
    const turns = turned.slice();
    const before = pieces.indexOf(piece.piece);
    if (before >= 0) {
      pieces[before] = UNKNOWN;
      turns[before] = UNKNOWN;
    }
    pieces[position] = piece.piece;
    turns[position] = orientation;
    return [pieces, turns];
  };
  if (piece.kind === "corner") {
    const [cornerPermutation, cornerOrientation] = place(
      cube.cornerPermutation,
      cube.cornerOrientation,
    );
    return { ...cube, cornerPermutation, cornerOrientation };
  }
  const [edgePermutation, edgeOrientation] = place(
    cube.edgePermutation,
    cube.edgeOrientation,
  );
  return { ...cube, edgePermutation, edgeOrientation };
}

/** The cube with the piece at a place seen to be turned so, whichever it is. */
export function withTurnedAt(
  cube: PartlyKnownCubies,
  place: CubePlace,
  orientation: number,
): PartlyKnownCubies {
  const turned = (array: Uint8Array) =>
    array.map((value, at) => (at === place.piece ? orientation : value));
  return place.kind === "corner"
    ? { ...cube, cornerOrientation: turned(cube.cornerOrientation) }
    : { ...cube, edgeOrientation: turned(cube.edgeOrientation) };
}

/** What is left of the cube's knowledge when only these pieces are sure, each in its home. */
export function onlyHome(pieces: readonly CubePiece[]): PartlyKnownCubies {
  return knownOnly(
    SOLVED,
    new Set(
      pieces.flatMap((piece) => (piece.kind === "corner" ? piece.piece : [])),
    ),
    new Set(
      pieces.flatMap((piece) => (piece.kind === "edge" ? piece.piece : [])),
    ),
  );
}
