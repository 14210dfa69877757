/**
 * How many turns at least solve a pair of coordinates: the lower bound that
 * lets a search turn back early.
 *
 * Filled breadth first from the solved pair. While less than half is filled
 * the new entries spread forward; after that it is cheaper to ask each empty
 * entry for a neighbour that has just been filled, because most find one at
 * once.
 */
import { invariant } from "../invariant";
import type { MoveTable } from "./move-tables";
import type { Steps } from "../steps";
import type { SymmetryClasses } from "./symmetry-classes";

/** One side of a pair: its values in classes, and what turns do to them. */
export interface ReducedSide {
  readonly classes: SymmetryClasses;
  readonly moves: MoveTable;
}

/** The other side: its values as they are, and what turns and symmetries do to them. */
export interface PlainSide {
  readonly moves: MoveTable;
  /** Shape: `[value × symmetryCount + s]`, the same symmetries as the other side's. */
  readonly conjugation: Uint16Array;
}

/**
 * Least numbers of turns to the solved pair, one byte for each.
 *
 * Shape: with `class × symmetryCount + s = classes.classAndSymmetry[a]`,
 *        pair (a, b) is at
 *        `class × plain.moves.size + plain.conjugation[b × symmetryCount + s]`.
 */
export type PruningTable = Uint8Array;

const EMPTY = 255;

/** Entries looked at between two pauses: about 3 ms. */
const ENTRIES_A_STEP = 1 << 16;

/**
 * Builds the table of a pair that is solved where both values are 0.
 *
 * Shape: both move tables are made for the same list of turns, which the
 *        symmetries and inversion take into itself.
 */
export function* buildPruningTable(
  reduced: ReducedSide,
  plain: PlainSide,
): Steps<PruningTable> {
  invariant(
    reduced.moves.width === plain.moves.width,
    "both tables are for the same turns",
  );
  const classCount = reduced.classes.representatives.length;
  const size = plain.moves.size;
  const table = new Uint8Array(classCount * size).fill(EMPTY);
  table[0] = 0;
  let filled = 1;
  const fillFrom = tableFiller(table, reduced, plain);
  const classesAStep = Math.ceil(ENTRIES_A_STEP / size);
  for (let depth = 0; filled < table.length; depth++) {
    const forward = 2 * filled < table.length;
    const before = filled;
    for (let from = 0; from < classCount; from += classesAStep) {
      const to = Math.min(from + classesAStep, classCount);
      filled += fillFrom(from, to, depth, forward);
      yield filled / table.length;
    }
    invariant(filled > before, "turns reach every pair of coordinates");
  }
  return table;
}

/** What fills entries at depth + 1 for a range of classes, and counts them. */
function tableFiller(
  table: PruningTable,
  reduced: ReducedSide,
  plain: PlainSide,
): (from: number, to: number, depth: number, forward: boolean) => number {
  const { representatives, classAndSymmetry, stabilisers, symmetryCount } =
    reduced.classes;
  const { size, width, next } = plain.moves;
  const nextReduced = reduced.moves.next;
  const conjugation = plain.conjugation;

  /** An entry's mirror images that share its class are equally far. */
  const fillEquals = (klass: number, b: number, depth: number): number => {
    let added = 0;
    let rest = stabilisers[klass]! >> 1;
    for (let s = 1; rest !== 0; s++, rest >>= 1) {
      if ((rest & 1) === 0) continue;
      const entry = klass * size + conjugation[b * symmetryCount + s]!;
      if (table[entry] !== EMPTY) continue;
      table[entry] = depth;
      added++;
    }
    return added;
  };

  return (from, to, depth, forward) => {
    let added = 0;
    for (let klass = from; klass < to; klass++) {
      const row = representatives[klass]! * width;
      for (let b = 0; b < size; b++) {
        const entry = klass * size + b;
        if (table[entry] !== (forward ? depth : EMPTY)) continue;
        for (let k = 0; k < width; k++) {
          const packed = classAndSymmetry[nextReduced[row + k]!]!;
          const s = packed % symmetryCount;
          const other = (packed - s) / symmetryCount;
          const moved = next[b * width + k]!;
          const otherB = conjugation[moved * symmetryCount + s]!;
          const neighbour = other * size + otherB;
          if (!forward) {
            if (table[neighbour] !== depth) continue;
            table[entry] = depth + 1;
            added++;
            break;
          }
          if (table[neighbour] !== EMPTY) continue;
          table[neighbour] = depth + 1;
          added += 1 + fillEquals(other, otherB, depth + 1);
        }
      }
    }
    return added;
  };
}
