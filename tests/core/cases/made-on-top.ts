import { type Cubies, SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { conjugate, rotationAbout } from "../../../core/cube/symmetries";
import type { Turn } from "../../../core/cube/turns";

/** What turns the body over to the hold in which the last layer is on top. */
const LAST_LAYER_ON_TOP = rotationAbout("z", 2);

/**
 * What turns make of a solved cube whose last layer is on top, in the body
 * frame; turns of the whole cube at the end are not counted.
 */
export function madeOnTop(turns: readonly Turn[]): Cubies {
  const { cubies, hold } = applyTurns(
    { cubies: SOLVED, hold: LAST_LAYER_ON_TOP },
    turns,
  );
  // Seen as it ends, with the last layer on top, and then as the body has it.
  return conjugate(conjugate(cubies, hold), LAST_LAYER_ON_TOP);
}
