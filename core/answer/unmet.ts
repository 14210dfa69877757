/**
 * What is not as a position's goal asks, told apart: what was to be brought
 * home, and what was right before the answer.
 */
import {
  afterFreeQuarters,
  FREE_QUARTERS,
  piecesUnmet,
} from "../cases/case-goal";
import { type Asked, goalOf, keptOf, targetsOf } from "../cases/constraint";
import type { PartlyKnownCubies } from "../cube/cubies";
import type { Pieces } from "../cube/pieces";

/** What is not as a goal asks, the free layer turned as it fits best. */
export interface Unmet {
  /** The state with its free layer turned so. */
  readonly linedUp: PartlyKnownCubies;
  /** Pieces to bring home that are not as asked. */
  readonly missing: Pieces;
  /** Pieces that were right before the answer and no longer are. */
  readonly lost: Pieces;
}

/**
 * What is not as the goal of a position asks for it.
 *
 * Shape: the free layer is turned so that the fewest are lost, then so that
 *        the fewest are missing, then as little as may be: what was right is
 *        not called lost for the sake of what was asked. Nothing is lost where
 *        nothing was moved; neither list holds anything where the goal is
 *        reached, and one of them does where it is not.
 */
export function unmetIn(asked: Asked, state: PartlyKnownCubies): Unmet {
  const goal = goalOf(asked);
  const targets = targetsOf(asked);
  const kept = keptOf(asked);
  return FREE_QUARTERS.map((quarters): Unmet => {
    const linedUp = afterFreeQuarters(state, quarters);
    const unmet = piecesUnmet(linedUp, goal);
    return {
      linedUp,
      missing: among(unmet, targets),
      lost: among(unmet, kept),
    };
  }).reduce((best, next) => (isBetter(next, best) ? next : best));
}

function isBetter(a: Unmet, b: Unmet): boolean {
  const lost = count(a.lost) - count(b.lost);
  return lost < 0 || (lost === 0 && count(a.missing) < count(b.missing));
}

function count({ corners, edges }: Pieces): number {
  return corners.length + edges.length;
}

/** Those of some pieces that are wanted, in the order in which they are. */
function among(pieces: Pieces, wanted: Pieces): Pieces {
  return {
    corners: wanted.corners.filter((piece) => pieces.corners.includes(piece)),
    edges: wanted.edges.filter((piece) => pieces.edges.includes(piece)),
  };
}
