/** The ways that are shown after an answer, as they are played on its position. */
import { waysOf } from "../../../core/cases/case-table";
import type { Position } from "../../../core/cases/position";
import {
  turnsForPosition,
  wayForPosition,
  type WayChoice,
} from "../../../core/cases/way-for-position";
import type { Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { simplifyTurns } from "../../../core/notation/simplify";
import { SCHOOL_NAMES } from "../../components/way-words";

/** A way with its name. */
export interface ShownWay {
  readonly name: string;
  readonly turns: readonly Turn[];
}

/** Whether two sequences are the same turns, however the half turns are made. */
export function isSameWay(a: readonly Turn[], b: readonly Turn[]): boolean {
  return formatTurns(simplifyTurns(a)) === formatTurns(simplifyTurns(b));
}

/** The deck's way first, then every other way that is not the same turns. */
export function shownWays(
  position: Position,
  choice: WayChoice,
): readonly [ShownWay, ...ShownWay[]] {
  const taught: ShownWay = {
    name: "The deck’s way",
    turns: turnsForPosition(position, choice),
  };
  const others: ShownWay[] = [];
  for (const way of waysOf(position.case, position.hold, choice.hand)) {
    const turns = wayForPosition(position, way);
    const isKnown = [taught, ...others].some((other) =>
      isSameWay(other.turns, turns),
    );
    if (!isKnown) others.push({ name: SCHOOL_NAMES[way.school], turns });
  }
  return [taught, ...others];
}
