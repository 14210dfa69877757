/**
 * In which hold a lesson is told. One for all of it: a coach holds one cube
 * up before the class, a sheet is drawn in one hold, and ticks on it make
 * memories of that hold.
 */
import { stageOfCase } from "../cases/case-table";
import { groupOfStage } from "../cases/stage";
import type { Hold } from "../cases/variant";
import type { ClassRow } from "./class-grid";

/** The hold of a lesson. */
export interface HoldToldIn {
  /** Absent: nobody has held a first layer. */
  readonly hold?: Hold;
  /** Ids of those whom the lesson is for and who hold the first layer the other way. */
  readonly otherHold: readonly string[];
}

/** How a learner holds the first layer now: as they answered it last. Undefined: not met. */
function holdOf({ cells }: ClassRow): Hold | undefined {
  const [newest] = cells
    .flatMap((cell) => (cell === undefined ? [] : [cell.record]))
    .filter((one) => groupOfStage(stageOfCase(one.case)) === "first-layer")
    .toSorted((a, b) => b.lastDay - a.lastDay);
  return newest?.hold;
}

/** The hold of most of those whom the lesson is for; where none of them has one, of most in the class. */
export function holdToldIn(
  rows: readonly ClassRow[],
  audience: readonly ClassRow[],
): HoldToldIn {
  const own = audience.some((row) => holdOf(row) !== undefined)
    ? audience
    : rows;
  const holds = own.flatMap((row) => holdOf(row) ?? []);
  const ups = holds.filter((hold) => hold === "up").length;
  if (holds.length === 0) return { otherHold: [] };
  const hold = 2 * ups >= holds.length ? "up" : "down";
  const otherHold = audience
    .filter((row) => (holdOf(row) ?? hold) !== hold)
    .map(({ member }) => member.id);
  return { hold, otherHold };
}
