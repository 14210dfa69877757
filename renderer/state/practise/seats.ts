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
import type {
  ColourName,
  ColourScheme,
} from "../../../core/picture/colour-sets";
import type { Face } from "../../../core/cube/faces";
import { CORNER_FACES, EDGE_FACES } from "../../../core/cube/pieces";
import { present } from "../../../core/invariant";
import { positionInWords } from "./case-words";
import type { CubePiece, CubePlace } from "./own-cube";

/** A place and a way round. */
export interface Seat {
  readonly position: number;
  readonly orientation: number;
  /** Where the sticker is that says how it is turned: "bottom front right; white is on the front". */
  readonly words: string;
}

function tablesOf(cube: HeldCube<PartlyKnownCubies>, kind: CubePiece["kind"]) {
  return kind === "corner"
    ? ([CORNER_FACELETS, cube.cubies.cornerPermutation] as const)
    : ([EDGE_FACELETS, cube.cubies.edgePermutation] as const);
}

/** The colour whose sticker says how a piece is turned: the first or the last layer's, or a middle edge's first. */
export function colourToTap(
  { kind, piece }: CubePiece,
  scheme: ColourScheme,
): ColourName {
  const faces = (kind === "corner" ? CORNER_FACES : EDGE_FACES)[piece];
  return scheme[present(faces?.[0], "pieces are in range")];
}

/** How the piece at a place can be turned, by the side its last-layer sticker is on. */
export function turningsAt(
  cube: HeldCube<PartlyKnownCubies>,
  { kind, piece }: CubePlace,
): readonly Face[] {
  const [table] = tablesOf(cube, kind);
  const facelets = present(table[piece], "places are in range");
  return facelets.map((facelet) =>
    faceletFace(viewFacelet(cube.hold, facelet)),
  );
}

/** How the piece at a place is turned whose last-layer sticker was tapped; undefined for a tap elsewhere. */
export function turningAt(
  cube: HeldCube<PartlyKnownCubies>,
  { kind, piece }: CubePlace,
  facelet: number,
): number | undefined {
  const [table] = tablesOf(cube, kind);
  const turned = table[piece]?.indexOf(bodyFacelet(cube.hold, facelet)) ?? -1;
  return turned < 0 ? undefined : turned;
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
          const colour = colourToTap(piece, scheme);
          return {
            position,
            orientation,
            words: `${place}; ${colourSideInWords(colour, side)}`,
          };
        }),
  );
}

/** Why a tap on the picture names no seat. */
export type SeatError = "centre" | "other-kind" | "taken";

/**
 * The seat of a piece whose sticker of `colourToTap` is at a tapped facelet.
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
