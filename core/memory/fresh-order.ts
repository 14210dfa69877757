/**
 * In what order new cases are met: the decks', but look-alikes apart. Twins
 * and cases that face another way in the same place are taken for each other
 * the more the closer together they are met.
 *
 * A day brings what is like nothing met just now first, as far as the next few
 * cases of the deck allow it: beyond them a coach's order counts more. Where
 * all of those are alike to something they come in their order, but never two
 * in one round.
 */
import type { CaseId } from "../cases/case-ids";

/** How far down the deck a new case is looked for that is like none met just now. */
const LOOK_AHEAD = 6;

/** Whether two cases are easily taken for each other. */
export type AreAlike = (a: CaseId, b: CaseId) => boolean;

/** New cases as a day should bring them. Shape: `fresh` in the decks' order; `met` those met lately or not settled yet. */
export function freshInOrder<T>(
  fresh: readonly T[],
  caseOf: (one: T) => CaseId,
  met: readonly CaseId[],
  areAlike: AreAlike,
): readonly T[] {
  const left = [...fresh];
  const known = [...met];
  const order: T[] = [];
  while (left.length > 0) {
    const free = left
      .slice(0, LOOK_AHEAD)
      .findIndex((one) => !known.some((other) => areAlike(caseOf(one), other)));
    const [next] = left.splice(Math.max(0, free), 1);
    if (next === undefined) break;
    order.push(next);
    known.push(caseOf(next));
  }
  return order;
}

/** Of new cases in a day's order, those that one round can bring: no two alike. */
export function freshOfRound<T extends { readonly case: CaseId }>(
  fresh: readonly T[],
  count: number,
  areAlike: AreAlike,
): readonly T[] {
  const chosen: T[] = [];
  for (const one of fresh) {
    if (chosen.length >= count) break;
    if (!chosen.some((other) => areAlike(one.case, other.case)))
      chosen.push(one);
  }
  return chosen;
}
