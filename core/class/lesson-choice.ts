/**
 * A lesson as its coach changes it: cases taken out of the proposal, and
 * others put in. The rule proposes what helps most of the class; the coach
 * knows what was taught on Thursday and who is ill.
 */
import type { CaseId } from "../cases/case-ids";
import type { ClassGrid } from "./class-grid";
import {
  type Lesson,
  type LessonCase,
  lessonOf,
  MOST_CASES,
  whoPractises,
} from "./lesson";
import { byStage, compareSeats, stuckCases } from "./lesson-seats";
import { mixedUpWith, mixUpsOf } from "./mix-ups";
import { newCandidates } from "./new-cases";

/** A case that could be in a lesson, and why. */
export type LessonCandidate = Omit<LessonCase, "hold">;

/** What is mixed up with these cases, in their order. */
function besidesOf(
  grid: ClassGrid,
  cases: readonly LessonCandidate[],
): readonly LessonCandidate[] {
  const mixUps = mixUpsOf(whoPractises(grid));
  return cases.flatMap(({ case: id, learners }) => {
    if (learners.length === 0) return [];
    const other = mixedUpWith(id, learners.length, mixUps);
    return other === undefined
      ? []
      : [{ case: other, learners: [], besides: id }];
  });
}

/** What a class could take up as new; who is stuck there already is told as well. */
function newOnes(grid: ClassGrid): readonly LessonCandidate[] {
  const rows = whoPractises(grid);
  const stuck = stuckCases(grid, rows);
  return newCandidates(grid, rows, MOST_CASES).map((one) => ({
    ...one,
    learners: stuck.find((other) => other.case === one.case)?.learners ?? [],
  }));
}

/**
 * What could be put into a lesson, in the order in which the rule would give
 * it a seat: where children are stuck, then what is mixed up with a case of
 * the lesson, then what the most can take up as new. A lesson of new cases
 * goes on with new ones. What the coach took out of the proposal is among them.
 *
 * Shape: `grid` as for `nextLesson`; each case once, none that is in `lesson`.
 */
export function lessonCandidates(
  grid: ClassGrid,
  lesson: Lesson,
  proposed: Lesson,
): readonly LessonCandidate[] {
  const served = new Set(lesson.stuck);
  const stuck = stuckCases(grid, whoPractises(grid)).toSorted((a, b) =>
    compareSeats(a, b, served),
  );
  const besides = besidesOf(grid, lesson.cases);
  const ordered =
    proposed.kind === "next"
      ? [...newOnes(grid), ...proposed.cases, ...stuck, ...besides]
      : [...stuck, ...besides, ...proposed.cases, ...newOnes(grid)];
  const told = new Set(lesson.cases.map((one) => one.case));
  return ordered.filter(({ case: id }) => {
    const isFirst = !told.has(id);
    told.add(id);
    return isFirst;
  });
}

/**
 * The lesson of the cases that a coach chose, each with the reason for which
 * it was proposed or offered. Cases of one stage stand together.
 *
 * Shape: `ids` in the order in which they were chosen, each once; `grid` as
 * for `nextLesson`.
 */
export function chosenLesson(
  grid: ClassGrid,
  proposed: Lesson,
  ids: readonly CaseId[],
): Lesson {
  const ownReasons = [
    ...proposed.cases,
    ...stuckCases(grid, whoPractises(grid)),
  ];
  const own = ownReasons.filter((one) => ids.includes(one.case));
  const known = [...own, ...besidesOf(grid, own), ...newOnes(grid)];
  const cases = ids.map(
    (id): LessonCandidate =>
      known.find((one) => one.case === id) ?? { case: id, learners: [] },
  );
  return lessonOf(grid, { kind: proposed.kind, cases: byStage(cases) });
}
