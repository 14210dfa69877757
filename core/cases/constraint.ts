/**
 * What a stage and a variant demand: which pieces are to be brought home,
 * which are placed and must stay so, which must not happen to be placed.
 */
import { UNKNOWN } from "../cube/cubies";
import type { Pieces } from "../cube/pieces";
import type { StateConstraint } from "../cube/sample-state";
import type { CaseId } from "./case-ids";
import { caseEntry } from "./case-table";
import type { CaseConstraint } from "./orbits";
import { homesTakenUp, situationIn } from "./situation";
import {
  cornerOfHome,
  edgeOfHome,
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
  FREE_LAYER,
  homeAfter,
  type Stage,
} from "./stage";
import { HOME_INDICES, type HomeIndex, type Variant } from "./variant";

/** A case asked in a variant: all that its constraint depends on. */
export interface Asked {
  readonly case: CaseId;
  readonly variant: Pick<Variant, "home" | "placed" | "turnedAway">;
}

/** The pieces to bring home, the variant's home first. */
export function targetsOf({ case: id, variant }: Asked): Pieces {
  const { corners, edges } = situationIn(id, variant);
  return {
    corners: corners.map(({ piece }) => piece),
    edges: edges.map(({ piece }) => piece),
  };
}

/** The pieces that are placed and must be placed after the answer; the cross among them for a corner. */
export function markedOf({ case: id, variant }: Asked): Pieces {
  return caseEntry(id).stage === "first-layer-edges"
    ? { corners: [], edges: variant.placed.map(edgeOfHome) }
    : { corners: variant.placed.map(cornerOfHome), edges: FIRST_LAYER_EDGES };
}

/** The pieces of the stage that must not happen to be placed. */
export function unmarkedOf({ case: id, variant }: Asked): Pieces {
  const targets = targetsOf({ case: id, variant });
  const isOpen = (home: HomeIndex) => !variant.placed.includes(home);
  return caseEntry(id).stage === "first-layer-edges"
    ? {
        corners: [],
        edges: HOME_INDICES.filter(isOpen)
          .map(edgeOfHome)
          .filter((piece) => !targets.edges.includes(piece)),
      }
    : {
        corners: HOME_INDICES.filter(isOpen)
          .map(cornerOfHome)
          .filter((piece) => !targets.corners.includes(piece)),
        edges: [],
      };
}

/** All first-layer pieces that a stage is about: its own and those before it. */
export function stagePieces(stage: Stage): Pieces {
  return {
    corners: stage === "first-layer-edges" ? [] : FIRST_LAYER_CORNERS,
    edges: FIRST_LAYER_EDGES,
  };
}

/** The homes other than its own that a case allows to be placed. */
export function homesAllowed(
  id: CaseId,
  home: HomeIndex,
): readonly HomeIndex[] {
  const taken = homesTakenUp(id).map((reference) => homeAfter(reference, home));
  return HOME_INDICES.filter((other) => !taken.includes(other));
}

/**
 * The sets of `count` other homes that a case allows to be placed, for a given
 * home. Shape: each ascending; none where the case does not allow so many.
 */
export function allowedPlacedSets(
  id: CaseId,
  home: HomeIndex,
  count: number,
): readonly (readonly HomeIndex[])[] {
  let sets: readonly (readonly HomeIndex[])[] = [[]];
  for (const other of homesAllowed(id, home))
    sets = [...sets, ...sets.map((set) => [...set, other])];
  return sets.filter((set) => set.length === count);
}

/** The most other homes that can be placed: 3, or 2 for a piece that stands in another home. */
export function mostPlaced(id: CaseId): number {
  return homesAllowed(id, 0).length;
}

/** The constraint whose orbits are the cases of a stage, in the reference frame. */
export function caseConstraint(
  stage: Stage,
  placed: readonly HomeIndex[],
): CaseConstraint {
  return stage === "first-layer-edges"
    ? {
        targetCorners: [],
        targetEdges: [edgeOfHome(0)],
        placedCorners: [],
        placedEdges: placed.map(edgeOfHome),
        freeLayer: FREE_LAYER,
      }
    : {
        targetCorners: [cornerOfHome(0)],
        targetEdges: [],
        placedCorners: placed.map(cornerOfHome),
        placedEdges: FIRST_LAYER_EDGES,
        freeLayer: FREE_LAYER,
      };
}

/** What a random position of a case must agree with. */
export function stateConstraint(asked: Asked): StateConstraint {
  const marked = markedOf(asked);
  const situation = situationIn(asked.case, asked.variant);
  const unmarked = unmarkedOf(asked);
  const constraint = {
    cornerPermutation: new Uint8Array(8).fill(UNKNOWN),
    cornerOrientation: new Uint8Array(8).fill(UNKNOWN),
    edgePermutation: new Uint8Array(12).fill(UNKNOWN),
    edgeOrientation: new Uint8Array(12).fill(UNKNOWN),
    unplacedCorners: unmarked.corners,
    unplacedEdges: unmarked.edges,
  };
  for (const piece of marked.corners) {
    constraint.cornerPermutation[piece] = piece;
    constraint.cornerOrientation[piece] = 0;
  }
  for (const piece of marked.edges) {
    constraint.edgePermutation[piece] = piece;
    constraint.edgeOrientation[piece] = 0;
  }
  for (const { piece, position, orientation } of situation.corners) {
    constraint.cornerPermutation[position] = piece;
    constraint.cornerOrientation[position] = orientation ?? UNKNOWN;
  }
  for (const { piece, position, orientation } of situation.edges) {
    constraint.edgePermutation[position] = piece;
    constraint.edgeOrientation[position] = orientation ?? UNKNOWN;
  }
  return constraint;
}
