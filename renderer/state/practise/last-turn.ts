/** The turn of the last layer that an answer may leave to be made: it is free, and lines everything up. */
import { quartersToGoal } from "../../../core/cases/case-goal";
import { goalOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import { FREE_LAYER } from "../../../core/cases/stage";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { type HeldCube, viewFace } from "../../../core/cube/held-cube";
import type { Quarters } from "../../../core/cube/turns";
import { turnInWords } from "../../../core/notation/say-in-words";

/**
 * What is said of it after a right answer: "One turn lines everything up. Turn
 * the top to the left."; undefined where nothing is left to turn.
 */
export function lastTurnInWords(
  position: Position,
  after: HeldCube<PartlyKnownCubies>,
): string | undefined {
  const quarters = quartersToGoal(after.cubies, goalOf(position));
  if (quarters === undefined || quarters === 0) return undefined;
  const turn = turnInWords({
    layer: viewFace(after.hold, FREE_LAYER),
    quarters: quarters as Quarters,
  });
  return `One more turn lines everything up. ${turn}`;
}
