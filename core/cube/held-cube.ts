/**
 * A cube in somebody's hands: its pieces relative to its centres, and how the
 * whole is held. Turns are named as the holder sees them; a whole-cube turn
 * changes the hold and no piece.
 */
import { compose, type PartlyKnownCubies } from "./cubies";
import { FACE_TURNS, faceTurnIndex } from "./face-turns";
import type { Face } from "./faces";
import {
  faceImage,
  inverseSymmetry,
  type Rotation,
  rotationAbout,
  thenSymmetry,
} from "./symmetries";
import { type Turn, turnParts } from "./turns";

/** Pieces and hold. `hold` takes the body's faces to where the holder sees them. */
export interface HeldCube<State extends PartlyKnownCubies = PartlyKnownCubies> {
  readonly cubies: State;
  readonly hold: Rotation;
}

/** The face of the body (its centre) that the holder sees at `view`. */
export function bodyFace(hold: Rotation, view: Face): Face {
  return faceImage(inverseSymmetry(hold), view);
}

/** Where the holder sees a face of the body. */
export function viewFace(hold: Rotation, body: Face): Face {
  return faceImage(hold, body);
}

/** The cube after one turn, as the holder makes it. */
export function applyTurn<State extends PartlyKnownCubies>(
  cube: HeldCube<State>,
  turn: Turn,
): HeldCube<State> {
  const parts = turnParts(turn);
  const hold =
    parts.rotationQuarters === 0
      ? cube.hold
      : thenSymmetry(
          cube.hold,
          rotationAbout(parts.axis, parts.rotationQuarters),
        );
  let cubies = cube.cubies;
  for (const [face, quarters] of parts.faces) {
    const index = faceTurnIndex(bodyFace(hold, face), quarters);
    cubies = compose(cubies, FACE_TURNS[index]!);
  }
  return { cubies, hold };
}

/** The cube after a sequence of turns, first one first. */
export function applyTurns<State extends PartlyKnownCubies>(
  cube: HeldCube<State>,
  turns: readonly Turn[],
): HeldCube<State> {
  return turns.reduce(applyTurn<State>, cube);
}
