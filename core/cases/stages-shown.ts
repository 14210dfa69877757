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
import type { LastLayerCase } from "./last-layer-cases";
import { LAST_LAYER_CORNERS, LAST_LAYER_EDGES } from "./last-layer-look";
import {
  LAST_LAYER_RULES,
  LAST_LAYER_STAGES,
  type LastLayerRule,
  type LastLayerStage,
} from "./last-layer-stages";
import { casesShown, isCrossPlaced, type Recognition } from "./recognise";
import { recogniseLastLayer } from "./recognise-last-layer";
import { arePlaced, recogniseSlot } from "./recognise-slot";
import type { SlotRecognition } from "./slot-cases";
import {
  placedBeforeSlots,
  SECOND_LAYER_EDGES,
  SLOT_STAGES,
  type SlotStage,
} from "./slot-stages";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
  type Stage,
  STAGES,
} from "./stage";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** A stage of the whole solve. */
export type SolveStage = Stage | SlotStage | LastLayerStage;

/** All stages of the whole solve, each group in the order in which it is gone through. */
export const SOLVE_STAGES: readonly SolveStage[] = [
  ...STAGES,
  ...SLOT_STAGES,
  ...LAST_LAYER_STAGES,
];

/** A case, and the home or slot that shows it; the last layer has neither. */
export type CaseShown =
  | {
      readonly kind: "first-layer";
      readonly home: HomeIndex;
      readonly shown: Recognition;
    }
  | {
      readonly kind: "slot";
      readonly home: HomeIndex;
      readonly shown: SlotRecognition;
    }
  | { readonly kind: "last-layer"; readonly shown: LastLayerCase };

/** What a cube shows in one stage. */
export interface StageShown {
  readonly stage: SolveStage;
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

function isLastLayerStage(stage: SolveStage): stage is LastLayerStage {
  return LAST_LAYER_STAGES.some((one) => one === stage);
}

/** The pieces that a stage is about, without those of the stages before it. */
function ownPieces(stage: SolveStage): Pieces {
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

function isReached(state: Cubies, stage: Stage | SlotStage): boolean {
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
  stage: Stage | SlotStage,
): readonly CaseShown[] {
  if (stage === "first-layer-edges" || stage === "first-layer-corners")
    return casesShown(state, stage).map((one) => ({
      kind: "first-layer",
      ...one,
    }));
  return HOME_INDICES.flatMap((home): readonly CaseShown[] => {
    const shown = recogniseSlot(state, stage, home);
    return shown === undefined ? [] : [{ kind: "slot", home, shown }];
  });
}

/**
 * What a cube shows in one stage.
 *
 * Shape: `state` is in the body frame (first layer at U), wholly known and
 *        such as can be reached by turning.
 */
export function stageShown(state: Cubies, stage: SolveStage): StageShown {
  const placed = placedOf(state, ownPieces(stage));
  if (isLastLayerStage(stage)) {
    const shown = recogniseLastLayer(state, stage);
    if (shown === undefined)
      return { stage, state: "not-reached", cases: [], placed };
    return shown === "answered"
      ? { stage, state: "done", cases: [], placed }
      : {
          stage,
          state: "open",
          cases: [{ kind: "last-layer", shown }],
          placed,
        };
  }
  if (!isReached(state, stage))
    return { stage, state: "not-reached", cases: [], placed };
  const cases = casesOfHomes(state, stage);
  return { stage, state: cases.length === 0 ? "done" : "open", cases, placed };
}

/** What a cube shows in every stage, in the order of `SOLVE_STAGES`; see `stageShown`. */
export function stagesShown(state: Cubies): readonly StageShown[] {
  return SOLVE_STAGES.map((stage) => stageShown(state, stage));
}
