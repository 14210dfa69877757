/**
 * Where a case search starts: the state with the free layer turned each way,
 * as far as these differ.
 *
 * What has the same ways seen from another side is searched once: every case
 * of the last layer is one start instead of four, a symmetrical one gives each
 * way once instead of two or four times.
 */
import type { PartlyKnownCubies } from "../cube/cubies";
import { FREE_LAYER } from "../cases/stage";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import { FACE_INDEX, FACES } from "../cube/faces";
import { CORNERS, EDGES } from "../cube/pieces";
import {
  conjugate,
  cornerImage,
  edgeImage,
  faceImage,
  NO_ROTATION,
  type Rotation,
  rotationAbout,
} from "../cube/symmetries";
import { present } from "../invariant";
import {
  afterFreeQuarters,
  type AskedPiece,
  askedPieces,
  type CaseGoal,
  FREE_QUARTERS,
  slotOf,
} from "../cases/case-goal";
import {
  faceOfTurn,
  type FaceTurnSequence,
  normalised,
} from "./face-turn-sequence";
import { ORIENTATIONS } from "../cube/pieces";

/** One of the ways the free layer can be turned before a search. */
export interface CaseStart {
  /** Quarter turns of the free layer made, 0–3. */
  readonly quarters: number;
  readonly state: PartlyKnownCubies;
  /** Rotations about the free layer's axis that take ways from here to ways from here. */
  readonly symmetries: readonly Rotation[];
}

/**
 * The starts that no rotation about the free layer's axis takes into each
 * other. With chosen faces, only rotations that keep the choice count.
 *
 * Shape: every piece the goal names is known in `from`.
 */
export function caseStarts(
  from: PartlyKnownCubies,
  goal: CaseGoal,
  turns: readonly number[],
): readonly CaseStart[] {
  const asked = askedPieces(goal);
  const rotations = [1, 2, 3]
    .map((quarters) => rotationAbout("y", quarters))
    .filter((rotation) =>
      turns.every((turn) => turns.includes(turnImage(rotation, turn))),
    );
  const starts: CaseStart[] = [];
  const met = new Set<string>();
  for (const quarters of FREE_QUARTERS) {
    const state = afterFreeQuarters(from, quarters);
    const plain = signature(state, asked, NO_ROTATION, 0);
    if (met.has(plain)) continue;
    const isSame = (rotation: Rotation) =>
      signatures(state, asked, rotation).includes(plain);
    starts.push({ quarters, state, symmetries: rotations.filter(isSame) });
    for (const rotation of [NO_ROTATION, ...rotations])
      for (const seen of signatures(state, asked, rotation)) met.add(seen);
  }
  return starts;
}

/** A normalised sequence as it is seen through a rotation, normalised. */
export function sequenceImage(
  rotation: Rotation,
  turns: FaceTurnSequence,
): FaceTurnSequence {
  return normalised(turns.map((turn) => turnImage(rotation, turn)));
}

/** A face turn, an index into `FACE_TURNS`, as it is seen through a rotation. */
export function turnImage(rotation: Rotation, turn: number): number {
  const face = present(FACES[faceOfTurn(turn)], "face turns are 0–17");
  return 3 * FACE_INDEX[faceImage(rotation, face)] + (turn % 3);
}

function signatures(
  state: PartlyKnownCubies,
  asked: readonly AskedPiece[],
  rotation: Rotation,
): readonly string[] {
  return FREE_QUARTERS.map((quarters) =>
    signature(state, asked, rotation, quarters),
  );
}

/**
 * All that the goal can tell about a state seen through a rotation, the free
 * layer's pieces taking each other's names: the end may be turned anyhow. Two
 * states with one signature have the same ways, and the goals the same names.
 */
function signature(
  state: PartlyKnownCubies,
  asked: readonly AskedPiece[],
  rotation: Rotation,
  quarters: number,
): string {
  const seen = conjugate(state, rotation);
  return asked
    .map(({ kind, piece, demand }) => {
      const image =
        kind === "corner"
          ? cornerImage(rotation, CORNERS[piece]!)
          : edgeImage(rotation, EDGES[piece]!);
      const slot = present(
        slotOf(seen, { kind, piece: image }),
        "the pieces of a goal are known",
      );
      switch (demand) {
        case "turned":
          return `${kind} turned ${slot}`;
        case "homed":
          return `${kind} ${renamed(kind, image, quarters)} homed ${Math.floor(slot / ORIENTATIONS[kind])}`;
        case "placed":
          return `${kind} ${renamed(kind, image, quarters)} placed ${slot}`;
      }
    })
    .toSorted()
    .join();
}

function renamed(
  kind: AskedPiece["kind"],
  piece: number,
  quarters: number,
): number {
  if (quarters === 0) return piece;
  const turn = FACE_TURNS[faceTurnIndex(FREE_LAYER, quarters)]!;
  return kind === "corner"
    ? turn.cornerPermutation[piece]!
    : turn.edgePermutation[piece]!;
}
