/**
 * "What should Monday's lesson be?" as data: up to five cases that help most
 * of a class, for the twenty minutes that a coach has; four minutes each are
 * enough to show a case, turn it together and ask it once around.
 *
 * A lesson is for the class. Where one child of forty is stuck everywhere,
 * five cases of theirs are no lesson for the others: such a child is named
 * (`alone`), to sit down with, and the class learns something new. In a group
 * of up to five each may have a seat, and those not served yet come first.
 *
 * Cases of one stage stand together: where half of a class is in the first
 * layer and half at the end, one half is taught while the other practises,
 * once, and not in turns. All is told in one hold, the one of most whom it is
 * for; who holds the cube the other way is named (`otherHold`).
 *
 * Who has been away for over a week is not counted: what they last did says
 * little about today, and they need to practise before they need a lesson.
 */
import type { CaseId } from "../cases/case-ids";
import { stageOfCase } from "../cases/case-table";
import { holdFor } from "../cases/hold-in-stage";
import { groupOfStage } from "../cases/stage";
import type { Hold } from "../cases/variant";
import type { ClassGrid, ClassRow } from "./class-grid";
import { holdToldIn } from "./lesson-hold";
import {
  enoughStuck,
  seats,
  type StuckCase,
  stuckCases,
  type StuckLearner,
} from "./lesson-seats";
import { newCases } from "./new-cases";

/** The most cases of one lesson. */
export const MOST_CASES = 5;

/** A case of the lesson. */
export interface LessonCase {
  readonly case: CaseId;
  /** How the lesson holds it; absent where nobody of the class has held a first layer. */
  readonly hold?: Hold;
  /** Those of the class who are stuck there, the gravest first. */
  readonly learners: readonly StuckLearner[];
  /** The case for which it is there, since the two are mixed up; absent: it is there for its own sake. */
  readonly besides?: CaseId;
  /** Of a case that is there as a new one, how many of those who practise have not met it. */
  readonly notMet?: number;
}

/**
 * What a lesson is about. `stuck`: what learners are stuck at; `next`: what
 * the class can learn next. Without a case: `nobody` practises; there are
 * `no-cases` to choose from; `all-met`: everybody has met every case, and
 * `most-met`: most have met each.
 */
export type LessonKind =
  "stuck" | "next" | "nobody" | "no-cases" | "all-met" | "most-met";

/** A lesson, and who needs another thing. */
export interface Lesson {
  readonly kind: LessonKind;
  readonly cases: readonly LessonCase[];
  /** At how many cases somebody is stuck in all. */
  readonly stuckCases: number;
  /** How many learners practise. */
  readonly practising: number;
  /** Ids of those stuck at a case of the lesson. */
  readonly stuck: readonly string[];
  /** Ids of those who are stuck, but at no case of the lesson: at most cases first. */
  readonly alone: readonly string[];
  /** How the first layer is held in the lesson; absent: it has no such case, or nobody has held one. */
  readonly hold?: Hold;
  /** Ids of those whom the lesson is for and who hold the first layer the other way. */
  readonly otherHold: readonly string[];
  /** Ids of those who have not practised for over a week, the longest first. */
  readonly away: readonly {
    readonly member: string;
    readonly days: number;
  }[];
  /** Ids of those who have never answered. */
  readonly notBegun: readonly string[];
}

/** What is taught and why, before it is known how the class holds it. */
export interface ChosenCases {
  readonly kind: LessonKind;
  readonly cases: readonly Omit<LessonCase, "hold">[];
}

function isOfFirstLayer(one: { readonly case: CaseId }): boolean {
  return groupOfStage(stageOfCase(one.case)) === "first-layer";
}

/** Why there is no case to teach. */
function nothing(
  { cases }: Pick<ClassGrid, "cases">,
  rows: readonly ClassRow[],
): ChosenCases {
  const isAllMet = rows.every(({ cells }) =>
    cells.every((cell) => cell !== undefined),
  );
  const kind =
    rows.length === 0
      ? "nobody"
      : cases.length === 0
        ? "no-cases"
        : isAllMet
          ? "all-met"
          : "most-met";
  return { kind, cases: [] };
}

