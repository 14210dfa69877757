/** Which of the cases at which somebody is stuck get a seat in the lesson. */
import type { CaseId } from "../cases/case-ids";
import { stageOfCase } from "../cases/case-table";
import type { ClassGrid, ClassRow } from "./class-grid";
import { mixedUpWith, mixUpsOf } from "./mix-ups";
import { gravity, type Stuck } from "./stuck";

/** A learner at a case of the lesson. */
export interface StuckLearner {
  /** The learner's id. */
  readonly member: string;
  readonly stuck: Stuck;
}

/** A case at which somebody is stuck. */
export interface StuckCase {
  readonly case: CaseId;
  /** Who, the gravest first. */
  readonly learners: readonly StuckLearner[];
}

/** A case that has a seat. */
export interface SeatedCase extends StuckCase {
  /** The case for which it is there, since the two are mixed up; absent: it is there for its own sake. */
  readonly besides?: CaseId;
}

/** How seats are given. */
export interface SeatRules {
  /** How many there are. */
  readonly most: number;
  /** How many must be stuck at a case. */
  readonly enough: number;
}

/** Up to so many who practise are a group of which each may have a seat. */
const SMALL_GROUP = 5;

/** In a group of more than two, one child's cases that nobody else needs take so many seats at most: the others sit by. */
const SEATS_ALONE = 2;

/**
 * How many must be stuck at a case that is taught to all: one in a small
 * group; in a larger one two, and a tenth of it. One learner may be unlucky,
 * several at the same case are not.
 */
export function enoughStuck(practising: number): number {
  return practising <= SMALL_GROUP
    ? 1
    : Math.max(2, Math.ceil(practising / 10));
}

/** All cases at which somebody is stuck, in the grid's order. */
export function stuckCases(
  { cases }: Pick<ClassGrid, "cases">,
  rows: readonly ClassRow[],
): readonly StuckCase[] {
  return cases
    .map((id, column) => ({
      case: id,
      learners: rows
        .flatMap(({ member, cells }) => {
          const stuck = cells[column]?.stuck;
          return stuck === undefined ? [] : [{ member: member.id, stuck }];
        })
        .toSorted((a, b) => gravity(b.stuck) - gravity(a.stuck)),
    }))
    .filter(({ learners }) => learners.length > 0);
}

/** Better first: stuck at by more, then by more who have no case yet, then worse. Shape: `served` has the ids of who has one. */
export function compareSeats(
  a: StuckCase,
  b: StuckCase,
  served: ReadonlySet<string>,
): number {
  const unserved = ({ learners }: StuckCase) =>
    learners.filter(({ member }) => !served.has(member)).length;
  const worst = ({ learners }: StuckCase) =>
    learners.reduce((sum, { stuck }) => sum + gravity(stuck), 0);
  return (
    b.learners.length - a.learners.length ||
    unserved(b) - unserved(a) ||
    worst(b) - worst(a)
  );
}

/** Cases of one stage together, where the first of them stands. */
export function byStage<T extends Pick<StuckCase, "case">>(
  cases: readonly T[],
): readonly T[] {
  const stages = [...new Set(cases.map((one) => stageOfCase(one.case)))];
  return stages.flatMap((stage) =>
    cases.filter((one) => stageOfCase(one.case) === stage),
  );
}

/** The cases that get a seat, in the order in which they are taught. */
export function seats(
  stuck: readonly StuckCase[],
  rows: readonly ClassRow[],
  { most, enough }: SeatRules,
): readonly SeatedCase[] {
  const mixUps = mixUpsOf(rows);
  const seated = new Map<CaseId, SeatedCase>();
  const served = new Set<string>();
  const alone = new Map<string, number>();
  const seat = (one: SeatedCase) => {
    seated.set(one.case, one);
    for (const { member } of one.learners) served.add(member);
  };
  /** Whether a case is one child's alone who has had seats enough. */
  const isTooMuch = ({ learners: [only, second] }: StuckCase) =>
    rows.length > 2 &&
    only !== undefined &&
    second === undefined &&
    (alone.get(only.member) ?? 0) >= SEATS_ALONE;
  const isOpen = (one: StuckCase) =>
    one.learners.length >= enough && !seated.has(one.case) && !isTooMuch(one);
  while (seated.size < most) {
    const [best] = stuck
      .filter(isOpen)
      .toSorted((a, b) => compareSeats(a, b, served));
    if (best === undefined) break;
    seat(best);
    const [only, second] = best.learners;
    if (only !== undefined && second === undefined)
      alone.set(only.member, (alone.get(only.member) ?? 0) + 1);
    const other = mixedUpWith(best.case, best.learners.length, mixUps);
    if (other === undefined || seated.has(other) || seated.size >= most)
      continue;
    const beside = stuck.find((one) => one.case === other);
    seat({
      ...(beside ?? { case: other, learners: [] }),
      besides: best.case,
    });
  }
  return byStage([...seated.values()]);
}
