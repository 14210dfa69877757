/**
 * The pieces of a case search's goal, two to a number: one look-up moves two
 * pieces, and any two numbers make a table of distances.
 */
import type { PartlyKnownCubies } from "../cube/cubies";
import { invariant } from "../invariant";
import { type AskedPiece, slotOf, slotsWanted } from "../cases/case-goal";
import { PAIR_MOVES, SLOT_MOVES, SLOTS } from "./piece-slots";

/**
 * One piece, or two of a kind, as a number.
 *
 * Shape: its values are slots, or `first slot × 24 + second slot`.
 */
export interface Half {
  /** Which two pieces of a kind are in one half: edges 0 and 1 are "edge 0", 2 and 3 "edge 1". */
  readonly name: string;
  readonly pieces: readonly AskedPiece[];
  /** How many values there are: 24 or 576. */
  readonly size: number;
  /** Shape: `[value × 18 + turn]`. */
  readonly moves: Uint16Array;
}

/** The halves that a goal's pieces make: neighbours in their layer share one. */
export function halvesOf(asked: readonly AskedPiece[]): readonly Half[] {
  const nameOf = ({ kind, piece }: AskedPiece) => `${kind} ${piece >> 1}`;
  return [...new Set(asked.map(nameOf))].map((name) => {
    const pieces = asked.filter((one) => nameOf(one) === name);
    const kind = name.startsWith("edge") ? "edge" : "corner";
    return pieces.length === 2
      ? { name, pieces, size: SLOTS * SLOTS, moves: PAIR_MOVES[kind] }
      : { name, pieces, size: SLOTS, moves: SLOT_MOVES[kind] };
  });
}

/** Says which pieces halves hold and what is asked of them: the same for the same tables. */
export function namesOf(halves: readonly Half[]): string {
  return halves
    .flatMap(({ pieces }) => pieces)
    .map(({ kind, piece, demand }) => `${kind} ${piece} ${demand}`)
    .join();
}

/** Where a half is in a state in which its pieces are known. */
export function valueOfHalf(half: Half, state: PartlyKnownCubies): number {
  return half.pieces.reduce((value, one) => {
    const slot = slotOf(state, one);
    invariant(slot !== undefined, "the pieces of a goal are known");
    return value * SLOTS + slot;
  }, 0);
}

/** The slots of a half's pieces at one of its values. */
export function slotsAt(half: Half, value: number): readonly number[] {
  return half.pieces.length === 2
    ? [Math.floor(value / SLOTS), value % SLOTS]
    : [value];
}

/** The values of a half at which its pieces are as wanted, the free layer not turned. Some put two pieces in one place. */
export function valuesWanted(half: Half): readonly number[] {
  return half.pieces
    .map(slotsWanted)
    .reduce<readonly number[]>(
      (values, slots) =>
        values.flatMap((value) => slots.map((slot) => value * SLOTS + slot)),
      [0],
    );
}
