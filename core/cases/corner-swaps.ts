/**
 * Two corners in each other's homes: a task rather than a case, because both
 * must be brought home and either may be twisted in any way.
 */
import { type CaseRow, targets } from "./case-entry";
import type { CornerSwapId } from "./case-ids";

/** How many `y` quarter turns take one home to the other's. */
export interface SwapPlace {
  readonly partner: 1 | 2;
}

/** A task of two corners as it is written down. */
export type SwapRow = CaseRow<CornerSwapId, SwapPlace>;

/**
 * Both tasks. With the one home at the top front right, the other is at the
 * top front left, or across. Counted from either corner the first task is the
 * same seen in a mirror, so each task is its own twin.
 *
 * Source: targets are the sums of those of C6–C14 and of C3, the slowest case
 *         that the second corner can show.
 */
export const CORNER_SWAP_ROWS: readonly SwapRow[] = [
  {
    id: "S1",
    where: { partner: 1 },
    family: "in-each-others-homes",
    twin: "S1",
    targets: targets(65, 26, 7),
    ways: {},
  },
  {
    id: "S2",
    where: { partner: 2 },
    family: "in-each-others-homes",
    twin: "S2",
    targets: targets(65, 26, 7),
    ways: {},
  },
];
