/**
 * A way that is followed turn by turn, from wherever the learner has got to:
 * whatever they turned, there is a next turn that leads on.
 */
import type { Turn } from "../../../core/cube/turns";
import { inverseTurns } from "../../../core/notation/inverse";
import { simplifyTurns } from "../../../core/notation/simplify";

/** Where the learner stands on a way. */
export interface GuideStep {
  /** The turn that leads on: the way's, what is left of it, or one to take back. */
  readonly turn: Turn;
  /** Which step of the way it belongs to; undefined where a turn must be taken back first. */
  readonly step: number | undefined;
}

/**
 * The turn that leads on along a way after the turns of `line`, or undefined
 * where all of it is made.
 */
export function guideStep(
  way: readonly Turn[],
  line: readonly Turn[],
): GuideStep | undefined {
  const rest = simplifyTurns([...inverseTurns(line), ...way]);
  const turn = rest[0];
  if (turn === undefined) return undefined;
  const step = way.length - rest.length;
  return { turn, step: way[step]?.layer === turn.layer ? step : undefined };
}
