import type { HomeIndex } from "../../../core/cases/variant";

/** Every set of other homes that may be placed beside the reference one. */
export const PLACED_SETS: readonly (readonly HomeIndex[])[] = [
  [],
  [1],
  [2],
  [3],
  [1, 2],
  [1, 3],
  [2, 3],
  [1, 2, 3],
];
