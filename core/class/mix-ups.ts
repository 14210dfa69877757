/** Which cases of a lesson belong beside another, because they are mixed up with it. */
import { areAlike } from "../cases/alike";
import type { CaseId } from "../cases/case-ids";
import type { ClassRow } from "./class-grid";

/** Two cases mixed up: by whom, and how often in all. */
interface MixUp {
  readonly learners: Set<string>;
  times: number;
}

/** Cases with those that they are mixed up with, each pair under both. */
export type MixUps = ReadonlyMap<CaseId, ReadonlyMap<CaseId, MixUp>>;

/** Who of those who are stuck mixed up which two cases and how often, in either direction. */
export function mixUpsOf(rows: readonly ClassRow[]): MixUps {
  const mixUps = new Map<CaseId, Map<CaseId, MixUp>>();
  const add = (one: CaseId, other: CaseId, learner: string, times: number) => {
    const own = mixUps.get(one) ?? new Map<CaseId, MixUp>();
    const known = own.get(other) ?? { learners: new Set<string>(), times: 0 };
    known.learners.add(learner);
    known.times += times;
    mixUps.set(one, own.set(other, known));
  };
  for (const { member, cells } of rows)
    for (const cell of cells) {
      if (cell?.stuck?.takenFor === undefined) continue;
      const { case: id, takenFor } = cell.record;
      for (const { case: other, times } of takenFor) {
        add(id, other, member.id, times);
        add(other, id, member.id, times);
      }
    }
  return mixUps;
}

/**
 * The case that one is mixed up with: it belongs into the same lesson, since
 * who mixes two up has to see both. It takes another case's seat, so as many
 * children must do it as are a third of those who are stuck there, however
 * often one of them does; and twice in the class is no accident, while once is
 * enough for two that look alike.
 */
export function mixedUpWith(
  id: CaseId,
  stuckThere: number,
  mixUps: MixUps,
): CaseId | undefined {
  const [most] = [...(mixUps.get(id) ?? [])].toSorted(
    ([, a], [, b]) => b.learners.size - a.learners.size || b.times - a.times,
  );
  if (most === undefined) return undefined;
  const [other, { learners, times }] = most;
  if (3 * learners.size < stuckThere) return undefined;
  return times >= 2 || areAlike(id, other) ? other : undefined;
}
