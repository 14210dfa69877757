/**
 * What a class could learn next: new cases that many can take up now.
 *
 * A case is new to a learner when they have not met it, and within reach when
 * it is among the first few of those from the stage on in which they began:
 * who began in the last layer knew the first layer from elsewhere. What most
 * have not met is no answer: in a class of which half is in the first layer
 * and half at the end, that is what follows the end, and half cannot follow.
 */
import { stageOfCase } from "../cases/case-table";
import type { CaseId } from "../cases/case-ids";
import { STAGES } from "../cases/stage";
import type { ClassGrid, ClassRow } from "./class-grid";

/** A case that could be taught as a new one. */
export interface NewCase {
  readonly case: CaseId;
  /** How many of those who practise have not met it. */
  readonly notMet: number;
}

/** Whom the new cases are looked for among, and how many. */
export interface NewCasesWanted {
  readonly rows: readonly ClassRow[];
  /** How many cases at most; also how many of a learner's next cases are within reach. */
  readonly most: number;
  /** For how many learners a case is to be new and within reach. */
  readonly enough: number;
}

/** The columns that a learner could take up now. */
function reachOf(
  { cells }: ClassRow,
  stages: readonly number[],
  most: number,
): readonly number[] {
  const met = stages.filter((_, column) => cells[column] !== undefined);
  const begun = met.length === 0 ? 0 : Math.min(...met);
  return [...stages.keys()]
    .filter(
      (column) => cells[column] === undefined && (stages[column] ?? 0) >= begun,
    )
    .slice(0, most);
}

interface CountedCase extends NewCase {
  readonly column: number;
  /** For how many it is new and within reach. */
  readonly count: number;
}

/** All cases in the deck's order; within reach are so many of each learner's next. */
function counted(
  { cases }: Pick<ClassGrid, "cases">,
  rows: readonly ClassRow[],
  most: number,
): readonly CountedCase[] {
  const stages = cases.map((id) => STAGES.indexOf(stageOfCase(id)));
  const counts = cases.map(() => 0);
  for (const row of rows)
    for (const column of reachOf(row, stages, most))
      counts[column] = (counts[column] ?? 0) + 1;
  return cases.map((id, column) => ({
    case: id,
    column,
    count: counts[column] ?? 0,
    notMet: rows.filter(({ cells }) => cells[column] === undefined).length,
  }));
}

/** Those within reach of so many, first what the most can take up, else as the deck has them. */
function withinReach(
  all: readonly CountedCase[],
  enough: number,
): readonly CountedCase[] {
  return all
    .filter(({ count }) => count >= enough)
    .toSorted((a, b) => b.count - a.count);
}

/**
 * The cases that the most can take up, in the deck's order; where too few
 * stand at the same place, those that at least half have not met; none where
 * there are none of these either.
 *
 * Shape: `cases` in the deck's order, as the rows' cells.
 */
export function newCases(
  grid: Pick<ClassGrid, "cases">,
  { rows, most, enough }: NewCasesWanted,
): readonly NewCase[] {
  const all = counted(grid, rows, most);
  const within = withinReach(all, enough)
    .slice(0, most)
    .toSorted((a, b) => a.column - b.column);
  const half = all.filter(
    ({ notMet }) => notMet > 0 && 2 * notMet >= rows.length,
  );
  return (within.length > 0 ? within : half.slice(0, most)).map(
    ({ case: id, notMet }) => ({ case: id, notMet }),
  );
}

/**
 * Every case that anybody could take up, what the most can first. Within
 * reach are here twice as many as a lesson has: the lesson itself may already
 * be what everybody has next.
 *
 * Shape: as for `newCases`; `most` is of one lesson.
 */
export function newCandidates(
  grid: Pick<ClassGrid, "cases">,
  rows: readonly ClassRow[],
  most: number,
): readonly NewCase[] {
  return withinReach(counted(grid, rows, 2 * most), 1).map(
    ({ case: id, notMet }) => ({ case: id, notMet }),
  );
}
