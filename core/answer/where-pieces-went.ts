/** Which pieces of a stage an answer brought to which home: what it did, whatever it was meant to do. */
import { piecesOfHome } from "../cases/constraint";
import { homeAfter, isLastLayerStage, rotationToHome } from "../cases/stage";
import { HOME_INDICES, type HomeIndex } from "../cases/variant";
import type { PartlyKnownCubies } from "../cube/cubies";
import type { Face } from "../cube/faces";
import { CORNER_FACES, EDGE_FACES, type Pieces } from "../cube/pieces";
import {
  cornerImage,
  edgeImage,
  faceImage,
  NO_ROTATION,
  type Rotation,
} from "../cube/symmetries";
import type { GivenLine } from "./given-line";

function standsAs(
  [permutation, orientation]: readonly [Uint8Array, Uint8Array],
  faces: readonly (readonly Face[])[],
  piece: number,
  image: number,
  rotation: Rotation,
): boolean {
  if (permutation[image] !== piece) return false;
  const own = faces[piece] ?? [];
  const seat = faces[image] ?? [];
  return own.every(
    (face, k) =>
      seat[(k + (orientation[image] ?? 0)) % seat.length] ===
      faceImage(rotation, face),
  );
}

/** Whether all of some pieces stand where a turn of the whole solved cube would take them. */
export function standAfter(
  rotation: Rotation,
  state: PartlyKnownCubies,
  { corners, edges }: Pieces,
): boolean {
  const { cornerPermutation, cornerOrientation } = state;
  const { edgePermutation, edgeOrientation } = state;
  return (
    corners.every((piece) =>
      standsAs(
        [cornerPermutation, cornerOrientation],
        CORNER_FACES,
        piece,
        cornerImage(rotation, piece),
        rotation,
      ),
    ) &&
    edges.every((piece) =>
      standsAs(
        [edgePermutation, edgeOrientation],
        EDGE_FACES,
        piece,
        edgeImage(rotation, piece),
        rotation,
      ),
    )
  );
}

/** Whether pieces came to stand so by the answer. */
function cameTo(given: GivenLine, rotation: Rotation, pieces: Pieces): boolean {
  return (
    standAfter(rotation, given.after, pieces) &&
    !standAfter(rotation, given.start, pieces)
  );
}

/** The marked pieces without some. */
function markedBeside({ marked }: GivenLine, { corners, edges }: Pieces) {
  return {
    corners: marked.corners.filter((piece) => !corners.includes(piece)),
    edges: marked.edges.filter((piece) => !edges.includes(piece)),
  };
}

/** Whether everything marked is still placed. */
export function isAllKept(given: GivenLine): boolean {
  return standAfter(NO_ROTATION, given.after, given.marked);
}

function isAsked({ targets }: GivenLine, { corners, edges }: Pieces): boolean {
  return (
    corners.some((piece) => targets.corners.includes(piece)) ||
    edges.some((piece) => targets.edges.includes(piece))
  );
}

/** Pieces, and the home that they are in. */
export interface BroughtPieces {
  readonly pieces: Pieces;
  readonly into: HomeIndex;
}

/**
 * Pieces that were brought home, or into the home asked for, while those asked
 * for were not, everything marked kept. Undefined where there are none, and in
 * the last layer, where all pieces are asked for.
 */
export function wrongPiecesBrought(
  given: GivenLine,
): BroughtPieces | undefined {
  const { stage } = given.entry;
  if (isLastLayerStage(stage) || !isAllKept(given)) return undefined;
  const { home } = given.position.variant;
  for (const other of otherHomes(given)) {
    const pieces = piecesOfHome(stage, other);
    if (isAsked(given, pieces)) continue;
    if (cameTo(given, NO_ROTATION, pieces)) return { pieces, into: other };
    const toAsked = rotationToHome(homeAfter(home, -other));
    if (cameTo(given, toAsked, pieces)) return { pieces, into: home };
  }
  return undefined;
}

/** The other home that the pieces asked for were brought to, facing as they should; what belongs there apart, everything marked kept. */
export function otherHomeReached(given: GivenLine): HomeIndex | undefined {
  const { stage } = given.entry;
  if (isLastLayerStage(stage)) return undefined;
  return otherHomes(given).find(
    (other) =>
      cameTo(given, rotationFrom(given, other), given.targets) &&
      standAfter(
        NO_ROTATION,
        given.after,
        markedBeside(given, piecesOfHome(stage, other)),
      ),
  );
}

function otherHomes({ position }: GivenLine): readonly HomeIndex[] {
  return HOME_INDICES.filter((home) => home !== position.variant.home);
}

function rotationFrom({ position }: GivenLine, home: HomeIndex): Rotation {
  return rotationToHome(homeAfter(home, -position.variant.home));
}
