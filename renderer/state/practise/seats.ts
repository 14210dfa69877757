/**
 * Where a lost piece can be: every place of its kind that no known piece
 * holds, each way round, as facelets to tap and as words to choose from.
 */
import { type PartlyKnownCubies, UNKNOWN } from "../../../core/cube/cubies";
import {
  bodyFacelet,
  CORNER_FACELETS,
  EDGE_FACELETS,
  faceletFace,
  viewFacelet,
} from "../../../core/cube/facelets";
import type { HeldCube } from "../../../core/cube/held-cube";
import { colourSideInWords } from "../../../core/notation/place-words";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { positionInWords } from "./case-words";
import type { CubePiece } from "./own-cube";

/** A place and a way round. */
export interface Seat {
  readonly position: number;
  readonly orientation: number;
  /** Where the piece's first-colour sticker then is: "bottom front right; white is on the front". */
  readonly words: string;
}

function tablesOf(cube: HeldCube<PartlyKnownCubies>, kind: CubePiece["kind"]) {
  return kind === "corner"
    ? ([CORNER_FACELETS, cube.cubies.cornerPermutation] as const)
    : ([EDGE_FACELETS, cube.cubies.edgePermutation] as const);
}

/** Every seat a lost piece can have. */
export function seatsFor(
  cube: HeldCube<PartlyKnownCubies>,
  piece: CubePiece,
  scheme: ColourScheme,
): readonly Seat[] {
  const [table, permutation] = tablesOf(cube, piece.kind);
  return table.flatMap((facelets, position) =>
    permutation[position] !== UNKNOWN
      ? []
      : facelets.map((facelet, orientation) => {
          const side = faceletFace(viewFacelet(cube.hold, facelet));
          const place = positionInWords(cube, piece.kind, position);
          return {
            position,
            orientation,
            words: `${place}; ${colourSideInWords(scheme.U, side)}`,
          };
        }),
  );
}

/** Why a tap on the picture names no seat. */
export type SeatError = "centre" | "other-kind" | "taken";

/**
 * The seat of a piece whose first-colour sticker is at a tapped facelet.
 *
 * Shape: `facelet` as the holder sees it.
 */
export function seatAt(
  cube: HeldCube<PartlyKnownCubies>,
  kind: CubePiece["kind"],
  facelet: number,
): { readonly position: number; readonly orientation: number } | SeatError {
  const tapped = bodyFacelet(cube.hold, facelet);
  if (tapped % 9 === 4) return "centre";
  const [table, permutation] = tablesOf(cube, kind);
  const position = table.findIndex((facelets) => facelets.includes(tapped));
  if (position < 0) return "other-kind";
  if (permutation[position] !== UNKNOWN) return "taken";
  return { position, orientation: table[position]?.indexOf(tapped) ?? 0 };
}
