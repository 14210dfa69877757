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
import { LAST_LAYER_CORNERS, LAST_LAYER_EDGES } from "../cases/last-layer-look";
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
 * Shape: the free layer is turned so that all it kept is still right, where it
 *        can be, whatever that means for what was asked: so nothing is lost
 *        where nothing was moved. Else, and among several such turns, so that
 *        the fewest pieces are wrong, then the fewest lost, then as little as
 *        may be. Neither list holds anything where the goal is reached, and
 *        one of them does where it is not.
 */
export function unmetIn(asked: Asked, state: PartlyKnownCubies): Unmet {
  const goal = goalOf(asked);
  const targets = targetsOf(asked);
  const kept = keptOf(asked);
  const all = FREE_QUARTERS.map((quarters): Unmet => {
    const linedUp = afterFreeQuarters(state, quarters);
    const unmet = piecesUnmet(linedUp, goal);
    return {
      linedUp,
      missing: among(unmet, targets),
      lost: among(unmet, kept),
    };
  });
  return all.reduce((best, next) =>
    isLess(rankOf(next), rankOf(best)) ? next : best,
  );
}

/** How ill a turn of the free layer fits, the weightiest first. */
function rankOf({ missing, lost }: Unmet): readonly number[] {
  const ofLayer =
    lost.corners.filter((piece) => LAST_LAYER_CORNERS.includes(piece)).length +
    lost.edges.filter((piece) => LAST_LAYER_EDGES.includes(piece)).length;
  // Turning the free layer neither loses nor brings back what belongs elsewhere.
  return [Math.min(ofLayer, 1), ofLayer + count(missing), ofLayer];
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((one, i) => one !== b[i]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
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
