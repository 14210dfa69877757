/**
 * The learner's turns seen from the body: which of its faces turn, and how the
 * cube is held afterwards, for all 54 turns in all 24 holds.
 */
import { faceTurnIndex } from "../cube/face-turns";
import { FACE_INDEX } from "../cube/faces";
import { bodyTurns, holdAfterTurn } from "../cube/held-cube";
import { ROTATIONS } from "../cube/symmetries";
import { isFaceTurn, isWholeCubeTurn, turnAxis } from "../cube/turns";
import type { FaceTurnSequence } from "./face-turn-sequence";
import { EVERY_TURN } from "./turn-costs";

/** A sequence of the learner's turns, as indices into `EVERY_TURN`. */
export type TurnSequence = readonly number[];

/** How many turns there are. */
export const TURN_KINDS = EVERY_TURN.length;

/** Stands for no face turn. */
export const NO_TURN = 255;

/** The axis of a turn that turns no face against the centres. */
export const NO_AXIS = 3;

/** Tables for turns in holds. Shape: the first index is `hold × 54 + turn`. */
export interface TurnsInHolds {
  /** The hold after the turn. */
  readonly after: Uint8Array;
  /** The hold before the turn, where the given one is that after it. */
  readonly before: Uint8Array;
  /** The body's axis about which faces are turned: 0–2, `NO_AXIS` for a turn of the whole cube. */
  readonly axis: Uint8Array;
  /** Up to two face turns of the body, or `NO_TURN`. Shape: `[2 × index]` and the one after it. */
  readonly faces: Uint8Array;
}

function makeTurnsInHolds(): TurnsInHolds {
  const size = ROTATIONS.length * TURN_KINDS;
  const after = new Uint8Array(size);
  const before = new Uint8Array(size);
  const axis = new Uint8Array(size).fill(NO_AXIS);
  const faces = new Uint8Array(2 * size).fill(NO_TURN);
  for (const hold of ROTATIONS)
    EVERY_TURN.forEach((turn, t) => {
      const at = hold * TURN_KINDS + t;
      after[at] = holdAfterTurn(hold, turn);
      before[after[at] * TURN_KINDS + t] = hold;
      bodyTurns(hold, turn).forEach(([face, quarters], i) => {
        faces[2 * at + i] = faceTurnIndex(face, quarters);
        axis[at] = FACE_INDEX[face] % 3;
      });
    });
  return { after, before, axis, faces };
}

let tables: TurnsInHolds | undefined;

/** The tables, made when first asked for: some milliseconds. */
export function turnsInHolds(): TurnsInHolds {
  tables ??= makeTurnsInHolds();
  return tables;
}

/** Which turns turn the whole cube. Shape: by the index in `EVERY_TURN`. */
export const IS_WHOLE_CUBE: readonly boolean[] =
  EVERY_TURN.map(isWholeCubeTurn);

/**
 * Whether a turn may come right after another in a sequence that says nothing
 * in two turns that one says: 1 or 0. Shape: `[before × 54 + turn]`.
 */
export const MAY_FOLLOW: Uint8Array = Uint8Array.from(
  EVERY_TURN.flatMap((before) =>
    EVERY_TURN.map((turn) => {
      if (isWholeCubeTurn(before) && isWholeCubeTurn(turn)) return 0;
      if (turnAxis(before) !== turnAxis(turn)) return 1;
      return isFaceTurn(before) &&
        isFaceTurn(turn) &&
        FACE_INDEX[before.layer] < FACE_INDEX[turn.layer]
        ? 1
        : 0;
    }),
  ),
);

/** A sequence as face turns of the body, for a cube that is held at first as its body's faces are named. */
export function faceTurnsOfSequence(sequence: TurnSequence): FaceTurnSequence {
  const { after, faces } = turnsInHolds();
  const made: number[] = [];
  let hold = 0;
  for (const turn of sequence) {
    const at = hold * TURN_KINDS + turn;
    for (const face of [faces[2 * at]!, faces[2 * at + 1]!])
      if (face !== NO_TURN) made.push(face);
    hold = after[at]!;
  }
  return made;
}
