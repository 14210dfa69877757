/**
 * "What should Monday's lesson be?" as data: up to five cases that help most
 * of a class, for the twenty minutes that a coach has; four minutes each are
 * enough to show a case, turn it together and ask it once around.
 *
 * Who has been away for over a week is not counted: what they last did says
 * little about today, and they need to practise before they need a lesson.
 */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import type { ClassGrid, ClassRow } from "./class-grid";
import { mixedUpWith, mixUpsOf } from "./mix-ups";
import { gravity, type Stuck } from "./stuck";

/** The most cases of one lesson. */
export const MOST_CASES = 5;

/** A learner at a case of the lesson. */
export interface StuckLearner {
  /** The learner's id. */
  readonly member: string;
  readonly stuck: Stuck;
}

/** A case of the lesson. */
export interface LessonCase {
  readonly case: CaseId;
  /** How most of those who are stuck at it hold it; absent where nobody has answered it. */
  readonly hold?: Hold;
  /** Those of the class who are stuck there, the gravest first. */
  readonly learners: readonly StuckLearner[];
  /** Whether it is there for the case before it, which is mixed up with it. */
  readonly isBeside: boolean;
}

/** A lesson, and who needs another thing. */
export interface Lesson {
  /** `stuck`: what learners are stuck at; `next`: nobody is, so what comes next in the deck; `none`: neither. */
  readonly kind: "stuck" | "next" | "none";
  readonly cases: readonly LessonCase[];
  /** At how many cases somebody is stuck in all. */
  readonly stuckCases: number;
  /** How many learners practise. */
  readonly practising: number;
  /** Ids of those stuck at a case of the lesson. */
  readonly stuck: readonly string[];
  /** Ids of those who have not practised for over a week, the longest first. */
  readonly away: readonly {
    readonly member: string;
    readonly days: number;
  }[];
  /** Ids of those who have never answered. */
  readonly notBegun: readonly string[];
}

interface Candidate {
  readonly lesson: LessonCase;
  readonly gravity: number;
}

function mostFrequent<T>(values: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const most = Math.max(...counts.values());
  return [...counts].find(([, count]) => count === most)?.[0];
}

function candidateAt(
  rows: readonly ClassRow[],
  id: CaseId,
  column: number,
): Candidate {
  const cells = rows.flatMap(({ member, cells: own }) => {
    const cell = own[column];
    return cell === undefined ? [] : [{ member: member.id, cell }];
  });
  const stuckThere = cells
    .flatMap(({ member, cell: { stuck, record } }) =>
      stuck === undefined ? [] : [{ member, stuck, hold: record.hold }],
    )
    .toSorted((a, b) => gravity(b.stuck) - gravity(a.stuck));
  // Where nobody is stuck, as it is held by whoever has answered it.
  const holds =
    stuckThere.length > 0
      ? stuckThere.map(({ hold }) => hold)
      : cells.map(({ cell }) => cell.record.hold);
  const hold = mostFrequent(holds);
  return {
    lesson: {
      case: id,
      ...(hold === undefined ? {} : { hold }),
      learners: stuckThere.map(({ member, stuck }) => ({ member, stuck })),
      isBeside: false,
    },
    gravity: stuckThere.reduce((sum, { stuck }) => sum + gravity(stuck), 0),
  };
}

interface StuckCases {
  readonly chosen: readonly LessonCase[];
  /** At how many cases somebody is stuck in all. */
  readonly all: number;
}

function stuckCases(
  { cases }: Pick<ClassGrid, "cases">,
  rows: readonly ClassRow[],
): StuckCases {
  const candidates = cases.map((id, column) => candidateAt(rows, id, column));
  const lessons = new Map(
    candidates.map(({ lesson }) => [lesson.case, lesson]),
  );
  const stuck = candidates
    .filter(({ lesson }) => lesson.learners.length > 0)
    .toSorted(
      (a, b) =>
        b.lesson.learners.length - a.lesson.learners.length ||
        b.gravity - a.gravity,
    );
  const mixUps = mixUpsOf(rows);
  const chosen = new Map<CaseId, LessonCase>();
  for (const { lesson } of stuck) {
    if (chosen.size >= MOST_CASES) break;
    if (chosen.has(lesson.case)) continue;
    chosen.set(lesson.case, lesson);
    const other = mixedUpWith(lesson.case, lesson.learners.length, mixUps);
    if (other === undefined || chosen.has(other)) continue;
    if (chosen.size >= MOST_CASES) break;
    const beside = lessons.get(other) ?? { case: other, learners: [] };
    chosen.set(other, { ...beside, isBeside: true });
  }
  return { chosen: [...chosen.values()], all: stuck.length };
}

/** The first cases that most of those who practise have not met. */
function nextCases(
  { cases }: Pick<ClassGrid, "cases">,
  rows: readonly ClassRow[],
): readonly LessonCase[] {
  if (rows.length === 0) return [];
  return cases
    .filter((_, column) => {
      const met = rows.filter(({ cells }) => cells[column] !== undefined);
      return 2 * met.length < rows.length;
    })
    .slice(0, MOST_CASES)
    .map((id) => ({ case: id, learners: [], isBeside: false }));
}

/**
 * The next lesson of a class: the cases at which most are stuck, then at which
 * they are stuck worst, then as they stand in the deck; where nobody is stuck,
 * what comes next.
 *
 * Shape: `grid` with its columns in the deck's order, not sorted.
 */
export function nextLesson(grid: ClassGrid): Lesson {
  const practising = grid.rows.filter(
    ({ attendance }) => attendance.kind === "practises",
  );
  const { chosen, all } = stuckCases(grid, practising);
  const next = chosen.length > 0 ? [] : nextCases(grid, practising);
  return {
    kind: chosen.length > 0 ? "stuck" : next.length > 0 ? "next" : "none",
    cases: chosen.length > 0 ? chosen : next,
    stuckCases: all,
    practising: practising.length,
    stuck: [
      ...new Set(
        chosen.flatMap(({ learners }) => learners.map(({ member }) => member)),
      ),
    ],
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
