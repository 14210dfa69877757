/**
 * The stages of the second layer: its four edges one by one, or each with the
 * corner of the first layer above it, as a pair. Both are about four slots,
 * which are homes as in the first layer: home 0 is the slot at the front
 * right, the others follow by `y` quarter turns.
 */
import { type Edge, edge, type Pieces } from "../cube/pieces";
import { edgeImage } from "../cube/symmetries";
import type { CaseConstraint } from "./orbits";
import {
  cornerOfHome,
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
  FREE_LAYER,
  rotationToHome,
  type SlotStage,
} from "./stage";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** The second-layer edge of a slot; slot 0 is the reference, FR. */
export function edgeOfSlot(home: HomeIndex): Edge {
  return edgeImage(rotationToHome(home), edge("FR"));
}

/** The four second-layer edges, in the order of slots. */
export const SECOND_LAYER_EDGES: readonly Edge[] = HOME_INDICES.map(edgeOfSlot);

/** The slot of a second-layer edge, or undefined for any other edge. */
export function slotOfEdge(piece: Edge): HomeIndex | undefined {
  return HOME_INDICES.find((home) => edgeOfSlot(home) === piece);
}

/** What must be placed before any stage of the last layer. */
export const FIRST_TWO_LAYERS: Pieces = {
  corners: FIRST_LAYER_CORNERS,
  edges: [...FIRST_LAYER_EDGES, ...SECOND_LAYER_EDGES],
};

/** What a stage puts into one slot. */
export function piecesOfSlot(stage: SlotStage, home: HomeIndex): Pieces {
  return {
    corners: stage === "pairs" ? [cornerOfHome(home)] : [],
    edges: [edgeOfSlot(home)],
  };
}

/** What must be placed before a stage begins, and stays so. */
export function placedBeforeSlots(stage: SlotStage): Pieces {
  return {
    corners: stage === "pairs" ? [] : FIRST_LAYER_CORNERS,
    edges: FIRST_LAYER_EDGES,
  };
}

/** The constraint whose orbits are the cases of slot 0, some other slots placed. */
export function slotConstraint(
  stage: SlotStage,
  placed: readonly HomeIndex[],
): CaseConstraint {
  const targets = piecesOfSlot(stage, 0);
  const before = placedBeforeSlots(stage);
  const others = placed.map((home) => piecesOfSlot(stage, home));
  return {
    targetCorners: targets.corners,
    targetEdges: targets.edges,
    placedCorners: [
      ...before.corners,
      ...others.flatMap(({ corners }) => corners),
    ],
    placedEdges: [...before.edges, ...others.flatMap(({ edges }) => edges)],
    freeLayer: FREE_LAYER,
  };
}
