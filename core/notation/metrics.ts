/**
 * How long a sequence is, in the two metrics of the Regulations and in quarters. Turns count
 * as they are written: `R R` is two turns; `simplifyTurns` first where a
 * length must not depend on that.
 */
import { isSliceTurn, isWholeCubeTurn, type Turn } from "../cube/turns";

/**
 * Outer-block turns: faces and wide layers 1, the whole cube 0.
 *
 * Source: WCA Regulations 12a5. Slices are not in the Regulations; they count
 *         2, as two outer layers and a turn of the whole cube (common practice).
 */
export function outerBlockTurns(turns: readonly Turn[]): number {
  return turns.reduce((sum, turn) => {
    if (isWholeCubeTurn(turn)) return sum;
    return sum + (isSliceTurn(turn) ? 2 : 1);
  }, 0);
}

/** Turns as a person counts them off a way: everything 1, middles too, but turns of the whole cube. */
export function turnsMade(turns: readonly Turn[]): number {
  return turns.filter((turn) => !isWholeCubeTurn(turn)).length;
}

/**
 * Execution turns: every turn 1, those of the whole cube included.
 *
 * Source: WCA Regulations 12a6; slices count 1 (common practice).
 */
export function executionTurns(turns: readonly Turn[]): number {
  return turns.length;
}

/**
 * Quarter turns: a half turn 2, a slice twice as much as a face, the whole
 * cube 0. Source: common practice, as for `outerBlockTurns`.
 */
export function quarterTurns(turns: readonly Turn[]): number {
  return turns.reduce((sum, turn) => {
    if (isWholeCubeTurn(turn)) return sum;
    const quarters = turn.quarters === 2 ? 2 : 1;
    return sum + (isSliceTurn(turn) ? 2 : 1) * quarters;
  }, 0);
}
