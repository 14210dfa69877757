/**
 * What a cube shows in every stage of a solve, from the first edge to the last
 * layer: whether the stage is reached, which cases it shows, what is placed.
 *
 * Stages overlap on purpose: pairs do the work of corners and second-layer
 * edges together, and the last layer can be gone through in several ways. So
 * each stage is judged by itself, and a cube can be in several at once.
 * Speed (Node 20, one core, processor time): 7 µs for all stages of any cube,
 * 26 µs once the first two layers are placed. The first such cube takes 100 ms,
 * in which the last layer's cases are gathered: ask in a worker, or for single
 * stages.
 */
import type { Cubies } from "../cube/cubies";
import { isCornerPlaced, isEdgePlaced } from "../cube/partly-known";
import type { Pieces } from "../cube/pieces";
import { LAST_LAYER_CORNERS, LAST_LAYER_EDGES } from "./last-layer-look";
import { LAST_LAYER_RULES, type LastLayerRule } from "./last-layer-stages";
import { recognise, type Recognition } from "./recognise";
import { isCrossPlaced } from "./recognise-first-layer";
import { recogniseLastLayer } from "./recognise-last-layer";
import { arePlaced } from "./recognise-slot";
import { placedBeforeSlots, SECOND_LAYER_EDGES } from "./slot-stages";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
  type FirstLayerStage,
  isLastLayerStage,
  type Stage,
  STAGES,
  type SlotStage,
} from "./stage";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** A case that a home shows; in the last layer the home says nothing, and is 0. */
export interface CaseShown extends Recognition {
  readonly home: HomeIndex;
}

/** What a cube shows in one stage. */
export interface StageShown {
  readonly stage: Stage;
  /**
   * Whether what comes before is done, and if so whether there is anything
   * left to do. In the last layer, both are up to turns of the layer.
   */
  readonly state: "not-reached" | "open" | "done";
  /** The cases shown: none unless the stage is open, then one for each open home or slot. */
  readonly cases: readonly CaseShown[];
  /** The stage's own pieces that are placed as the cube stands, lined up or not. */
  readonly placed: Pieces;
}

/** The pieces that a stage is about, without those of the stages before it. */
function ownPieces(stage: Stage): Pieces {
  if (isLastLayerStage(stage)) {
    const { asks }: LastLayerRule = LAST_LAYER_RULES[stage];
    const asksAbout = (kind: "corner" | "edge") =>
      asks.some((part) => part.startsWith(kind));
    return {
      corners: asksAbout("corner") ? LAST_LAYER_CORNERS : [],
      edges: asksAbout("edge") ? LAST_LAYER_EDGES : [],
    };
  }
  switch (stage) {
    case "first-layer-edges":
      return { corners: [], edges: FIRST_LAYER_EDGES };
    case "first-layer-corners":
      return { corners: FIRST_LAYER_CORNERS, edges: [] };
    case "second-layer-edges":
      return { corners: [], edges: SECOND_LAYER_EDGES };
    case "pairs":
      return { corners: FIRST_LAYER_CORNERS, edges: SECOND_LAYER_EDGES };
  }
}

function placedOf(state: Cubies, { corners, edges }: Pieces): Pieces {
  return {
    corners: corners.filter((piece) => isCornerPlaced(state, piece)),
    edges: edges.filter((piece) => isEdgePlaced(state, piece)),
  };
}

function isReached(state: Cubies, stage: FirstLayerStage | SlotStage): boolean {
  switch (stage) {
    case "first-layer-edges":
      return true;
    case "first-layer-corners":
      return isCrossPlaced(state);
    case "second-layer-edges":
    case "pairs":
      return arePlaced(state, placedBeforeSlots(stage));
  }
}

function casesOfHomes(
  state: Cubies,
  stage: FirstLayerStage | SlotStage,
): readonly CaseShown[] {
  return HOME_INDICES.flatMap((home) => {
    const shown = recognise(state, stage, home);
    return shown === undefined ? [] : [{ home, ...shown }];
  });
}

/**
 * What a cube shows in one stage.
 *
 * Shape: `state` is in the body frame (first layer at U), wholly known and
 *        such as can be reached by turning.
 */
export function stageShown(state: Cubies, stage: Stage): StageShown {
  const placed = placedOf(state, ownPieces(stage));
  if (isLastLayerStage(stage)) {
    const found = recogniseLastLayer(state, stage);
    if (found === undefined)
      return { stage, state: "not-reached", cases: [], placed };
    const shown = recognise(state, stage, 0);
    return shown === undefined
      ? { stage, state: "done", cases: [], placed }
      : { stage, state: "open", cases: [{ home: 0, ...shown }], placed };
  }
  if (!isReached(state, stage))
    return { stage, state: "not-reached", cases: [], placed };
  const cases = casesOfHomes(state, stage);
  return { stage, state: cases.length === 0 ? "done" : "open", cases, placed };
}

/** What a cube shows in every stage, in the order of `STAGES`; see `stageShown`. */
export function stagesShown(state: Cubies): readonly StageShown[] {
  return STAGES.map((stage) => stageShown(state, stage));
}
