/**
 * How many cases each shelf shows, written down so that a list of shelves need
 * not gather any. Source: computed; a test counts them again.
 */
import type { Stage } from "./stage";

/**
 * How many cases the shelf of a stage shows: of the first-layer corners without
 * the two tasks of two corners, of the pairs those that are left when all other
 * slots are placed.
 */
export const CASES_ON_SHELF: Readonly<Record<Stage, number>> = {
  "first-layer-edges": 17,
  "first-layer-corners": 14,
  "second-layer-edges": 9,
  pairs: 41,
  "last-layer-edges-turned": 3,
  "last-layer-edges-placed": 2,
  "last-layer-corners-placed": 4,
  "last-layer-corners-turned-last": 7,
  "last-layer-corners-turned": 7,
  "last-layer-corners-placed-first": 2,
  "last-layer-edges-placed-last": 4,
  "last-layer-turned": 57,
  "last-layer-placed": 21,
  "last-layer-corners": 42,
  "last-layer-but-edges-turned": 493,
  "last-layer-whole": 3915,
};

/** A shelf so long that it is gone through family by family. */
export function isLargeShelf(stage: Stage): boolean {
  return CASES_ON_SHELF[stage] > 200;
}
