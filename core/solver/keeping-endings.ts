/**
 * How sequences may end that put some pieces right: all of them up to a cost,
 * to be found by the mark of the arrangement that they put right.
 */
import { FACE_TURNS } from "../cube/face-turns";
import type { Pieces } from "../cube/pieces";
import { NO_ROTATION, ROTATIONS } from "../cube/symmetries";
import { SLOTS } from "./piece-slots";
import { inverseFaceTurn } from "./face-turn-sequence";
import {
  HOME_SLOTS,
  movesOfPiece,
  numbersOfPieces,
  PIECES,
  pieceSeen,
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
} from "./turns-in-holds";

/** No sequence has more turns. */
export const MOST_TURNS = 32;

/** A list of numbers that grows: JavaScript's own takes two to eight times the room. */
interface GrowingRow<Row> {
  readonly push: (value: number) => void;
  /** All numbers, and free room after them. */
  readonly row: () => Row;
}

function growingRow<Row extends Uint8Array | Uint32Array>(
  make: (length: number) => Row,
): GrowingRow<Row> {
  let row = make(1024);
  let length = 0;
  return {
    push(value) {
      if (length === row.length) {
        const longer = make(2 * length);
        longer.set(row);
        row = longer;
      }
      row[length++] = value;
    },
    row: () => row,
  };
}

const bytes = () => growingRow((length) => new Uint8Array(length));
const words = () => growingRow((length) => new Uint32Array(length));

/** All endings up to a cost, to be found by the mark of what they put right. */
export interface Endings {
  readonly count: number;
  /** Shape: for ending i the ending after its first turn; 0 is the empty one. */
  readonly rest: Uint32Array;
  readonly firstTurn: Uint8Array;
  readonly cost: Uint8Array;
  /** Marks and endings in one table with free places (ending + 1; 0 is free). */
  readonly markAt: Uint32Array;
  readonly endingAt: Uint32Array;
  readonly bits: Uint32Array;
  readonly mask: number;
  readonly bitShift: number;
}

/** Lists all endings up to a cost that are made of a choice of turns; none ends with a turn of the whole cube. */
export function listEndings(
  kept: Pieces,
  turns: readonly number[],
  costs: TurnCosts,
  most: number,
): Endings {
  const marks = seenMarks();
  const holds = turnsInHolds();
  const images = imagesOf(kept, turns);
  const followed = [...new Set(images.flatMap((image) => [...image]))];
  const growing = costs.backwards(MOST_TURNS);
  const slots = new Uint8Array((MOST_TURNS + 1) * PIECES);
  slots.set(HOME_SLOTS);
  const moves = Array.from({ length: PIECES }, (_, piece) =>
    movesOfPiece(piece),
  );

  const rest = words();
  const firstTurn = bytes();
  const cost = bytes();
  const seen = images.map(words);
  let count = 0;

  const note = (
    depth: number,
    hold: number,
    ending: number,
    turn: number,
    reached: number,
  ): void => {
    rest.push(ending);
    firstTurn.push(turn);
    cost.push(reached);
    count++;
    const from = depth * PIECES;
    images.forEach((image, i) => {
      let mark = 0;
      for (const piece of image)
        mark =
          (mark +
            marks[(hold * PIECES + piece) * SLOTS + slots[from + piece]!]!) |
          0;
      seen[i]!.push(mark >>> 0);
    });
  };

  const spread = (
    depth: number,
    hold: number,
    ending: number,
    next: number,
    nextAxis: number,
  ): void => {
    for (const turn of turns) {
      if (depth === 0) {
        if (IS_WHOLE_CUBE[turn]!) continue;
      } else if (MAY_FOLLOW[turn * TURN_KINDS + next] === 0) continue;
      const earlier = holds.before[hold * TURN_KINDS + turn]!;
      const axis = holds.axis[earlier * TURN_KINDS + turn]!;
      if (depth > 0 && IS_WHOLE_CUBE[next]! && axis === nextAxis) continue;
      const reached = growing.costWith(depth, turn);
      if (reached > most) continue;
      growing.grow(depth, turn);
      const at = 2 * (earlier * TURN_KINDS + turn);
      const from = depth * PIECES;
      const to = from + PIECES;
      slots.copyWithin(to, from, to);
      for (let i = 0; i < 2; i++) {
        const face = holds.faces[at + i]!;
        if (face === NO_TURN) break;
        const back = inverseFaceTurn(face);
        for (const piece of followed)
          slots[to + piece] =
            moves[piece]![slots[to + piece]! * FACE_TURNS.length + back]!;
      }
      note(depth + 1, earlier, ending, turn, reached);
      spread(
        depth + 1,
        earlier,
        count - 1,
        turn,
        axis === NO_AXIS ? nextAxis : axis,
      );
    }
  };
  note(0, NO_ROTATION, 0, NO_TURN, 0);
  spread(0, NO_ROTATION, 0, NO_TURN, NO_AXIS);

  const bitsWide = Math.ceil(Math.log2(1.6 * images.length * count + 16));
  const markAt = new Uint32Array(2 ** bitsWide);
  const endingAt = new Uint32Array(2 ** bitsWide);
  const mask = markAt.length - 1;
  const bitShift = Math.max(0, 32 - (bitsWide + 3));
  const bits = new Uint32Array(2 ** (32 - bitShift - 5));
  for (const marksSeen of seen) {
    const row = marksSeen.row();
    for (let ending = 0; ending < count; ending++) {
      const mark = row[ending]!;
      let at = mark & mask;
      while (endingAt[at] !== 0) at = (at + 1) & mask;
      markAt[at] = mark;
      endingAt[at] = ending + 1;
      const bit = mark >>> bitShift;
      bits[bit >>> 5]! |= 1 << (bit & 31);
    }
  }
  return {
    count,
    rest: rest.row(),
    firstTurn: firstTurn.row(),
    cost: cost.row(),
    markAt,
    endingAt,
    bits,
    mask,
    bitShift,
  };
}

/** The pieces to keep as they can be seen after turns of a choice, each set once. */
function imagesOf(
  kept: Pieces,
  turns: readonly number[],
): readonly Uint8Array[] {
  const { after } = turnsInHolds();
  const holds = [NO_ROTATION];
  for (const hold of holds)
    for (const turn of turns) {
      const next = ROTATIONS[after[hold * TURN_KINDS + turn]!]!;
      if (!holds.includes(next)) holds.push(next);
    }
  const numbers = numbersOfPieces(kept);
  const images = holds.map((rotation) =>
    numbers
      .map((piece) => pieceSeen(rotation, piece))
      .toSorted((a, b) => a - b),
  );
  const names = images.map((image) => image.join());
  return images
    .filter((_, i) => names.indexOf(names[i]!) === i)
    .map((image) => Uint8Array.from(image));
}
