/**
 * Marks of arrangements of pieces as somebody sees them: the sum of
 * random-looking numbers for each piece and place (A. Zobrist, 1970), named by
 * where they are seen, so that arrangements in different holds can be compared.
 *
 * The twenty pieces are numbered here: the corners, then the edges.
 */
import { type PartlyKnownCubies, SOLVED } from "../cube/cubies";
import { knownOnly } from "../cube/partly-known";
import { CORNERS, EDGES, ORIENTATIONS, type Pieces } from "../cube/pieces";
import {
  conjugate,
  cornerImage,
  edgeImage,
  type Rotation,
  ROTATIONS,
} from "../cube/symmetries";
import { slotOf } from "../cases/case-goal";
import { mixed } from "./case-nearby";
import { SLOT_MOVES, SLOTS } from "./piece-slots";

/** How many pieces there are. */
export const PIECES = CORNERS.length + EDGES.length;

/** The numbers of some pieces. */
export function numbersOfPieces({ corners, edges }: Pieces): readonly number[] {
  return [...corners, ...edges.map((edge) => CORNERS.length + edge)];
}

/** All twenty pieces' slots when solved. */
export const HOME_SLOTS = Uint8Array.from({ length: PIECES }, (_, piece) =>
  piece < CORNERS.length
    ? piece * ORIENTATIONS.corner
    : (piece - CORNERS.length) * ORIENTATIONS.edge,
);

/** Where a piece is after a face turn. Shape: `[slot × 18 + turn]`. */
export function movesOfPiece(piece: number): Uint16Array {
  return piece < CORNERS.length ? SLOT_MOVES.corner : SLOT_MOVES.edge;
}

/** Only this piece known, in a slot. */
function onePiece(piece: number, slot: number): PartlyKnownCubies {
  const isCorner = piece < CORNERS.length;
  const state = knownOnly(SOLVED, new Set(), new Set());
  const radix = isCorner ? ORIENTATIONS.corner : ORIENTATIONS.edge;
  const at = Math.floor(slot / radix);
  if (isCorner) {
    state.cornerPermutation[at] = piece;
    state.cornerOrientation[at] = slot % radix;
  } else {
    state.edgePermutation[at] = piece - CORNERS.length;
    state.edgeOrientation[at] = slot % radix;
  }
  return state;
}

/** The number of the piece whose home is where a rotation takes a piece's. */
export function pieceSeen(rotation: Rotation, piece: number): number {
  return piece < CORNERS.length
    ? cornerImage(rotation, CORNERS[piece]!)
    : CORNERS.length + edgeImage(rotation, EDGES[piece - CORNERS.length]!);
}

function makeMarks(): Uint32Array {
  const marks = new Uint32Array(ROTATIONS.length * PIECES * SLOTS);
  for (const rotation of ROTATIONS)
    for (let piece = 0; piece < PIECES; piece++)
      for (let slot = 0; slot < SLOTS; slot++) {
        const image = pieceSeen(rotation, piece);
        const kind = piece < CORNERS.length ? "corner" : "edge";
        const seen = slotOf(conjugate(onePiece(piece, slot), rotation), {
          kind,
          piece: kind === "corner" ? image : image - CORNERS.length,
        })!;
        marks[(rotation * PIECES + piece) * SLOTS + slot] = mixed(
          image * SLOTS + seen,
        );
      }
  return marks;
}

let marks: Uint32Array | undefined;

/** What a piece in a slot adds to a mark, seen in a hold; made when first asked for. Shape: `[(hold × 20 + piece) × 24 + slot]`. */
export function seenMarks(): Uint32Array {
  marks ??= makeMarks();
  return marks;
}

/** The pieces that have these numbers. */
export function piecesOfNumbers(numbers: readonly number[]): Pieces {
  return {
    corners: CORNERS.filter((corner) => numbers.includes(corner)),
    edges: EDGES.filter((edge) => numbers.includes(CORNERS.length + edge)),
  };
}

/** The slots of some pieces in a state in which they are known. */
export function slotsOfPieces(
  state: PartlyKnownCubies,
  numbers: readonly number[],
): readonly number[] {
  return numbers.map((number) =>
    slotOf(
      state,
      number < CORNERS.length
        ? { kind: "corner", piece: number }
        : { kind: "edge", piece: number - CORNERS.length },
    )!,
  );
}
