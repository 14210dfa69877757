/** Where the piece of a case is and where it belongs, as the learner sees it. */
import { type PartlyKnownCubies, UNKNOWN } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import {
  CORNER_FACES,
  type Corner,
  EDGE_FACES,
  type Edge,
} from "../../../core/cube/pieces";
import { present } from "../../../core/invariant";
import {
  colourSideInWords,
  placeInWords,
  seenCornerFaces,
  seenEdgeFaces,
} from "../../../core/notation/place-words";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { CubePiece } from "./own-cube";

/** The sides on which a position is seen, in the order of its stickers. */
function seenFaces(
  cube: HeldCube<PartlyKnownCubies>,
  kind: CubePiece["kind"],
  position: number,
) {
  return kind === "corner"
    ? seenCornerFaces(cube.hold, position as Corner)
    : seenEdgeFaces(cube.hold, position as Edge);
}

/** A position on the cube as it is held: "bottom front right". */
export function positionInWords(
  cube: HeldCube<PartlyKnownCubies>,
  kind: CubePiece["kind"],
  position: number,
): string {
  return placeInWords(seenFaces(cube, kind, position));
}

/** Where a piece is and which way its first colour faces; undefined where it is not known. */
export function pieceWhereInWords(
  cube: HeldCube<PartlyKnownCubies>,
  piece: CubePiece,
  scheme: ColourScheme,
): string | undefined {
  const { cubies } = cube;
  const [permutation, orientation] =
    piece.kind === "corner"
      ? [cubies.cornerPermutation, cubies.cornerOrientation]
      : [cubies.edgePermutation, cubies.edgeOrientation];
  const at = permutation.indexOf(piece.piece);
  if (at < 0) return undefined;
  const table = piece.kind === "corner" ? CORNER_FACES : EDGE_FACES;
  const own = present(table[piece.piece]?.[0], "pieces are in range");
  const seen = seenFaces(cube, piece.kind, at);
  const turned = orientation[at] ?? UNKNOWN;
  // Where it is may be known, and not how it is turned there.
  if (turned === UNKNOWN) return positionInWords(cube, piece.kind, at);
  const side = present(seen[turned], "stickers are in range");
  return `${positionInWords(cube, piece.kind, at)}; ${colourSideInWords(scheme[own], side)}`;
}

/** Where a piece belongs: "top front right". */
export function homeInWords(
  cube: HeldCube<PartlyKnownCubies>,
  piece: CubePiece,
): string {
  return positionInWords(cube, piece.kind, piece.piece);
}
