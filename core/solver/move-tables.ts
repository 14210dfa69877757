/**
 * What every turn does to every value of a coordinate: one look-up replaces
 * composing twenty pieces and ranking them again.
 *
 * A coordinate depends on one of a state's four arrays only, so a table is
 * filled by moving that array alone, and only for the first turn of a face in
 * the list: the ones after it are read from the table as its powers.
 */
import { SOLVED } from "../cube/cubies";
import { FACE_TURNS } from "../cube/face-turns";
import type { CoordinateKind } from "./coordinates";
import type { Steps } from "../steps";

/** All eighteen turns, as indices into `FACE_TURNS`. */
export const ALL_TURNS: readonly number[] = FACE_TURNS.map((_, turn) => turn);

/** The ten turns of phase 2: U and D by any angle, the other faces by half. */
export const PHASE_TWO_TURNS: readonly number[] = [
  0, 1, 2, 9, 10, 11, 4, 7, 13, 16,
];

/**
 * The value of a coordinate after each turn.
 *
 * Shape: `next[value × width + k]`, with k an index into the list of turns the
 *        table was made for and `width` the length of that list.
 */
export interface MoveTable {
  readonly size: number;
  readonly width: number;
  readonly next: Uint16Array;
}

/** Values whose turns are computed between two pauses: about 2 ms. */
const VALUES_A_STEP = 4096;

/** Builds the table of a coordinate for a list of turns. */
export function* buildMoveTable(
  kind: CoordinateKind<number>,
  turns: readonly number[],
): Steps<MoveTable> {
  const { size, array } = kind;
  const width = turns.length;
  const next = new Uint16Array(size * width);
  const isOrientation = array.endsWith("Orientation");
  const radix = array === "cornerOrientation" ? 3 : 2;
  const solved = SOLVED[array];
  const before = solved.slice();
  const after = solved.slice();

  for (let value = 0; value < size; value++) {
    if (value % VALUES_A_STEP === VALUES_A_STEP - 1) yield (0.9 * value) / size;
    before.set(solved);
    kind.write(value, before);
    for (let k = 0; k < width; k++) {
      if (isPowerOfTheOneBefore(turns, k)) continue;
      const turn = FACE_TURNS[turns[k]!]!;
      const permutation = isCorner(array)
        ? turn.cornerPermutation
        : turn.edgePermutation;
      const orientation = turn[array];
      for (let i = 0; i < after.length; i++) {
        const moved = before[permutation[i]!]!;
        after[i] = isOrientation ? (moved + orientation[i]!) % radix : moved;
      }
      next[value * width + k] = kind.read(after);
    }
  }
  for (let value = 0; value < size; value++) {
    for (let k = 1; k < width; k++) {
      if (!isPowerOfTheOneBefore(turns, k)) continue;
      const quarter = k - (turns[k]! % 3);
      next[value * width + k] =
        next[next[value * width + k - 1]! * width + quarter]!;
    }
  }
  return { size, width, next };
}

function isCorner(array: string): boolean {
  return array.startsWith("corner");
}

/** Whether the turn is a quarter more than its neighbour in the list. */
function isPowerOfTheOneBefore(turns: readonly number[], k: number): boolean {
  return turns[k]! % 3 > 0 && turns[k - 1] === turns[k]! - 1;
}
