/** "Who is stuck where?" as data: a class's learners by cases, on a day. */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import type { LocalDay } from "../memory/review";
import {
  memoryState,
  type MemoryState,
  type ScheduleSettings,
} from "../memory/schedule";
import type { CaseRecord, MemberSummary, TakenFor } from "./member-summary";
import { AWAY_DAYS, slowShare, type Stuck, stuckAt } from "./stuck";

/** One of a class, with what their log says. */
export interface ClassMember {
  /** The learner's id. */
  readonly id: string;
  /** As the coach reads it. */
  readonly name: string;
  readonly summary: MemberSummary;
  readonly schedule: ScheduleSettings;
}

/** A learner's case. */
export interface ClassCell {
  readonly record: CaseRecord;
  readonly state: MemoryState;
  /** How long the case should last from its last day on. Units: days. */
  readonly lasts: number;
  /** Absent: not stuck. */
  readonly stuck?: Stuck;
  readonly isSlow: boolean;
  /** What it is mostly taken for of late; absent: nothing. */
  readonly takenFor?: TakenFor;
}

/** A learner's row. */
export interface ClassRow {
  readonly member: ClassMember;
  /** Whether they practise, have been away for over a week, or have never answered. */
  readonly attendance:
    | { readonly kind: "practises" }
    | { readonly kind: "away"; readonly days: number }
    | { readonly kind: "not-begun" };
  /** One for each column; undefined: not met. */
  readonly cells: readonly (ClassCell | undefined)[];
  /** At how many of the columns' cases they are stuck. */
  readonly stuck: number;
}

/** A class, learners by cases. */
export interface ClassGrid {
  readonly cases: readonly CaseId[];
  readonly rows: readonly ClassRow[];
}

function cellOf(
  record: CaseRecord,
  schedule: ScheduleSettings,
  today: LocalDay,
): ClassCell {
  const { memory } = record;
  const stuck = stuckAt(record, today);
  const [takenFor] = record.takenFor;
  return {
    record,
    state: memoryState(memory, today, schedule),
    lasts: memory === undefined ? 0 : memory.lastsUntil - memory.lastDay,
    ...(stuck === undefined ? {} : { stuck }),
    isSlow: slowShare(record) !== undefined,
    ...(takenFor === undefined ? {} : { takenFor }),
  };
}

/**
 * A learner's records, one a case: where a case was held both ways, the way
 * in which it was answered last is how the learner holds it now.
 */
function recordsOf({ cases }: MemberSummary): ReadonlyMap<CaseId, CaseRecord> {
  const records = new Map<CaseId, CaseRecord>();
  for (const record of cases) {
    const known = records.get(record.case);
    if (known === undefined || record.lastDay > known.lastDay)
      records.set(record.case, record);
  }
  return records;
}

function attendanceOf(
  { lastDay }: MemberSummary,
  today: LocalDay,
): ClassRow["attendance"] {
  if (lastDay === undefined) return { kind: "not-begun" };
  const days = today - lastDay;
  return days < AWAY_DAYS ? { kind: "practises" } : { kind: "away", days };
}

/** A class on a day, rows and columns in the order in which they are given. */
export function classGrid(
  members: readonly ClassMember[],
  cases: readonly CaseId[],
  today: LocalDay,
): ClassGrid {
  const rows = members.map((member): ClassRow => {
    const records = recordsOf(member.summary);
    const cells = cases.map((id) => {
      const record = records.get(id);
      return record === undefined
        ? undefined
        : cellOf(record, member.schedule, today);
    });
    return {
      member,
      attendance: attendanceOf(member.summary, today),
      cells,
      stuck: cells.filter((cell) => cell?.stuck !== undefined).length,
    };
  });
  return { cases, rows };
}

/** How the first row that has met a column's case holds it: how its picture is drawn. Undefined: nobody has met it. */
export function heldInColumn(
  { rows }: Pick<ClassGrid, "rows">,
  column: number,
): Hold | undefined {
  return rows.find(({ cells }) => cells[column] !== undefined)?.cells[column]
    ?.record.hold;
}

/** How many of those who practise are stuck at each column's case. */
export function stuckByCase({ cases, rows }: ClassGrid): readonly number[] {
  const counts = cases.map(() => 0);
  for (const { attendance, cells } of rows) {
    if (attendance.kind !== "practises") continue;
    cells.forEach((cell, i) => {
      if (cell?.stuck !== undefined) counts[i] = (counts[i] ?? 0) + 1;
    });
  }
  return counts;
}

/** Who practises first, who never began last. */
const ATTENDANCE_RANK = { practises: 0, away: 1, "not-begun": 2 } as const;

/** The same grid with what needs looking at first: the cases at which most are stuck, and who is stuck at most; what is even stays as it stood. */
export function stuckFirst(grid: ClassGrid): ClassGrid {
  const counts = stuckByCase(grid);
  const order = grid.cases
    .map((id, column) => ({ id, column, count: counts[column] ?? 0 }))
    .toSorted((a, b) => b.count - a.count);
  const rows = grid.rows
    .toSorted(
      (a, b) =>
        ATTENDANCE_RANK[a.attendance.kind] -
          ATTENDANCE_RANK[b.attendance.kind] || b.stuck - a.stuck,
    )
    .map((row) => ({
      ...row,
      cells: order.map(({ column }) => row.cells[column]),
    }));
  return { cases: order.map(({ id }) => id), rows };
}

/** Every case that somebody of a class has answered. */
export function casesMet(
  members: readonly Pick<ClassMember, "summary">[],
): ReadonlySet<CaseId> {
  const met = new Set<CaseId>();
  for (const { summary } of members)
    for (const record of summary.cases) met.add(record.case);
  return met;
}
