/**
 * All sequences up to a cost that keep some pieces, wherever they take the
 * rest: from both ends, joined where the pieces to keep are in one arrangement.
 *
 * Turning on from one end only would try five times as many sequences with
 * each unit of ease, 10¹² for a way of 17. Half of that from each end are some
 * millions: little enough to prove a way the easiest of all.
 *
 * Sequences are the learner's, wide layers, slices and turns of the whole cube
 * among them. Two turns about one axis follow each other, with a turn of the
 * whole cube between them or without, only where they are of opposite faces
 * and in the order of `TURN_LAYERS`: anything else of that kind is another
 * turn, written in two. The whole cube is turned once at a time.
 *
 * Arrangements are compared by their marks (`seen-marks.ts`); what seems to fit
 * is played.
 */
import { FACE_TURNS } from "../cube/face-turns";
import type { Pieces } from "../cube/pieces";
import { NO_ROTATION } from "../cube/symmetries";
import { listEndings, MOST_TURNS } from "./keeping-endings";
import { SLOTS } from "./piece-slots";
import {
  HOME_SLOTS,
  movesOfPiece,
  numbersOfPieces,
  PIECES,
  seenMarks,
} from "./seen-marks";
import type { TurnCosts } from "./turn-costs";
import {
  IS_WHOLE_CUBE,
  MAY_FOLLOW,
  NO_AXIS,
  NO_TURN,
  TURN_KINDS,
  turnsInHolds,
  type TurnSequence,
} from "./turns-in-holds";

/** What to look for. */
export interface KeepingQuestion {
  /** The pieces that are placed before and after, seen from the hold at first. */
  readonly kept: Pieces;
  /** The turns that are made, as indices into `EVERY_TURN`. */
  readonly turns: readonly number[];
  readonly costs: TurnCosts;
  /** Sequences up to this cost are all found. Units: those of `costs`. */
  readonly most: number;
  /** How much of it is listed from the end, the rest being tried from the beginning: about half. */
  readonly mostFromEnd: number;
  /** Whether a sequence may begin with a turn; absent: with any. */
  readonly mayBegin?: (turn: number) => boolean;
}

/**
 * Finds all sequences up to a cost that keep the pieces, each once.
 *
 * `found` gets the sequence and a cost that it does not fall below; what it
 * does cost may be more where hands change their grip at the joint.
 */
