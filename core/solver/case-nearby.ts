/**
 * All states that are a few turns from a case search's goal, as a set.
 *
 * A search that is five turns short of its length asks here whether it can
 * still arrive. For turning the last layer, whose pieces start three quarters
 * in place, tables of distances hardly ever say no so early: with them alone a
 * median case took 270 ms, with the set 24 ms (450,000 sequences, tried in
 * 60 ms).
 *
 * A state is kept as a 32-bit mark, the sum of random-looking numbers for each
 * piece and place (A. Zobrist, 1970). Two states may share a mark: then the
 * search goes on in vain for a moment and finds out at the end.
 */
import { FREE_LAYER } from "../cases/stage";
import { SOLVED } from "../cube/cubies";
import { FACE_TURNS } from "../cube/face-turns";
import { FACE_INDEX } from "../cube/faces";
import {
  afterFreeQuarters,
  type AskedPiece,
  FREE_QUARTERS,
} from "../cases/case-goal";
import { type Half, slotsAt, valueOfHalf } from "./case-halves";
import { faceOfTurn } from "./face-turn-sequence";
import { ALL_TURNS } from "./move-tables";
import { ORIENTATIONS } from "../cube/pieces";
import { SLOTS } from "./piece-slots";
import type { Steps } from "../steps";

/** The states within some turns of a goal, those of the free layer at the end left out. */
export interface Nearby {
  /** How many turns. */
  readonly reach: number;
  /** What each half adds to the mark of a state after a turn. Shape: `[half][value × 18 + turn]`, values before the turn. */
  readonly marksAfter: readonly Uint32Array[];
  /** Whether a state with that mark may be near; never false where one is. Units: an unsigned 32-bit sum. */
  has(mark: number): boolean;
}

const FREE_FACE = FACE_INDEX[FREE_LAYER];

/** Finds all states near a goal, by trying all sequences. */
export function* buildNearby(
  halves: readonly Half[],
  reach: number,
): Steps<Nearby> {
  const turnCount = FACE_TURNS.length;
  const count = halves.length;
  const marks = marksOf(halves);
  const moves = halves.map((half) => half.moves);
  const values = new Uint16Array((reach + 1) * count);
  const faceOf = Uint8Array.from(ALL_TURNS, faceOfTurn);

  const markAt = (depth: number): number => {
    let mark = 0;
    for (let h = 0; h < count; h++)
      mark = (mark + marks[h]![values[depth * count + h]!]!) | 0;
    return mark >>> 0;
  };

  const turned = (depth: number, turn: number): void => {
    const here = depth * count;
    for (let h = 0; h < count; h++)
      values[here + count + h] =
        moves[h]![values[here + h]! * turnCount + turn]!;
  };

  const roots = FREE_QUARTERS.map((quarters) =>
    halves.map((half) =>
      valueOfHalf(half, afterFreeQuarters(SOLVED, quarters)),
    ),
  );
  const differentRoots = roots.filter((root, i) => {
    const markOf = (other: readonly number[]) => {
      values.set(other);
      return markAt(0);
    };
    return roots.findIndex((other) => markOf(other) === markOf(root)) === i;
  });
  const set = createMarkSet(differentRoots.length * most(reach));

  const spread = (depth: number, lastFace: number): void => {
    set.add(markAt(depth));
    if (depth === reach) return;
    for (let turn = 0; turn < turnCount; turn++) {
      const face = faceOf[turn]!;
      if (face === lastFace || face + 3 === lastFace) continue;
      turned(depth, turn);
      spread(depth + 1, face);
    }
  };

  for (const [i, root] of differentRoots.entries()) {
    values.set(root);
    set.add(markAt(0));
    for (let turn = 0; turn < turnCount; turn++) {
      // A way does not end with a turn of the free layer.
      if (faceOf[turn] === FREE_FACE) continue;
      turned(0, turn);
      spread(1, faceOf[turn]!);
      yield (i + turn / turnCount) / differentRoots.length;
    }
  }
  const marksAfter = moves.map((next, h) =>
    Uint32Array.from(next, (value) => marks[h]![value]!),
  );
  return { reach, marksAfter, has: set.has };
}

/** At least how many sequences of up to so many turns there are: 13.4 times as many with each turn. */
function most(reach: number): number {
  return 16 * 13.5 ** (reach - 1);
}

interface MarkSet {
  readonly add: (mark: number) => void;
  readonly has: (mark: number) => boolean;
}

/**
 * A set of 32-bit marks with room for so many. Before the marks themselves a
 * row of bits is asked, an eighth of their size: most questions end there.
 */
function createMarkSet(count: number): MarkSet {
  const bits = Math.ceil(Math.log2(1.5 * count));
  const slots = new Uint32Array(2 ** bits);
  const last = slots.length - 1;
  const rowShift = 32 - (bits + 2);
  const row = new Uint32Array(2 ** (bits + 2 - 5));
  // An empty slot holds 0, so the mark 0 is kept as 1.
  const kept = (mark: number) => (mark === 0 ? 1 : mark);
  return {
    add: (mark) => {
      const wanted = kept(mark);
      const bit = wanted >>> rowShift;
      row[bit >>> 5] = row[bit >>> 5]! | (1 << (bit & 31));
      let at = wanted & last;
      while (slots[at] !== 0 && slots[at] !== wanted) at = (at + 1) & last;
      slots[at] = wanted;
    },
    has: (mark) => {
      const wanted = kept(mark);
      const bit = wanted >>> rowShift;
      if ((row[bit >>> 5]! & (1 << (bit & 31))) === 0) return false;
      let at = wanted & last;
      while (slots[at] !== 0 && slots[at] !== wanted) at = (at + 1) & last;
      return slots[at] === wanted;
    },
  };
}

function marksOf(halves: readonly Half[]): readonly Uint32Array[] {
  const asked = halves.flatMap(({ pieces }) => pieces);
  return halves.map((half) =>
    Uint32Array.from({ length: half.size }, (_, value) =>
      slotsAt(half, value).reduce(
        (sum, slot, i) => sum + markOfPiece(half.pieces[i]!, slot, asked),
        0,
      ),
    ),
  );
}

/**
 * What a piece adds to a mark: the same for all ways in which the goal allows
 * it to be where it is, so that one of the goal's states stands for them all.
 */
function markOfPiece(
  { kind, piece, demand }: AskedPiece,
  slot: number,
  asked: readonly AskedPiece[],
): number {
  const name = kind === "corner" ? 20 + piece : piece;
  switch (demand) {
    case "placed":
      return mixed(name * SLOTS + slot);
    case "homed":
      return mixed(name * SLOTS + slot - (slot % ORIENTATIONS[kind]));
    case "turned": {
      // Four fill the layer and are not told apart; fewer may be anywhere in it.
      const alike = asked.filter(
        (one) => one.kind === kind && one.demand === "turned",
      );
      return alike.length < 4
        ? 0
        : mixed((kind === "corner" ? 30 : 15) * SLOTS + slot);
    }
  }
}

/** A random-looking 32-bit number for a small one. Source: the finaliser of MurmurHash3 (A. Appleby). */
export function mixed(n: number): number {
  let x = Math.imul(n + 1, 0x9e3779b1);
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return (x ^ (x >>> 16)) >>> 0;
}
