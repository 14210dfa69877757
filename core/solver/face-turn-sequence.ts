/**
 * Sequences of face turns in the body frame, as the kernels write them, and
 * what becomes of them in a learner's hands.
 *
 * Shape: a `FaceTurnSequence` holds indices into `FACE_TURNS`. It says nothing
 *        about how the cube is held: whole-cube turns, wide layers and slices
 *        are faces turned and a hold changed.
 */
import {
  compose,
  type Cubies,
  type PartlyKnownCubies,
  SOLVED,
} from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import { FACES, type Face } from "../cube/faces";
import { bodyFace, viewFace } from "../cube/held-cube";
import { type Rotation, rotationAbout, thenSymmetry } from "../cube/symmetries";
import { type Quarters, type Turn, turnParts } from "../cube/turns";
import { present } from "../invariant";

/** Face turns, first one first. */
export type FaceTurnSequence = readonly number[];

/** The face, 0–5, that a face turn turns. */
export function faceOfTurn(turn: number): number {
  return Math.floor(turn / 3);
}

/** The face turn that undoes one. */
export function inverseFaceTurn(turn: number): number {
  return 3 * faceOfTurn(turn) + 2 - (turn % 3);
}

/** The sequence that undoes a sequence. */
export function inverseSequence(turns: FaceTurnSequence): FaceTurnSequence {
  return turns.map(inverseFaceTurn).reverse();
}

/** A state after a sequence; only its known pieces are followed. */
export function afterSequence<State extends PartlyKnownCubies>(
  state: State,
  turns: FaceTurnSequence,
): State {
  return turns.reduce(
    (after, turn) => compose(after, FACE_TURNS[turn]!),
    state,
  );
}

/** What a sequence does to all pieces. */
export function effectOf(turns: FaceTurnSequence): Cubies {
  return afterSequence(SOLVED, turns);
}

/** A face turn as someone sees it who holds the cube that way. */
export function turnSeen(hold: Rotation, turn: number): Turn {
  const face = present(FACES[faceOfTurn(turn)], "face turns are 0–17");
  return {
    layer: viewFace(hold, face),
    quarters: ((turn % 3) + 1) as Quarters,
  };
}

/** What a learner's turns do to the faces of a cube that is held that way at first. */
export function faceTurnsOf(
  hold: Rotation,
  turns: readonly Turn[],
): FaceTurnSequence {
  let held = hold;
  return turns.flatMap((turn) => {
    const { axis, rotationQuarters, faces } = turnParts(turn);
    const before = held;
    held = thenSymmetry(held, rotationAbout(axis, rotationQuarters));
    return faces.map(([face, quarters]) =>
      faceTurnIndex(bodyFace(before, face), quarters),
    );
  });
}

/**
 * The sequence with turns of one face merged, and opposite faces, whose order
 * does not matter, in the order of `FACES`: two sequences that differ in
 * nothing else become the same.
 */
export function normalised(turns: FaceTurnSequence): FaceTurnSequence {
  const result: number[] = [];
  for (const turn of turns) {
    let at = result.length;
    while (at > 0 && faceOfTurn(result[at - 1]!) === faceOfTurn(turn) + 3) at--;
    const earlier = result[at - 1];
    if (earlier === undefined || faceOfTurn(earlier) !== faceOfTurn(turn)) {
      result.splice(at, 0, turn);
      continue;
    }
    const quarters = ((earlier % 3) + (turn % 3) + 2) % 4;
    if (quarters === 0) result.splice(at - 1, 1);
    else result[at - 1] = 3 * faceOfTurn(turn) + quarters - 1;
  }
  return result;
}

/** A normalised sequence without the turns of one face before its first and after its last turn of a crossing face. */
export function withoutEndsOf(
  face: Face,
  turns: FaceTurnSequence,
): FaceTurnSequence {
  const own = FACES.indexOf(face);
  const crosses = turns.map((turn) => faceOfTurn(turn) % 3 !== own % 3);
  const first = crosses.indexOf(true);
  const last = crosses.lastIndexOf(true);
  return turns.filter(
    (turn, i) =>
      faceOfTurn(turn) !== own || (first >= 0 && i > first && i < last),
  );
}
