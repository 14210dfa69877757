/** The ways that are shown after an answer, as they are played on its position. */
import { caseEntry, waysOf } from "../../../core/cases/case-table";
import type { Position } from "../../../core/cases/position";
import { wayForPosition } from "../../../core/cases/way-for-position";
import type { Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { simplifyTurns } from "../../../core/notation/simplify";
import { SCHOOL_NAMES } from "../../components/way-words";
import { taughtTurns, type TaughtWay } from "./deck-way";

/** A way with its name. */
export interface ShownWay {
  readonly name: string;
  readonly turns: readonly Turn[];
}

/** The ways of a case, the one that is taught first. */
export type ShownWays = readonly [ShownWay, ...ShownWay[]];

/** Whether two sequences are the same turns, however the half turns are made. */
export function isSameWay(a: readonly Turn[], b: readonly Turn[]): boolean {
  return formatTurns(simplifyTurns(a)) === formatTurns(simplifyTurns(b));
}

/**
 * Whether an answer went along a way: the same turns, in the last layer but for
 * a last turn of the top, which an answer need not make.
 */
export function wentAlong(
  position: Position,
  turns: readonly Turn[],
  way: readonly Turn[],
): boolean {
  if (caseEntry(position.case).group !== "last-layer")
    return isSameWay(turns, way);
  const essence = (all: readonly Turn[]) => {
    const simple = simplifyTurns(all);
    return simple.at(-1)?.layer === "U" ? simple.slice(0, -1) : simple;
  };
  return isSameWay(essence(turns), essence(way));
}

/** The way that is taught first, then every other that is not the same turns. */
export function shownWays(position: Position, taught: TaughtWay): ShownWays {
  const first: ShownWay = {
    name: taught.way === undefined ? "The way you learn" : "The deck’s way",
    turns: taughtTurns(position, taught),
  };
  const others: ShownWay[] = [];
  for (const way of waysOf(position.case, position.hold, taught.choice.hand)) {
    const turns = wayForPosition(position, way);
    const isKnown = [first, ...others].some((other) =>
      isSameWay(other.turns, turns),
    );
    if (!isKnown) others.push({ name: SCHOOL_NAMES[way.school], turns });
  }
  return [first, ...others];
}
