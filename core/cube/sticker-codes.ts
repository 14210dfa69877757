/**
 * 54 stickers as small numbers, and whether a cube can show them, kept apart
 * from `validity.ts` because the search for slips asks it of thousands of
 * changed copies: tables of what each triple and pair of colours is, instead
 * of a search through the pieces (a yes or no in about a microsecond).
 */
import { isOddPermutation } from "./cubies";
import { centreFacelet, CORNER_FACELETS, EDGE_FACELETS } from "./facelets";
import { FACES } from "./faces";
import { CORNER_FACES, EDGE_FACES } from "./pieces";

/**
 * The colour of each facelet as a number, `NO_STICKER` where there is none.
 *
 * Shape: 54 entries, indexed as in `facelets.ts`; colours are 0–5.
 */
export type StickerCodes = Uint8Array;

/** Stands for a facelet whose sticker is not told, and for "no such piece". */
export const NO_STICKER = 255;

/** The six centres, in the order of `FACES`. */
export const CENTRE_FACELETS: readonly number[] = FACES.map(centreFacelet);

/** Corners or edges: where their stickers lie, and what each set of colours is. */
export interface PieceKind {
  readonly kind: "corner" | "edge";
  /** Shape: position × sticker. */
  readonly facelets: readonly (readonly number[])[];
  /** The faces of each piece as indices of `FACES`. Shape: piece × sticker. */
  readonly faces: readonly (readonly number[])[];
  /**
   * Shape: faces seen at a position, read as a number in base 6, to
   *        stickers × piece + orientation, or `NO_STICKER`.
   */
  readonly seen: Uint8Array;
}

function pieceKind(
  kind: PieceKind["kind"],
  facelets: PieceKind["facelets"],
  names: readonly (readonly string[])[],
): PieceKind {
  const faces = names.map((name) =>
    name.map((face) => FACES.findIndex((known) => known === face)),
  );
  const stickers = kind === "corner" ? 3 : 2;
  const seen = new Uint8Array(6 ** stickers).fill(NO_STICKER);
  faces.forEach((own, piece) => {
    for (let turned = 0; turned < stickers; turned++) {
      let code = 0;
      for (let k = 0; k < stickers; k++)
        code = 6 * code + own[(k + stickers - turned) % stickers]!;
      seen[code] = stickers * piece + turned;
    }
  });
  return { kind, facelets, faces, seen };
}

/** The eight corners. */
export const CORNER_KIND = pieceKind("corner", CORNER_FACELETS, CORNER_FACES);

/** The twelve edges. */
export const EDGE_KIND = pieceKind("edge", EDGE_FACELETS, EDGE_FACES);

/** On which face (an index of `FACES`) the centre of each colour lies; undefined unless the six differ. */
export function facesOfColours(codes: StickerCodes): Uint8Array | undefined {
  const faces = new Uint8Array(6).fill(NO_STICKER);
  for (let face = 0; face < 6; face++) {
    const colour = codes[CENTRE_FACELETS[face]!]!;
    if (colour === NO_STICKER || faces[colour] !== NO_STICKER) return undefined;
    faces[colour] = face;
  }
  return faces;
}

/**
 * What lies at a position: stickers × piece + orientation; `NO_STICKER` where
 * no piece has these colours or one is not told.
 */
export function pieceSeenAt(
  { facelets, seen }: PieceKind,
  position: number,
  codes: StickerCodes,
  faceOf: Uint8Array,
): number {
  let code = 0;
  for (const facelet of facelets[position]!) {
    const colour = codes[facelet]!;
    if (colour === NO_STICKER) return NO_STICKER;
    code = 6 * code + faceOf[colour]!;
  }
  return seen[code]!;
}

/** Pieces of one kind as they lie. */
export interface PiecesSeen {
  readonly permutation: Uint8Array;
  readonly orientation: Uint8Array;
}

/** All pieces of a kind, or undefined where one does not exist or is there twice. */
export function piecesSeen(
  kind: PieceKind,
  codes: StickerCodes,
  faceOf: Uint8Array,
): PiecesSeen | undefined {
  const count = kind.facelets.length;
  const stickers = kind.kind === "corner" ? 3 : 2;
  const permutation = new Uint8Array(count);
  const orientation = new Uint8Array(count);
  let met = 0;
  for (let position = 0; position < count; position++) {
    const seen = pieceSeenAt(kind, position, codes, faceOf);
    if (seen === NO_STICKER) return undefined;
    const piece = Math.floor(seen / stickers);
    if ((met & (1 << piece)) !== 0) return undefined;
    met |= 1 << piece;
    permutation[position] = piece;
    orientation[position] = seen % stickers;
  }
  return { permutation, orientation };
}

/** What turning can never do to a whole cube, and how far it was done. */
export interface Assembly {
  /** By how many thirds, clockwise, one corner is turned too far. */
  readonly cornerThirds: number;
  readonly isEdgeFlipped: boolean;
  readonly arePiecesSwapped: boolean;
}

/** The three invariants of the cube group, read off all pieces. */
export function assemblyOf(corners: PiecesSeen, edges: PiecesSeen): Assembly {
  const sum = (values: Uint8Array) => values.reduce((a, b) => a + b, 0);
  return {
    cornerThirds: sum(corners.orientation) % 3,
    isEdgeFlipped: sum(edges.orientation) % 2 === 1,
    arePiecesSwapped:
      isOddPermutation(corners.permutation) !==
      isOddPermutation(edges.permutation),
  };
}

/**
 * How many pieces are placed on the cube that shows these stickers; undefined
 * where turning reaches no such cube.
 */
export function placedIfPossible(codes: StickerCodes): number | undefined {
  const faceOf = facesOfColours(codes);
  if (faceOf === undefined) return undefined;
  const corners = piecesSeen(CORNER_KIND, codes, faceOf);
  if (corners === undefined) return undefined;
  const edges = piecesSeen(EDGE_KIND, codes, faceOf);
  if (edges === undefined) return undefined;
  const { cornerThirds, isEdgeFlipped, arePiecesSwapped } = assemblyOf(
    corners,
    edges,
  );
  if (cornerThirds !== 0 || isEdgeFlipped || arePiecesSwapped) return undefined;
  return placed(corners) + placed(edges);
}

function placed({ permutation, orientation }: PiecesSeen): number {
  let count = 0;
  for (let i = 0; i < permutation.length; i++)
    if (permutation[i] === i && orientation[i] === 0) count++;
  return count;
}
