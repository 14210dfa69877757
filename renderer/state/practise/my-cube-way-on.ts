/**
 * What comes next on the way to a case that is set up on the learner's own
 * cube, from what is known of that cube. There is always a next step.
 */
import { markedOf } from "../../../core/cases/constraint";
import { knownPieces } from "../../../core/cases/partly-known-position";
import { type Position, startOf } from "../../../core/cases/position";
import { homeOfCorner, homeOfEdge } from "../../../core/cases/stage";
import { holdOfVariant } from "../../../core/cases/variant";
import {
  turnsToAnswer,
  type WayChoice,
} from "../../../core/cases/way-for-position";
import { type PartlyKnownCubies, SOLVED } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import { agreesWith } from "../../../core/cube/partly-known";
import { present } from "../../../core/invariant";
import { formatTurns } from "../../../core/notation/format";
import type { Astray } from "./my-cube-stage";
import { type CubePiece, isHome, isKnown, UNKNOWN_CUBE } from "./own-cube";
import { piecesOf } from "./prompt-words";
import { beginWalk, type TurnWalk } from "./turn-walk";

/** A step towards the case. */
export type StepOn =
  | { readonly kind: "has" }
  | { readonly kind: "find"; readonly piece: CubePiece }
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
 * that is asked for would be the answer.
 */
export function stepOn(
  own: PartlyKnownCubies | undefined,
  context: WayOnContext,
): StepOn {
  if (own === undefined) return { kind: "has" };
  const { position, isPuttingRight } = context;
  if (agreesWith(own, position.cubies)) return { kind: "ready" };
  const marked = markedOf(position);
  for (const piece of piecesOf(knownPieces(position, "named"))) {
    if (!isKnown(own, piece)) return { kind: "find", piece };
    const isMarked = piecesOf(marked).some(
      (one) => one.kind === piece.kind && one.piece === piece.piece,
    );
    if (!isPuttingRight || !isMarked || isHome(own, piece)) continue;
    const walk = wayHome(own, piece, context);
    if (walk !== undefined) return { kind: "bring", piece, walk };
  }
  return { kind: "search" };
}

function wayHome(
  own: PartlyKnownCubies,
  piece: CubePiece,
  { position, wayChoice }: WayOnContext,
): TurnWalk | undefined {
  const cube = asUsuallyHeld(own, position);
  const home =
    piece.kind === "edge" ? homeOfEdge(piece.piece) : homeOfCorner(piece.piece);
  const turns = turnsToAnswer(
    cube,
    piece.kind === "edge" ? "first-layer-edges" : "first-layer-corners",
    present(home, "positions name pieces of the first layer"),
    position.hold,
    wayChoice,
  );
  return turns === undefined ? undefined : beginWalk(cube, turns);
}

/** The cube as it stands when a position is set up on it. */
export function asSetUp(
  cubies: PartlyKnownCubies,
  position: Position,
): HeldCube<PartlyKnownCubies> {
  return { cubies, hold: startOf(position).hold };
}

/** Whether two walks ask for the same turns. */
export function isSameWalk(walk: TurnWalk, other: TurnWalk): boolean {
  return formatTurns(walk.turns) === formatTurns(other.turns);
}

/** What is known of a cube of which this was said. */
export function cubeGoneAstray(what: Astray): PartlyKnownCubies | undefined {
  switch (what) {
    case "looks-different":
      return undefined;
    case "cross-lost":
      return UNKNOWN_CUBE;
    case "solved":
      return SOLVED;
  }
}
