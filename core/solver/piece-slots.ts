/**
 * Single pieces as numbers, and what turns do to two of them at once.
 *
 * A partly known state has no coordinate of the usual kind: which pieces are
 * known differs from one cube to the next. So each named piece is followed by
 * itself, in groups of up to four of a kind, two pieces to one look-up.
 */
import type { PartlyKnownCubies } from "../cube/cubies";
import { FACE_TURNS } from "../cube/face-turns";
import { ORIENTATIONS } from "../cube/pieces";
import { invariant } from "../invariant";

/** Positions times orientations: 8 × 3 of a corner, 12 × 2 of an edge. A slot is `position × orientations + orientation`. */
export const SLOTS = 24;

/** Ordered pairs of slots. */
export const SLOT_PAIRS = SLOTS * SLOTS;

/** Pieces of one kind that are followed together. Shape: 1–4 different pieces. */
export interface PieceGroup {
  readonly kind: "corner" | "edge";
  readonly pieces: readonly number[];
}

/** Where a group is: its first two pieces and its last two, each [0, 576). */
export interface GroupPlace {
  readonly first: number;
  readonly second: number;
}

function arraysOf(
  state: PartlyKnownCubies,
  kind: PieceGroup["kind"],
): readonly [permutation: Uint8Array, orientation: Uint8Array] {
  return kind === "corner"
    ? [state.cornerPermutation, state.cornerOrientation]
    : [state.edgePermutation, state.edgeOrientation];
}

function slotMoves(kind: PieceGroup["kind"]): Uint16Array {
  const radix = ORIENTATIONS[kind];
  const moves = new Uint16Array(SLOTS * FACE_TURNS.length);
  FACE_TURNS.forEach((effect, turn) => {
    const [permutation, orientation] = arraysOf(effect, kind);
    permutation.forEach((from, to) => {
      for (let o = 0; o < radix; o++)
        moves[(from * radix + o) * FACE_TURNS.length + turn] =
          to * radix + ((o + orientation[to]!) % radix);
    });
  });
  return moves;
}

/** What every face turn does to one slot. Shape: `[slot × 18 + turn]`. */
export const SLOT_MOVES: Readonly<Record<PieceGroup["kind"], Uint16Array>> = {
  corner: slotMoves("corner"),
  edge: slotMoves("edge"),
};

function pairMoves(kind: PieceGroup["kind"]): Uint16Array {
  const width = FACE_TURNS.length;
  const single = SLOT_MOVES[kind];
  const moves = new Uint16Array(SLOT_PAIRS * width);
  for (let a = 0; a < SLOTS; a++)
    for (let b = 0; b < SLOTS; b++)
      for (let turn = 0; turn < width; turn++)
        moves[(a * SLOTS + b) * width + turn] =
          single[a * width + turn]! * SLOTS + single[b * width + turn]!;
  return moves;
}

/** What every face turn does to a pair of slots. Shape: `[pair × 18 + turn]`. */
export const PAIR_MOVES: Readonly<Record<PieceGroup["kind"], Uint16Array>> = {
  corner: pairMoves("corner"),
  edge: pairMoves("edge"),
};

/** Where a group is in a state in which all its pieces are known. */
export function placeOfGroup(
  state: PartlyKnownCubies,
  { kind, pieces }: PieceGroup,
): GroupPlace {
  const [permutation, orientation] = arraysOf(state, kind);
  const slots = pieces.map((piece) => {
    const position = permutation.indexOf(piece);
    invariant(position >= 0, "the pieces of a group are known");
    return position * ORIENTATIONS[kind] + orientation[position]!;
  });
  // A group of fewer than four follows its first piece more than once.
  const [a = 0, b = a, c = a, d = a] = slots;
  return { first: a * SLOTS + b, second: c * SLOTS + d };
}

/** The known pieces of a state, in groups of up to four. */
export function groupsOf(state: PartlyKnownCubies): readonly PieceGroup[] {
  return (["edge", "corner"] as const).flatMap((kind) => {
    const [permutation] = arraysOf(state, kind);
    const known = [...permutation.keys()].filter((piece) =>
      permutation.includes(piece),
    );
    const groups: PieceGroup[] = [];
    for (let i = 0; i < known.length; i += 4)
      groups.push({ kind, pieces: known.slice(i, i + 4) });
    return groups;
  });
}
