/**
 * The inner loop of a case search: all sequences of one length from one start,
 * depth first and without recursion, so that it can pause after any number of
 * turns.
 *
 * A sequence neither begins nor ends with the free layer: these turns are free
 * and made outside. Of two opposite faces, whose order does not matter, the
 * one that comes first in `FACES` is turned first.
 */
import { FREE_LAYER } from "../cases/stage";
import { FACE_TURNS } from "../cube/face-turns";
import { FACE_INDEX, FACES } from "../cube/faces";
import { type CaseStart, turnImage } from "./case-starts";
import { valueOfHalf } from "./case-halves";
import type { Nearby } from "./case-nearby";
import type { FollowedPieces } from "./case-tables";
import { faceOfTurn, type FaceTurnSequence } from "./face-turn-sequence";
import type { Steps } from "../steps";

/** The longest sequences a kernel can search for. */
export const MOST_CASE_TURNS = 20;

/** Searches from one start. */
export interface CaseKernel {
  /** No sequence has fewer turns; `NEVER` where there is none. */
  readonly bound: number;
  /** Calls `found` with each sequence of a length that every table lets pass. Units: `length` is 1–20. */
  ofLength(
    length: number,
    nearby: Nearby | undefined,
    found: (sequence: FaceTurnSequence) => void,
  ): Steps<void>;
}

/** Turns tried between two pauses: about 3 ms. */
const TRIES_A_STEP = 1 << 16;

const FREE_FACE = FACE_INDEX[FREE_LAYER];
const ACROSS = (FREE_FACE + 3) % FACES.length;

/** What came before: nothing, only the layer across from the free one, or a turn of face n at 2 + n. */
const NOTHING_YET = 0;
const ONLY_ACROSS = 1;
const AFTER_FACE = 2;

/** Prepares a search with a choice of face turns. */
export function createCaseKernel(
  { halves, tables }: FollowedPieces,
  start: CaseStart,
  turns: readonly number[],
): CaseKernel {
  const turnCount = FACE_TURNS.length;
  const count = halves.length;
  const moves = halves.map((half) => half.moves);
  const values = new Uint16Array((MOST_CASE_TURNS + 1) * count);
  values.set(halves.map((half) => valueOfHalf(half, start.state)));
  const inner = turnLists(turns, start, false);
  const last = turnLists(turns, start, true);
  const faceOf = Uint8Array.from(FACE_TURNS, (_, turn) => faceOfTurn(turn));

  // Halves are moved in the order in which the tables ask for them.
  const order = [
    ...new Set(tables.flatMap(({ first, second }) => [first, second])),
  ];
  const movedBefore = tables.map(
    ({ first, second }) =>
      1 + Math.max(order.indexOf(first), order.indexOf(second)),
  );

  const distanceAt = (table: number, from: number): number => {
    const { first, second, width, turns: distances } = tables[table]!;
    const a = values[from + first]!;
    return distances[width === 0 ? a : a * width + values[from + second]!]!;
  };

  let nearby: Nearby | undefined;

  const mayBeNear = (turn: number, here: number): boolean => {
    if (nearby === undefined) return true;
    const { marksAfter } = nearby;
    let mark = 0;
    for (let h = 0; h < count; h++)
      mark = (mark + marksAfter[h]![values[here + h]! * turnCount + turn]!) | 0;
    return nearby.has(mark >>> 0);
  };

  /** Makes a turn, unless the goal is then too far. */
  const isMade = (turn: number, depth: number, left: number): boolean => {
    const here = depth * count;
    const there = here + count;
    if (left === nearby?.reach && !mayBeNear(turn, here)) return false;
    let moved = 0;
    for (let table = 0; table < tables.length; table++) {
      for (; moved < movedBefore[table]!; moved++) {
        const half = order[moved]!;
        values[there + half] =
          moves[half]![values[here + half]! * turnCount + turn]!;
      }
      if (distanceAt(table, there) > left) return false;
    }
    return true;
  };

  const path = new Uint8Array(MOST_CASE_TURNS);
  const pointer = new Uint8Array(MOST_CASE_TURNS + 1);
  const before = new Uint8Array(MOST_CASE_TURNS + 1);
  let depth = -1;

  /** Goes on for so many tries; returns whether that was all. */
  const goOn = (
    length: number,
    found: (sequence: FaceTurnSequence) => void,
    tries: number,
  ): boolean => {
    for (let left = tries; depth >= 0;) {
      const isLast = depth + 1 === length;
      const list = (isLast ? last : inner)[before[depth]!]!;
      const k = pointer[depth]!;
      if (k === list.length) {
        depth--;
        continue;
      }
      if (left-- === 0) return false;
      pointer[depth] = k + 1;
      const turn = list[k]!;
      if (!isMade(turn, depth, length - depth - 1)) continue;
      path[depth] = turn;
      if (isLast) {
        found([...path.subarray(0, length)]);
        continue;
      }
      const face = faceOf[turn]!;
      before[depth + 1] =
        depth === 0 && face === ACROSS ? ONLY_ACROSS : AFTER_FACE + face;
      depth++;
      pointer[depth] = 0;
    }
    return true;
  };

  return {
    bound: Math.max(0, ...tables.map((_, table) => distanceAt(table, 0))),
    *ofLength(length, near, found) {
      nearby = near;
      depth = 0;
      pointer[0] = 0;
      before[0] = NOTHING_YET;
      const list = (length === 1 ? last : inner)[NOTHING_YET]!;
      while (!goOn(length, found, TRIES_A_STEP))
        yield pointer[0] / (list.length + 1);
    },
  };
}

/** Which turns may follow, for all that can come before. */
function turnLists(
  turns: readonly number[],
  { symmetries }: CaseStart,
  isLast: boolean,
): readonly Uint8Array[] {
  const isFirstOfItsKind = (turn: number) =>
    symmetries.every(
      (rotation) => faceOfTurn(turnImage(rotation, turn)) >= faceOfTurn(turn),
    );
  const mayFollow = (before: number, turn: number): boolean => {
    const face = faceOfTurn(turn);
    if (face === FREE_FACE)
      return !isLast && before >= AFTER_FACE && mayFollowFace(before, face);
    if (before === NOTHING_YET) return isFirstOfItsKind(turn);
    if (before === ONLY_ACROSS)
      return face !== ACROSS && isFirstOfItsKind(turn);
    return mayFollowFace(before, face);
  };
  return [NOTHING_YET, ONLY_ACROSS, ...FACES.map((_, i) => AFTER_FACE + i)].map(
    (before) =>
      Uint8Array.from(turns.filter((turn) => mayFollow(before, turn))),
  );
}

function mayFollowFace(before: number, face: number): boolean {
  const lastFace = before - AFTER_FACE;
  return face !== lastFace && face + 3 !== lastFace;
}
