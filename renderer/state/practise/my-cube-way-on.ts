/**
 * What comes next on the way to a case that is set up on the learner's own
 * cube, from what is known of that cube. There is always a next step.
 */
import { caseEntry } from "../../../core/cases/case-table";
import { markedOf } from "../../../core/cases/constraint";
import { isEnoughKnown, notKnownFor } from "../../../core/cases/known-layer";
import { knownPieces } from "../../../core/cases/partly-known-position";
import { type Position, startOf } from "../../../core/cases/position";
import {
  SECOND_LAYER_EDGES,
  slotOfEdge,
} from "../../../core/cases/slot-stages";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
  homeOfCorner,
  homeOfEdge,
  isLastLayerStage,
  type Stage,
} from "../../../core/cases/stage";
import { type HomeIndex, holdOfVariant } from "../../../core/cases/variant";
import {
  turnsToAnswer,
  type WayChoice,
} from "../../../core/cases/way-for-position";
import {
  isFullyKnown,
  type PartlyKnownCubies,
  SOLVED,
} from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import { agreesWith } from "../../../core/cube/partly-known";
import type { Edge, Pieces } from "../../../core/cube/pieces";
import type { RoundItem } from "../../../core/memory/round";
import { formatTurns } from "../../../core/notation/format";
import { simplifyTurns } from "../../../core/notation/simplify";
import type { Astray } from "./my-cube-stage";
import {
  type CubePiece,
  type CubePlace,
  isHome,
  isKnown,
  UNKNOWN_CUBE,
} from "./own-cube";
import { piecesOf } from "./prompt-words";
import { beginWalk, type TurnWalk } from "./turn-walk";

/** A step towards the case. */
export type StepOn =
  | { readonly kind: "has" }
  | { readonly kind: "find"; readonly piece: CubePiece }
  | { readonly kind: "tell"; readonly place: CubePlace }
  | {
      readonly kind: "bring";
      readonly piece: CubePiece;
      readonly walk: TurnWalk;
    }
  /** Everything that a set-up needs is known. */
  | { readonly kind: "search" }
  /** The cube shows the case already. */
  | { readonly kind: "ready" };

/** What the next step depends on. */
export interface WayOnContext {
  readonly position: Position;
  readonly wayChoice: WayChoice;
  /**
   * Whether the learner is putting a cube right piece by piece. Else nothing
   * is brought home: a set-up begins from any cube on which it knows the pieces.
   */
  readonly isPuttingRight: boolean;
}

/**
 * What is set up: what the question shows, by a few turns; where the whole
 * cube is known and the case is no longer new, the whole random position. In
 * the last layer there is little besides, and it would take more turns.
 *
 * Shape: `named` is what the question shows of `whole`.
 */
export function positionToSetUp(
  own: PartlyKnownCubies | undefined,
  { whole, named }: { readonly whole: Position; readonly named: Position },
  { bare }: Pick<RoundItem, "bare">,
): Position {
  return own !== undefined &&
    isFullyKnown(own) &&
    !bare &&
    !isAboutLastLayer(whole)
    ? whole
    : named;
}

function isAboutLastLayer(position: Position): boolean {
  return caseEntry(position.case).group === "last-layer";
}

/** The cube in the hands, held as it is for every set-up's first turn. */
export function asUsuallyHeld(
  cubies: PartlyKnownCubies,
  position: Position,
): HeldCube<PartlyKnownCubies> {
  const hold = holdOfVariant({ home: 0, seenFrom: 0 }, position.hold);
  return { cubies, hold };
}

/**
 * The next step. Only placed pieces are brought home: a way home for the piece
 * that is asked for would be the answer. What has to be known of the last
 * layer is asked last, when the first two layers are home and it is on top.
 */