function choose(
  grid: Pick<ClassGrid, "cases">,
  rows: readonly ClassRow[],
  stuck: readonly StuckCase[],
): ChosenCases {
  if (rows.length === 0) return nothing(grid, rows);
  const enough = enoughStuck(rows.length);
  const ofMany = seats(stuck, rows, { most: MOST_CASES, enough });
  if (ofMany.length > 0) return { kind: "stuck", cases: ofMany };
  const ofFew = seats(stuck, rows, { most: MOST_CASES, enough: 1 });
  // Nothing new is put on top where most are stuck, each at something else.
  const areMostStuck =
    2 * rows.filter((row) => row.stuck > 0).length > rows.length;
  const next = areMostStuck
    ? []
    : newCases(grid, { rows, most: MOST_CASES, enough });
  if (next.length > 0)
    return {
      kind: "next",
      cases: next.map((one) => ({ ...one, learners: [] })),
    };
  // With nothing else to teach, what a few are stuck at is taught after all.
  return ofFew.length > 0
    ? { kind: "stuck", cases: ofFew }
    : nothing(grid, rows);
}

/** Those of a class for whom a lesson is made. */
export function whoPractises({
  rows,
}: Pick<ClassGrid, "rows">): readonly ClassRow[] {
  return rows.filter(({ attendance }) => attendance.kind === "practises");
}

/** A lesson of these cases, with who needs another thing. Shape: `cases` as they are taught, `grid` as for `nextLesson`. */
export function lessonOf(
  grid: ClassGrid,
  { kind, cases }: ChosenCases,
): Lesson {
  const rows = whoPractises(grid);
  const stuck = [
    ...new Set(
      cases.flatMap(({ learners }) => learners.map(({ member }) => member)),
    ),
  ];
  const ofFirstLayer = cases.filter(isOfFirstLayer);
  const columns = new Map(grid.cases.map((id, column) => [id, column]));
  const isFor = ({ member, cells }: ClassRow) =>
    ofFirstLayer.some(
      ({ case: id, learners, notMet }) =>
        learners.some((one) => one.member === member.id) ||
        (notMet !== undefined && cells[columns.get(id) ?? -1] === undefined),
    );
  const { hold, otherHold } = holdToldIn(rows, rows.filter(isFor));
  return {
    kind,
    cases: cases.map((one) => {
      const held = isOfFirstLayer(one)
        ? hold
        : holdFor(stageOfCase(one.case), "down");
      return { ...one, ...(held === undefined ? {} : { hold: held }) };
    }),
    stuckCases: stuckCases(grid, rows).length,
    practising: rows.length,
    stuck,
    alone: rows
      .filter(({ member, stuck: at }) => at > 0 && !stuck.includes(member.id))
      .toSorted((a, b) => b.stuck - a.stuck)
      .map(({ member }) => member.id),
    ...(hold !== undefined && ofFirstLayer.length > 0 ? { hold } : {}),
    otherHold,
    away: grid.rows
      .flatMap(({ member, attendance }) =>
        attendance.kind === "away"
          ? [{ member: member.id, days: attendance.days }]
          : [],
      )
      .toSorted((a, b) => b.days - a.days),
    notBegun: grid.rows
      .filter(({ attendance }) => attendance.kind === "not-begun")
      .map(({ member }) => member.id),
  };
}

/**
 * The next lesson of a class: the cases at which most are stuck, then those
 * that serve the most who have no case yet, then at which they are stuck
 * worst, then as they stand in the deck; where no case is one for the class,
 * what comes next.
 *
 * Shape: `grid` with its columns in the deck's order, not sorted.
 */
export function nextLesson(grid: ClassGrid): Lesson {
  const rows = whoPractises(grid);
  return lessonOf(grid, choose(grid, rows, stuckCases(grid, rows)));
}
