/**
 * Where a piece that is followed and its home are from turn to turn.
 *
 * A corner's home is taken as learners see it: the gap between the placed
 * pieces. A turn of its side takes the gap along ("its home comes down"), a
 * turn of the free layer does not, so that the corner can slide into it there
 * and rise with it. As soon as another layer breaks the gap up, home is again
 * the place where the centres say it is. So is the home of a second-layer edge,
 * whose slot goes with its sides; that of a first-layer edge is always the
 * place where the centres say. A last-layer piece has no home to be led to
 * before the very end, so none is followed.
 *
 * The first layer is the body's face U (`core/cube`), the free layer its D.
 */
import { compose } from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import type { Face } from "../cube/faces";
import { bodyTurns, type HeldCube, viewFace } from "../cube/held-cube";
import {
  cornerPosition,
  edgePosition,
  isCornerPlaced,
  isEdgePlaced,
} from "../cube/partly-known";
import {
  type Corner,
  CORNER_FACES,
  type Edge,
  EDGE_FACES,
} from "../cube/pieces";
import type { Turn } from "../cube/turns";
import { present } from "../invariant";

const FIRST_FACE: Face = "U";
const FREE_FACE: Face = "D";

/** The turn of the body's face that took a gap along. Units: quarters 1–3. */
interface Gap {
  readonly face: Face;
  readonly quarters: number;
}

/** A piece, and how its home stands. */
export type FollowedPiece = {
  readonly gap: Gap | undefined;
  /** Whether the last turn broke the gap up. */
  readonly isGapBroken: boolean;
} & (
  | { readonly kind: "corner"; readonly piece: Corner }
  | { readonly kind: "edge"; readonly piece: Edge }
);

/** How a followed piece and its home stand at one moment. */
export interface Standing {
  /** Where the piece is, by the sides that the learner sees it on. */
  readonly at: readonly Face[];
  /** Where its home is, likewise. */
  readonly home: readonly Face[];
  /** Whether the home is a gap that was taken along. */
  readonly isHomeTakenAlong: boolean;
  /** Whether the last turn broke the gap up, so that home is again where the centres say. */
  readonly isGapBroken: boolean;
  /** In its home, whichever way it faces. */
  readonly isHome: boolean;
  /** In its home, every sticker as it must be there. */
  readonly isRight: boolean;
  /** Placed on the cube as it is: nothing is left to do. */
  readonly isPlaced: boolean;
  /** In the free layer, next to its home. */
  readonly isBesideHome: boolean;
}

/** A corner whose home is in its place. */
export function followCorner(piece: Corner): FollowedPiece {
  return { kind: "corner", piece, gap: undefined, isGapBroken: false };
}

/** An edge. */
export function followEdge(piece: Edge): FollowedPiece {
  return { kind: "edge", piece, gap: undefined, isGapBroken: false };
}

/** Whether a piece, by the faces of its home, can be followed: it is not one of the last layer. */
export function canBeFollowed(home: readonly Face[]): boolean {
  return !home.includes(FREE_FACE);
}

/** The same piece with its home in its place. */
function followAnew(followed: FollowedPiece): FollowedPiece {
  return followed.kind === "corner"
    ? followCorner(followed.piece)
    : followEdge(followed.piece);
}

/** The faces of the body a piece has: those of its home. */
export function facesOf(followed: FollowedPiece): readonly Face[] {
  return followed.kind === "corner"
    ? facesOfCorner(followed.piece)
    : facesOfEdge(followed.piece);
}

function facesOfCorner(at: number): readonly Face[] {
  return present(CORNER_FACES[at], "corners are in range");
}

function facesOfEdge(at: number): readonly Face[] {
  return present(EDGE_FACES[at], "edges are in range");
}

function faceTurn(face: Face, quarters: number) {
  return present(
    FACE_TURNS[faceTurnIndex(face, quarters)],
    "quarters are 1 to 3",
  );
}

function homeFaces(followed: FollowedPiece, gap: Gap | undefined) {
  if (gap === undefined) return facesOf(followed);
  const turn = faceTurn(gap.face, gap.quarters);
  return followed.kind === "corner"
    ? facesOfCorner(turn.cornerPermutation.indexOf(followed.piece))
    : facesOfEdge(turn.edgePermutation.indexOf(followed.piece));
}

