/**
 * The eighteen face turns as states: six quarter turns written out, their
 * powers computed.
 *
 * Source: WCA Regulations 12a1 (clockwise as seen from that face); the
 *         orientation convention is that of the two-phase algorithm: corners
 *         count from their U or D sticker, edges are flipped by F and B.
 */
import { compose, cubiesFrom, type Cubies } from "./cubies";
import { FACE_INDEX, type Face } from "./faces";

const NO_TWIST = [0, 0, 0, 0, 0, 0, 0, 0];
const NO_FLIP = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];

const QUARTER_TURNS: Readonly<Record<Face, Cubies>> = {
  U: cubiesFrom(
    [3, 0, 1, 2, 4, 5, 6, 7],
    NO_TWIST,
    [3, 0, 1, 2, 4, 5, 6, 7, 8, 9, 10, 11],
    NO_FLIP,
  ),
  R: cubiesFrom(
    [4, 1, 2, 0, 7, 5, 6, 3],
    [2, 0, 0, 1, 1, 0, 0, 2],
    [8, 1, 2, 3, 11, 5, 6, 7, 4, 9, 10, 0],
    NO_FLIP,
  ),
  F: cubiesFrom(
    [1, 5, 2, 3, 0, 4, 6, 7],
    [1, 2, 0, 0, 2, 1, 0, 0],
    [0, 9, 2, 3, 4, 8, 6, 7, 1, 5, 10, 11],
    [0, 1, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0],
  ),
  D: cubiesFrom(
    [0, 1, 2, 3, 5, 6, 7, 4],
    NO_TWIST,
    [0, 1, 2, 3, 5, 6, 7, 4, 8, 9, 10, 11],
    NO_FLIP,
  ),
  L: cubiesFrom(
    [0, 2, 6, 3, 4, 1, 5, 7],
    [0, 1, 2, 0, 0, 2, 1, 0],
    [0, 1, 10, 3, 4, 5, 9, 7, 8, 2, 6, 11],
    NO_FLIP,
  ),
  B: cubiesFrom(
    [0, 1, 3, 7, 4, 5, 2, 6],
    [0, 0, 1, 2, 0, 0, 2, 1],
    [0, 1, 2, 11, 4, 5, 6, 10, 8, 9, 3, 7],
    [0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 1, 1],
  ),
};

/**
 * Every face turn as a state.
 *
 * Shape: 18 entries; index 3 × face + (quarters − 1), faces in the order
 *        U R F D L B, quarters 1 (clockwise), 2, 3 (counter-clockwise).
 */
export const FACE_TURNS: readonly Cubies[] = Object.values(
  QUARTER_TURNS,
).flatMap((quarter) => {
  const half = compose(quarter, quarter);
  return [quarter, half, compose(half, quarter)];
});

/** A face turn's index in `FACE_TURNS`; `quarters` is any integer not divisible by 4. */
export function faceTurnIndex(face: Face, quarters: number): number {
  return 3 * FACE_INDEX[face] + ((((quarters % 4) + 4) % 4) - 1);
}
