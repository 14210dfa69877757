/**
 * In what order the known cases of a round are asked: mixed, because a row of
 * alike questions is answered without looking. Two look-alikes stand apart
 * while one of them is still settling, and one after the other once both are
 * kept: then telling them apart is what is left to learn.
 */
import type { CaseId } from "../cases/case-ids";
import type { PlannedCase } from "./plan-candidates";

/** Whether two cases are to be asked one after the other. */
function belongTogether(a: PlannedCase, b: PlannedCase): boolean {
  return a.memory === "kept" && b.memory === "kept";
}

/**
 * The same cases in the order in which to ask them: as they come, the most
 * urgent first, moved only as far as look-alikes want it.
 */
export function arranged(
  cases: readonly PlannedCase[],
  areAlike: (a: CaseId, b: CaseId) => boolean,
): readonly PlannedCase[] {
  const left = [...cases];
  const order: PlannedCase[] = [];
  const take = (index: number) => order.push(...left.splice(index, 1));
  while (left.length > 0) {
    const last = order.at(-1);
    const isAlike = (one: PlannedCase) =>
      last !== undefined && areAlike(last.case, one.case);
    const isContrasted =
      last !== undefined &&
      order.length > 1 &&
      areAlike(last.case, order.at(-2)?.case ?? last.case);
    const contrast = left.findIndex(
      (one) => last !== undefined && isAlike(one) && belongTogether(last, one),
    );
    // Two set against each other, not a row of three.
    if (contrast >= 0 && !isContrasted) take(contrast);
    else
      take(
        Math.max(
          0,
          left.findIndex((one) => !isAlike(one)),
        ),
      );
  }
  return order;
}