/** Whether turns take the home along: not that of a first-layer edge, which nothing comes with. */
export function canGoAlong(followed: FollowedPiece): boolean {
  return followed.kind === "corner" || !facesOf(followed).includes(FIRST_FACE);
}

function isPlacedOn(followed: FollowedPiece, { cubies }: HeldCube): boolean {
  return followed.kind === "corner"
    ? isCornerPlaced(cubies, followed.piece)
    : isEdgePlaced(cubies, followed.piece);
}

/** The piece after a turn of the cube; `before` and `after` are the cube around it. */
export function afterTurn(
  followed: FollowedPiece,
  before: HeldCube,
  after: HeldCube,
  turn: Turn,
): FollowedPiece {
  if (!canGoAlong(followed) || isPlacedOn(followed, after))
    return followAnew(followed);
  let { gap } = followed;
  let isGapBroken = false;
  for (const [face, quarters] of bodyTurns(before.hold, turn)) {
    isGapBroken ||= gap !== undefined && breaks(followed, gap, face);
    gap = isGapBroken ? undefined : gapAfter(followed, gap, face, quarters);
  }
  return { ...followed, gap, isGapBroken };
}

/** Whether a turn of a face takes the gap away from the layer that brought it here. */
function breaks(followed: FollowedPiece, gap: Gap, face: Face): boolean {
  return (
    face !== FREE_FACE &&
    face !== gap.face &&
    homeFaces(followed, gap).includes(face)
  );
}

function gapAfter(
  followed: FollowedPiece,
  gap: Gap | undefined,
  face: Face,
  quarters: number,
): Gap | undefined {
  if (gap === undefined)
    return facesOf(followed).includes(face) ? { face, quarters } : undefined;
  if (gap.face !== face) return gap;
  const sum = (gap.quarters + quarters) % 4;
  return sum === 0 ? undefined : { face, quarters: sum };
}

/** How a piece and its home stand on a cube, or undefined where the piece is not known. */
export function standingOf(
  followed: FollowedPiece,
  cube: HeldCube,
): Standing | undefined {
  const { cubies, hold } = cube;
  const { gap } = followed;
  const position =
    followed.kind === "corner"
      ? cornerPosition(cubies, followed.piece)
      : edgePosition(cubies, followed.piece);
  if (position === undefined) return undefined;
  const own = facesOf(followed);
  const at =
    followed.kind === "corner"
      ? facesOfCorner(position)
      : facesOfEdge(position);
  const home = homeFaces(followed, gap);
  const isPlaced = isPlacedOn(followed, cube);
  const beside = own.map((face) => (face === FIRST_FACE ? FREE_FACE : face));
  return {
    at: at.map((face) => viewFace(hold, face)),
    home: home.map((face) => viewFace(hold, face)),
    isHomeTakenAlong: gap !== undefined,
    isGapBroken: followed.isGapBroken,
    isHome: isSamePlace(at, home),
    isRight: gap === undefined ? isPlaced : isRightInGap(followed, gap, cube),
    isPlaced,
    isBesideHome:
      gap === undefined && own.includes(FIRST_FACE) && isSamePlace(at, beside),
  };
}

/** Whether the piece would be placed if its gap were brought back. */
function isRightInGap(
  followed: FollowedPiece,
  gap: Gap,
  { cubies, hold }: HeldCube,
): boolean {
  const back = compose(cubies, faceTurn(gap.face, -gap.quarters));
  return isPlacedOn(followed, { cubies: back, hold });
}

/** Where each sticker of a piece is seen, in the order of its own faces; undefined where it is not known. */
export function stickerSides(
  followed: FollowedPiece,
  { cubies, hold }: HeldCube,
): readonly Face[] | undefined {
  const [permutation, orientations, facesAt] =
    followed.kind === "corner"
      ? [cubies.cornerPermutation, cubies.cornerOrientation, facesOfCorner]
      : [cubies.edgePermutation, cubies.edgeOrientation, facesOfEdge];
  const position = permutation.indexOf(followed.piece);
  if (position < 0) return undefined;
  const faces = facesAt(position);
  const orientation = orientations[position] ?? 0;
  return faces.map((_, i) =>
    viewFace(
      hold,
      present(faces[(i + orientation) % faces.length], "stickers are on faces"),
    ),
  );
}

/** Whether two lists of sides name the same place. */
export function isSamePlace(a: readonly Face[], b: readonly Face[]): boolean {
  return a.length === b.length && a.every((face) => b.includes(face));
}