export function eachKeepingSequence(
  question: KeepingQuestion,
  found: (sequence: TurnSequence, bound: number) => void,
): void {
  const { kept, turns, costs, most, mostFromEnd, mayBegin } = question;
  const marks = seenMarks();
  const holds = turnsInHolds();
  const endings = listEndings(kept, turns, costs, mostFromEnd);
  const { markAt, endingAt, bits, mask, bitShift } = endings;
  const least = most - mostFromEnd;
  const pieces = Uint8Array.from(numbersOfPieces(kept));
  const count = pieces.length;
  const moves = Array.from(pieces, movesOfPiece);
  const home = Uint8Array.from(pieces, (piece) => HOME_SLOTS[piece]!);
  const slots = new Uint8Array((2 * MOST_TURNS + 2) * count);
  slots.set(home);
  const growing = costs.forwards(MOST_TURNS);
  const path = new Uint8Array(2 * MOST_TURNS);

  const turned = (depth: number, hold: number, turn: number): void => {
    const at = 2 * (hold * TURN_KINDS + turn);
    const first = holds.faces[at]!;
    const second = holds.faces[at + 1]!;
    const from = depth * count;
    const to = from + count;
    for (let i = 0; i < count; i++) {
      let slot = slots[from + i]!;
      if (first !== NO_TURN)
        slot = moves[i]![slot * FACE_TURNS.length + first]!;
      if (second !== NO_TURN)
        slot = moves[i]![slot * FACE_TURNS.length + second]!;
      slots[to + i] = slot;
    }
  };

  /** The mark after one turn more; `turn` may be none. */
  const markAfter = (depth: number, hold: number, turn: number): number => {
    const from = depth * count;
    const at = 2 * (hold * TURN_KINDS + turn);
    const first = turn === NO_TURN ? NO_TURN : holds.faces[at]!;
    const second = turn === NO_TURN ? NO_TURN : holds.faces[at + 1]!;
    const after =
      turn === NO_TURN ? hold : holds.after[hold * TURN_KINDS + turn]!;
    const seenFrom = after * PIECES;
    let sum = 0;
    for (let i = 0; i < count; i++) {
      let slot = slots[from + i]!;
      if (first !== NO_TURN)
        slot = moves[i]![slot * FACE_TURNS.length + first]!;
      if (second !== NO_TURN)
        slot = moves[i]![slot * FACE_TURNS.length + second]!;
      sum = (sum + marks[(seenFrom + pieces[i]!) * SLOTS + slot]!) | 0;
    }
    return sum >>> 0;
  };

  const isListed = (mark: number): boolean => {
    const bit = mark >>> bitShift;
    return (bits[bit >>> 5]! & (1 << (bit & 31))) !== 0;
  };

  const join = (
    depth: number,
    hold: number,
    lastAxis: number,
    cost: number,
    mark: number,
  ): void => {
    for (let at = mark & mask; endingAt[at] !== 0; at = (at + 1) & mask) {
      if (markAt[at] !== mark) continue;
      const ending = endingAt[at]! - 1;
      const bound = cost + endings.cost[ending]!;
      if (bound <= most && canBeJoined(depth, hold, lastAxis, ending))
        tryEnding(depth, hold, ending, bound);
    }
  };

  const mayComeNext = (
    depth: number,
    hold: number,
    lastAxis: number,
    turn: number,
  ): boolean => {
    if (depth === 0) return mayBegin?.(turn) !== false;
    const before = path[depth - 1]!;
    return (
      MAY_FOLLOW[before * TURN_KINDS + turn] === 1 &&
      !(
        IS_WHOLE_CUBE[before]! &&
        holds.axis[hold * TURN_KINDS + turn] === lastAxis
      )
    );
  };

  const canBeJoined = (
    depth: number,
    hold: number,
    lastAxis: number,
    ending: number,
  ): boolean => {
    if (ending === 0) return depth === 0 || !IS_WHOLE_CUBE[path[depth - 1]!]!;
    const turn = endings.firstTurn[ending]!;
    if (!mayComeNext(depth, hold, lastAxis, turn)) return false;
    if (!IS_WHOLE_CUBE[turn]!) return true;
    const after = holds.after[hold * TURN_KINDS + turn]!;
    const second = endings.firstTurn[endings.rest[ending]!]!;
    return holds.axis[after * TURN_KINDS + second] !== lastAxis;
  };

  const tryEnding = (
    depth: number,
    hold: number,
    ending: number,
    bound: number,
  ): void => {
    let now = hold;
    let at = depth;
    for (let e = ending; e !== 0; e = endings.rest[e]!) {
      const turn = endings.firstTurn[e]!;
      turned(at, now, turn);
      now = holds.after[now * TURN_KINDS + turn]!;
      path[at++] = turn;
    }
    if (isHome(at)) found(Array.from(path.subarray(0, at)), bound);
  };

  const isHome = (depth: number): boolean => {
    for (let i = 0; i < count; i++)
      if (slots[depth * count + i] !== home[i]) return false;
    return true;
  };

  const goOn = (depth: number, hold: number, lastAxis: number): void => {
    for (const turn of turns) {
      if (!mayComeNext(depth, hold, lastAxis, turn)) continue;
      const cost = growing.costWith(depth, turn);
      if (cost > most) continue;
      const after = holds.after[hold * TURN_KINDS + turn]!;
      const turnsAxis = holds.axis[hold * TURN_KINDS + turn]!;
      const axis = turnsAxis === NO_AXIS ? lastAxis : turnsAxis;
      path[depth] = turn;
      if (cost >= least) {
        const mark = markAfter(depth, hold, turn);
        if (!isListed(mark)) continue;
        turned(depth, hold, turn);
        join(depth + 1, after, axis, cost, mark);
        continue;
      }
      turned(depth, hold, turn);
      // A short sequence never grows to where endings are joined.
      if (turnsAxis !== NO_AXIS && isHome(depth + 1))
        found(Array.from(path.subarray(0, depth + 1)), cost);
      growing.grow(depth, turn);
      goOn(depth + 1, after, axis);
    }
  };

  if (least <= 0) {
    const mark = markAfter(0, NO_ROTATION, NO_TURN);
    join(0, NO_ROTATION, NO_AXIS, 0, mark);
    return;
  }
  found([], 0);
  goOn(0, NO_ROTATION, NO_AXIS);
}
