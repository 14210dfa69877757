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
import { type Quarters, type Turn, turnParts } from "./turns";

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

/** How the cube is held after a turn: another way where the centres went along. */
export function holdAfterTurn(hold: Rotation, turn: Turn): Rotation {
  const { axis, rotationQuarters } = turnParts(turn);
  return rotationQuarters === 0
    ? hold
    : thenSymmetry(hold, rotationAbout(axis, rotationQuarters));
}

/**
 * Which faces of the body a turn turns against the centres, with quarters 1–3:
 * one for a face or wide layer, two for a slice, none for the whole cube.
 */
export function bodyTurns(
  hold: Rotation,
  turn: Turn,
): readonly (readonly [face: Face, quarters: Quarters])[] {
  const after = holdAfterTurn(hold, turn);
  return turnParts(turn).faces.map(([face, quarters]) => [
    bodyFace(after, face),
    quarters,
  ]);
}

/** The cube after one turn, as the holder makes it. */
export function applyTurn<State extends PartlyKnownCubies>(
  cube: HeldCube<State>,
  turn: Turn,
): HeldCube<State> {
  let cubies = cube.cubies;
  for (const [face, quarters] of bodyTurns(cube.hold, turn))
    cubies = compose(cubies, FACE_TURNS[faceTurnIndex(face, quarters)]!);
  return { cubies, hold: holdAfterTurn(cube.hold, turn) };
}

/** The cube after a sequence of turns, first one first. */
export function applyTurns<State extends PartlyKnownCubies>(
  cube: HeldCube<State>,
  turns: readonly Turn[],
): HeldCube<State> {
  return turns.reduce(applyTurn<State>, cube);
}
