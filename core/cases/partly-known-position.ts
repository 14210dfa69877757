import { knownOnly } from "../cube/partly-known";
import { caseEntry } from "./case-table";
import type { Pieces } from "../cube/pieces";
import { type Asked, markedOf, stagePieces, targetsOf } from "./constraint";
import type { Position } from "./position";

/**
 * How much of a position is known: the pieces that the question names (to
 * bring home, and placed), or all first-layer pieces that the stage is about.
 */
export type KnownPieces = "named" | "stage";

/** The pieces of a position that stay known. */
export function knownPieces(asked: Asked, known: KnownPieces): Pieces {
  if (known === "stage") return stagePieces(caseEntry(asked.case).stage);
  const targets = targetsOf(asked);
  const marked = markedOf(asked);
  return {
    corners: [...targets.corners, ...marked.corners],
    edges: [...targets.edges, ...marked.edges],
  };
}

/**
 * The position with every other piece forgotten: what can be said of a
 * beginner's cube, which has a finished cross or first layer and anything
 * below it.
 */
export function partlyKnownPosition(
  position: Position,
  known: KnownPieces,
): Position {
  const { corners, edges } = knownPieces(position, known);
  return {
    ...position,
    cubies: knownOnly(position.cubies, new Set(corners), new Set(edges)),
  };
}
