/** Whose sheets may be entered on this machine: its learners', and those of whoever shared results with it. */
import type { Learner } from "../../../core/memory/learner";
import { now } from "../../platform/clock";
import type { Classmate } from "../../storage/classmates";
import { withNamesApart } from "../class/class-log";

/** The learners in their order, then those known by shared results alone, as the coach calls them; no two of one name. */
export function sheetChildren(
  learners: readonly Learner[],
  classmates: readonly Classmate[],
): readonly Learner[] {
  const others = classmates
    .filter(({ id }) => learners.every((one) => one.id !== id))
    .map(({ id, name, nickname }) => ({
      id,
      name: nickname ?? name,
      createdAt: now(),
    }));
  const all = [...learners, ...others];
  const apart = new Map(withNamesApart(all).map((one) => [one.id, one]));
  return all.map((one) => apart.get(one.id) ?? one);
}

/** The learner that somebody known by shared results alone becomes, under the name they share under; undefined: they are one already, or unknown. */
export function newcomerOf(
  id: string,
  learners: readonly Learner[],
  classmates: readonly Classmate[],
): Learner | undefined {
  if (learners.some((one) => one.id === id)) return undefined;
  const classmate = classmates.find((one) => one.id === id);
  return classmate && { id, name: classmate.name, createdAt: now() };
}
