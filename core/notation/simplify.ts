import { type Quarters, type Turn, turnAxis } from "../cube/turns";

/**
 * A sequence of the same effect in which no layer is turned twice in a row,
 * not even with turns about the same axis in between (`R L R` is `R2 L`).
 * Layers stay as they are written: nothing becomes a slice or a wide turn.
 */
export function simplifyTurns(turns: readonly Turn[]): readonly Turn[] {
  const result: Turn[] = [];
  for (const turn of turns) {
    const at = sameLayerInLastRun(result, turn);
    const earlier = result[at];
    if (earlier === undefined) {
      result.push(turn);
      continue;
    }
    const quarters = (earlier.quarters + turn.quarters) % 4;
    if (quarters === 0) result.splice(at, 1);
    // A remainder other than 0 is 1, 2 or 3.
    else result[at] = { layer: turn.layer, quarters: quarters as Quarters };
  }
  return result;
}

/** Where the turns about this turn's axis at the end turn its layer, or −1. */
function sameLayerInLastRun(turns: readonly Turn[], turn: Turn): number {
  for (let i = turns.length - 1; i >= 0; i--) {
    const earlier = turns[i];
    if (earlier === undefined || turnAxis(earlier) !== turnAxis(turn))
      return -1;
    if (earlier.layer === turn.layer) return i;
  }
  return -1;
}
