import type { LastLayerStage } from "./last-layer-stages";
import type { SlotStage } from "./stage";

/** First-layer edges: turns of the bottom free, home at the top front. */
export const FIRST_LAYER_EDGE_IDS = [
  "E1",
  "E2a",
  "E2b",
  "E3",
  "E4a",
  "E4b",
  "E5a",
  "E5b",
  "E6a",
  "E6b",
  "E7",
  "E8a",
  "E8b",
  "E9a",
  "E9b",
  "E10",
  "E11",
] as const;

/** First-layer corners: cross placed, home at the top front right. */
export const FIRST_LAYER_CORNER_IDS = [
  "C1",
  "C2",
  "C3",
  "C4",
  "C5",
  "C6",
  "C7",
  "C8",
  "C9",
  "C10",
  "C11",
  "C12",
  "C13",
  "C14",
] as const;

/** Two corners in each other's homes: next to one another, and across. A task rather than a case: both must be brought home. */
export const CORNER_SWAP_IDS = ["S1", "S2"] as const;

export type FirstLayerEdgeId = (typeof FIRST_LAYER_EDGE_IDS)[number];
export type FirstLayerCornerId = (typeof FIRST_LAYER_CORNER_IDS)[number];
export type CornerSwapId = (typeof CORNER_SWAP_IDS)[number];

/** What can be practised in the first layer. */
export type FirstLayerId = FirstLayerEdgeId | FirstLayerCornerId | CornerSwapId;

/**
 * A case of a slot or of the last layer: its stage and its code, spaces
 * written as dots (`pairs:DFR-R.FR-F`, `last-layer-turned:1212-1111`).
 *
 * Codes are computed from what the case shows, so an id means the same case
 * for ever and needs no list.
 */
export type ComputedId = `${SlotStage | LastLayerStage}:${string}`;

/** Everything that can be practised. Ids are stored in logs and files: never renamed. */
export type CaseId = FirstLayerId | ComputedId;

/** The ids of the first layer, in the order of its shelves. */
export const FIRST_LAYER_IDS: readonly FirstLayerId[] = [
  ...FIRST_LAYER_EDGE_IDS,
  ...FIRST_LAYER_CORNER_IDS,
  ...CORNER_SWAP_IDS,
];

/** The id of a case that is named by its code. */
export function computedId(
  stage: SlotStage | LastLayerStage,
  code: string,
): ComputedId {
  return `${stage}:${code.replaceAll(" ", ".")}`;
}

/** The first-layer id that a text names, or undefined where there is none. */
export function parseFirstLayerId(text: string): FirstLayerId | undefined {
  return FIRST_LAYER_IDS.find((id) => id === text);
}
