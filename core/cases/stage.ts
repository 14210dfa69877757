import { type Corner, corner, type Edge, edge } from "../cube/pieces";
import {
  cornerImage,
  edgeImage,
  type Rotation,
  rotationAbout,
} from "../cube/symmetries";
import { present } from "../invariant";
import { LAST_LAYER_STAGES, type LastLayerStage } from "./last-layer-stages";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** The stages of the first layer, in the order in which they are learnt. */
export const FIRST_LAYER_STAGES = [
  "first-layer-edges",
  "first-layer-corners",
] as const;

export type FirstLayerStage = (typeof FIRST_LAYER_STAGES)[number];

/** The stages about slots; the first takes the first layer as placed, the second its four edges. */
export const SLOT_STAGES = ["second-layer-edges", "pairs"] as const;

export type SlotStage = (typeof SLOT_STAGES)[number];

/** A stage of the whole solve. */
export type Stage = FirstLayerStage | SlotStage | LastLayerStage;

/** All stages of the whole solve, each group in the order in which it is learnt. Stored in decks: never renamed. */
export const STAGES: readonly Stage[] = [
  ...FIRST_LAYER_STAGES,
  ...SLOT_STAGES,
  ...LAST_LAYER_STAGES,
];

/** Which of the three groups of stages a stage is in: what is alike within one is written once. */
export type StageGroup = "first-layer" | "slot" | "last-layer";

/** The group of a stage. */
export function groupOfStage(stage: Stage): StageGroup {
  if (FIRST_LAYER_STAGES.some((one) => one === stage)) return "first-layer";
  return SLOT_STAGES.some((one) => one === stage) ? "slot" : "last-layer";
}

/** Whether a stage is one of the last layer's. */
export function isLastLayerStage(stage: Stage): stage is LastLayerStage {
  return groupOfStage(stage) === "last-layer";
}

/** Whether a stage is about slots. */
export function isSlotStage(stage: Stage): stage is SlotStage {
  return groupOfStage(stage) === "slot";
}

/** The stage that a text names, or undefined where there is none. */
export function parseStage(text: string): Stage | undefined {
  return STAGES.find((stage) => stage === text);
}

/** The face of the first layer in the body frame. */
export const FIRST_LAYER_FACE = "U";

/**
 * The layer that every stage leaves free, in the body frame: the one across
 * from the first layer. It is the last layer, whose stages are up to its turns.
 */
export const FREE_LAYER = "D";

/** The turn of the whole cube that takes the reference home to another one. */
export function rotationToHome(home: HomeIndex): Rotation {
  return rotationAbout("y", home);
}

/** The edge that belongs in a home; home 0 is the reference, UF. */
export function edgeOfHome(home: HomeIndex): Edge {
  return edgeImage(rotationToHome(home), edge("UF"));
}

/** The corner that belongs in a home; home 0 is the reference, URF. */
export function cornerOfHome(home: HomeIndex): Corner {
  return cornerImage(rotationToHome(home), corner("URF"));
}

/** The four edges of the first layer, in the order of homes. */
export const FIRST_LAYER_EDGES: readonly Edge[] = HOME_INDICES.map(edgeOfHome);

/** The four corners of the first layer, in the order of homes. */
export const FIRST_LAYER_CORNERS: readonly Corner[] =
  HOME_INDICES.map(cornerOfHome);

/** The home of a first-layer edge, or undefined for any other edge. */
export function homeOfEdge(piece: Edge): HomeIndex | undefined {
  return HOME_INDICES.find((home) => edgeOfHome(home) === piece);
}

/** The home of a first-layer corner, or undefined for any other corner. */
export function homeOfCorner(piece: Corner): HomeIndex | undefined {
  return HOME_INDICES.find((home) => cornerOfHome(home) === piece);
}

/** A home counted on from another, around the cube; `steps` may be negative. */
export function homeAfter(home: HomeIndex, steps: number): HomeIndex {
  const index = (((home + steps) % 4) + 4) % 4;
  return present(HOME_INDICES[index], "there are four homes");
}
