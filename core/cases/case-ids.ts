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

/** Everything that can be practised. Ids are stored in logs and files: never renamed. */
export type CaseId = FirstLayerEdgeId | FirstLayerCornerId | CornerSwapId;

/** All ids, in the order of the shelves. */
export const CASE_IDS: readonly CaseId[] = [
  ...FIRST_LAYER_EDGE_IDS,
  ...FIRST_LAYER_CORNER_IDS,
  ...CORNER_SWAP_IDS,
];

/** The id that a text names, or undefined where there is none. */
export function parseCaseId(text: string): CaseId | undefined {
  return CASE_IDS.find((id) => id === text);
}
