import type { Face } from "./faces";

declare const cornerBrand: unique symbol;
declare const edgeBrand: unique symbol;

/** A corner, as a piece or as the position it belongs to: 0–7 in the order of `CORNER_NAMES`. */
export type Corner = number & { readonly [cornerBrand]: true };

/** An edge, as a piece or as the position it belongs to: 0–11 in the order of `EDGE_NAMES`. */
export type Edge = number & { readonly [edgeBrand]: true };

/** Corners in their fixed order; each name lists its faces clockwise, U or D first. */
export const CORNER_NAMES = [
  "URF",
  "UFL",
  "ULB",
  "UBR",
  "DFR",
  "DLF",
  "DBL",
  "DRB",
] as const;

/** Edges in their fixed order; each name begins with its reference face (U or D, else F or B). */
export const EDGE_NAMES = [
  "UR",
  "UF",
  "UL",
  "UB",
  "DR",
  "DF",
  "DL",
  "DB",
  "FR",
  "FL",
  "BL",
  "BR",
] as const;

export type CornerName = (typeof CORNER_NAMES)[number];
export type EdgeName = (typeof EDGE_NAMES)[number];

/** The corner of that name. */
export function corner(name: CornerName): Corner {
  return CORNER_NAMES.indexOf(name) as Corner;
}

/** The edge of that name. */
export function edge(name: EdgeName): Edge {
  return EDGE_NAMES.indexOf(name) as Edge;
}

/** The names of all pieces, corners first. */
export const PIECE_NAMES = [...CORNER_NAMES, ...EDGE_NAMES] as const;

export type PieceName = (typeof PIECE_NAMES)[number];

/** All eight corners, in order. */
export const CORNERS: readonly Corner[] = CORNER_NAMES.map(corner);

/** All twelve edges, in order. */
export const EDGES: readonly Edge[] = EDGE_NAMES.map(edge);

function facesOf(name: string): readonly Face[] {
  return [...name] as Face[];
}

/**
 * The faces of each corner position, clockwise from its U or D face.
 *
 * Shape: 8 × 3. A corner with orientation o shows its sticker k on face
 *        (k + o) mod 3 of the position where it sits.
 */
export const CORNER_FACES: readonly (readonly Face[])[] =
  CORNER_NAMES.map(facesOf);

/**
 * The two faces of each edge position, reference face first.
 *
 * Shape: 12 × 2. An edge with orientation o shows its sticker k on face
 *        (k + o) mod 2 of the position where it sits.
 */
export const EDGE_FACES: readonly (readonly Face[])[] = EDGE_NAMES.map(facesOf);

/** Some corners and some edges. */
export interface Pieces {
  readonly corners: readonly Corner[];
  readonly edges: readonly Edge[];
}

/** No piece at all. */
export const NO_PIECES: Pieces = { corners: [], edges: [] };

/** In how many ways a piece can be turned in its place. */
export const ORIENTATIONS = { corner: 3, edge: 2 } as const;
