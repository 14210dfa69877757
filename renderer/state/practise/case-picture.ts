/**
 * From a cube that shows a case to what its picture needs: which stickers show
 * and which are bare plastic, where the piece is outlined and its home marked.
 * In the last layer all pieces are asked about at once, so none is outlined and
 * no home marked.
 */
import { caseEntry } from "../../../core/cases/case-table";
import { allPieces, markedOf, targetsOf } from "../../../core/cases/constraint";
import type { LastLayerStage } from "../../../core/cases/last-layer-stages";
import type { Position } from "../../../core/cases/position";
import { lastLayerStickers } from "../../../core/cases/stickers-that-matter";
import {
  type Pieces,
  CORNER_FACES,
  EDGE_FACES,
} from "../../../core/cube/pieces";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import {
  CORNER_FACELETS,
  EDGE_FACELETS,
  stickersOf,
  viewFacelet,
} from "../../../core/cube/facelets";
import { applyTurn, type HeldCube } from "../../../core/cube/held-cube";
import { knownOnly } from "../../../core/cube/partly-known";
import type { Turn } from "../../../core/cube/turns";
import { present } from "../../../core/invariant";
import {
  afterTurn,
  canBeFollowed,
  type FollowedPiece,
  followCorner,
  followEdge,
  isSamePlace,
  standingOf,
} from "../../../core/notation/followed-piece";
import type { Badge } from "../../../core/picture/badges";
import type {
  CubePictureInput,
  MirrorChoice,
} from "../../../core/picture/cube-picture";
import type { CubePalette } from "../../../core/picture/palette";
import type { CubeView } from "../../../core/picture/projection";
import type { Turning } from "../../../core/picture/slabs";
import { type CubePiece, isHome } from "./own-cube";
import { piecesOf } from "./prompt-words";

/** A cube on its way from a start: what the marks are followed from. */
export interface CubeOnItsWay {
  readonly start: HeldCube<PartlyKnownCubies>;
  /** The turns made since; `cube` is `start` after them. */
  readonly line: readonly Turn[];
  readonly cube: HeldCube<PartlyKnownCubies>;
}

/** What shows its stickers while a case is learnt: some pieces, or what a stage of the last layer looks at. */
export type Named = Pieces | LastLayerStage;

/** What shows its stickers while the case of a position is learnt; the rest is bare plastic. */
export function namedWhileLearnt(position: Position): Named {
  const entry = caseEntry(position.case);
  return entry.group === "last-layer"
    ? entry.stage
    : allPieces([targetsOf(position), markedOf(position)]);
}

/** How a case is shown. */
export interface CaseShowing {
  /** What shows its stickers; undefined: everything. */
  readonly named: Named | undefined;
  /** The pieces to bring home that are outlined. */
  readonly outlined: Pieces | undefined;
  /** The pieces whose homes are marked while they are not in them: both of a pair, else one after the other. */
  readonly homes: Pieces | undefined;
  readonly palette: CubePalette;
  readonly view: CubeView;
  readonly mirrors?: MirrorChoice | undefined;
  /** A turn under way from `cube`. */
  readonly turning?: Turning | undefined;
  readonly arrow?: Turn | undefined;
  readonly rings?: readonly number[] | undefined;
  readonly mistaken?: readonly number[] | undefined;
  /** Places with a number, to choose from. */
  readonly badges?: readonly Badge[] | undefined;
}

/** The facelets of a position as the holder sees them. */
export function placeFacelets(
  cube: HeldCube<PartlyKnownCubies>,
  kind: CubePiece["kind"],
  position: number,
): readonly number[] {
  const table = kind === "corner" ? CORNER_FACELETS : EDGE_FACELETS;
  const places = present(table[position], "positions are in range");
  return places.map((facelet) => viewFacelet(cube.hold, facelet));
}

/** The facelets where a piece is; none where it is not known. */
export function pieceFacelets(
  cube: HeldCube<PartlyKnownCubies>,
  piece: CubePiece,
): readonly number[] {
  const permutation =
    piece.kind === "corner"
      ? cube.cubies.cornerPermutation
      : cube.cubies.edgePermutation;
  const at = permutation.indexOf(piece.piece);
  return at < 0 ? [] : placeFacelets(cube, piece.kind, at);
}

/**
 * Where the home is marked: where a learner sees it, so that the mark goes
 * down with the right side, waits for the corner and rises with it.
 */
function homeFacelets(
  { start, line }: CubeOnItsWay,
  piece: CubePiece,
): readonly number[] {
  let cube = start;
  let followed: FollowedPiece =
    piece.kind === "corner"
      ? followCorner(piece.piece)
      : followEdge(piece.piece);
  for (const turn of line) {
    const after = applyTurn(cube, turn);
    followed = afterTurn(followed, cube, after, turn);
    cube = after;
  }
  const seen = standingOf(followed, cube)?.home ?? [];
  const names = piece.kind === "corner" ? CORNER_FACES : EDGE_FACES;
  const table = piece.kind === "corner" ? CORNER_FACELETS : EDGE_FACELETS;
  return table[names.findIndex((faces) => isSamePlace(faces, seen))] ?? [];
}

/** The stickers a picture shows; undefined for bare plastic. */
export function shownStickers(
  cube: HeldCube<PartlyKnownCubies>,
  named: Named | undefined,
): CubePictureInput["stickers"] {
  if (named === undefined) return stickersOf(cube);
  if (typeof named === "string") return lastLayerStickers(named, cube);
  const known = knownOnly(
    cube.cubies,
    new Set(named.corners),
    new Set(named.edges),
  );
  return stickersOf({ cubies: known, hold: cube.hold });
}

/** The pieces of a list that can be outlined and have a home to mark, edges first. */
function piecesToMark(pieces: Pieces | undefined): readonly CubePiece[] {
  return piecesOf(pieces ?? { corners: [], edges: [] }).filter(
    ({ kind, piece }) =>
      canBeFollowed(
        (kind === "corner" ? CORNER_FACES : EDGE_FACES)[piece] ?? [],
      ),
  );
}

/**
 * The pieces whose homes are marked: those not in them yet. Of two corners in
 * each other's homes only the first, or every corner would have a mark; the
 * two homes of a pair are one slot.
 */
function homesToMark(
  pieces: Pieces | undefined,
  cube: HeldCube<PartlyKnownCubies>,
): readonly CubePiece[] {
  const waiting = piecesToMark(pieces).filter(
    (piece) => !isHome(cube.cubies, piece),
  );
  const [first] = waiting;
  return waiting.filter(
    (piece) => piece === first || piece.kind !== first?.kind,
  );
}

/** What the picture of a case needs. */
export function casePicture(
  onItsWay: CubeOnItsWay,
  showing: CaseShowing,
): CubePictureInput {
  const { cube } = onItsWay;
  return {
    stickers: shownStickers(cube, showing.named),
    view: showing.view,
    palette: showing.palette,
    pieces: piecesToMark(showing.outlined)
      .map((piece) => pieceFacelets(cube, piece))
      .filter((facelets) => facelets.length > 0),
    home: homesToMark(showing.homes, cube).flatMap((piece) =>
      homeFacelets(onItsWay, piece),
    ),
    mirrors: showing.mirrors,
    turning: showing.turning,
    arrow: showing.arrow,
    rings: showing.rings,
    mistaken: showing.mistaken,
    badges: showing.badges,
  };
}
