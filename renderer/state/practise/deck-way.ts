/** The way that a deck advises, as it is played on one position. */
import { judge } from "../../../core/answer/judge";
import { type Position, startOf } from "../../../core/cases/position";
import {
  turnsForPosition,
  type WayChoice,
  wayForPosition,
} from "../../../core/cases/way-for-position";
import { applyTurns } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { DeckWay } from "../../../core/deck/deck";
import { turnsOfDeckWay } from "../../../core/deck/way-of-deck";

/** Which way is taught. */
export interface TaughtWay {
  /** The deck's; undefined: the learner's own choice. */
  readonly way: DeckWay | undefined;
  /** The learner's own: what counts where the deck says nothing, its hand where the deck names none. */
  readonly choice: WayChoice;
}

/**
 * The turns that are taught for a position, from how it is held when it is
 * shown. A deck's way that does not answer it is not taught: a deck may be
 * revised while a round asks as it was, and may come from anywhere.
 */
export function taughtTurns(
  position: Position,
  { way, choice }: TaughtWay,
): readonly Turn[] {
  const turns =
    way === undefined
      ? undefined
      : turnsOfDeckWay(position.case, way, position.hold, choice.hand);
  const own = turns && wayForPosition(position, { turns });
  const answers =
    own !== undefined &&
    judge(position, applyTurns(startOf(position), own)).right;
  return own !== undefined && answers
    ? own
    : turnsForPosition(position, choice);
}