export function stepOn(
  own: PartlyKnownCubies | undefined,
  context: WayOnContext,
): StepOn {
  if (own === undefined) return { kind: "has" };
  const { position } = context;
  if (agreesWith(own, position.cubies)) return { kind: "ready" };
  const isAsking = isLastLayerAsked(own, position);
  const isPuttingRight = context.isPuttingRight || isAsking;
  const marked = piecesOf(markedOf(position));
  for (const piece of inOrder(knownPieces(position, "named"))) {
    if (!isKnown(own, piece)) return { kind: "find", piece };
    const isMarked = marked.some(
      (one) => one.kind === piece.kind && one.piece === piece.piece,
    );
    if (!isPuttingRight || !isMarked || isHome(own, piece)) continue;
    const walk = wayHome(own, piece, context);
    if (walk !== undefined) return { kind: "bring", piece, walk };
  }
  const { pieces, turnedAt } = notKnownFor(own, position.cubies);
  const [piece] = piecesOf(pieces);
  if (piece !== undefined) return { kind: "find", piece };
  const [place] = piecesOf(turnedAt);
  return place === undefined ? { kind: "search" } : { kind: "tell", place };
}

/** Whether something of the last layer has to be asked: then it must be on top, and nothing else in it. */
function isLastLayerAsked(own: PartlyKnownCubies, position: Position): boolean {
  return (
    isLastLayerStage(caseEntry(position.case).stage) &&
    !isEnoughKnown(own, position.cubies)
  );
}

/** The pieces of the first two layers among some, in the order in which a cube is put right. */
function inOrder({ corners, edges }: Pieces): readonly CubePiece[] {
  const edgesAmong = (all: readonly Edge[]) => ({
    corners: [],
    edges: all.filter((piece) => edges.includes(piece)),
  });
  return [
    ...piecesOf(edgesAmong(FIRST_LAYER_EDGES)),
    ...piecesOf({
      corners: FIRST_LAYER_CORNERS.filter((piece) => corners.includes(piece)),
      edges: [],
    }),
    ...piecesOf(edgesAmong(SECOND_LAYER_EDGES)),
  ];
}

/** The stages that bring a piece home, and to which home: the first that can is taken. */
function waysHome(
  piece: CubePiece,
  asked: Stage,
): readonly (readonly [stage: Stage, home: HomeIndex | undefined])[] {
  if (piece.kind === "edge")
    return [
      ["first-layer-edges", homeOfEdge(piece.piece)],
      ["second-layer-edges", slotOfEdge(piece.piece)],
    ];
  const home = homeOfCorner(piece.piece);
  return [
    // Who practises pairs brings a corner home with its edge, where that is known.
    ...(asked === "pairs" ? [["pairs", home] as const] : []),
    ["first-layer-corners", home],
  ];
}

function wayHome(
  own: PartlyKnownCubies,
  piece: CubePiece,
  { position, wayChoice }: WayOnContext,
): TurnWalk | undefined {
  const cube = asUsuallyHeld(own, position);
  const asked = caseEntry(position.case).stage;
  for (const [stage, home] of waysHome(piece, asked)) {
    if (home === undefined) continue;
    const turns = turnsToAnswer(cube, stage, home, position.hold, wayChoice);
    if (turns !== undefined) return beginWalk(cube, simplifyTurns(turns));
  }
  return undefined;
}

/** The cube as it stands when a position is set up on it. */
export function asSetUp(
  cubies: PartlyKnownCubies,
  position: Position,
): HeldCube<PartlyKnownCubies> {
  return { cubies, hold: startOf(position).hold };
}

/**
 * The case as it was set up. Of the last layer the picture may show more than
 * the stage sees, as far as it is known: it looks like the cube in the hands.
 */
export function asShown(
  own: PartlyKnownCubies | undefined,
  position: Position,
): HeldCube<PartlyKnownCubies> {
  const shown = startOf(position);
  return own !== undefined &&
    isAboutLastLayer(position) &&
    agreesWith(own, shown.cubies)
    ? { cubies: own, hold: shown.hold }
    : shown;
}

/** Whether two walks ask for the same turns. */
export function isSameWalk(walk: TurnWalk, other: TurnWalk): boolean {
  return formatTurns(walk.turns) === formatTurns(other.turns);
}

/**
 * What is known of a cube of which this was said. Who lost a cross in the first
 * layer puts it right piece by piece; later there is more to lose than that,
 * and what is left is for the learner to say.
 */
export function cubeGoneAstray(
  what: Astray,
  position: Position,
): PartlyKnownCubies | undefined {
  switch (what) {
    case "looks-different":
      return undefined;
    case "base-lost":
      return caseEntry(position.case).group === "first-layer"
        ? UNKNOWN_CUBE
        : undefined;
    case "solved":
      return SOLVED;
  }
}
