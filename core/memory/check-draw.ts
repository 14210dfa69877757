/**
 * Which cases a check asks: five of a deck, each as likely as any other. Not
 * the ones that are due, nor the ones that were missed: a check tells how much
 * of the deck is known, and a chosen sample would tell of the choice.
 */
import type { CaseId } from "../cases/case-ids";
import { type RandomSource, shuffled } from "../random-source";

/** How many cases a check asks at most. */
export const CHECK_LENGTH = 5;

/**
 * Cases for a check, in the order in which they are asked.
 *
 * Not the same five as `last` where there are others: those are drawn again,
 * which leaves every other choice as likely as every other.
 *
 * Shape: all of them, in a random order, where there are no more than five.
 */
export function drawCheck<One extends { readonly case: CaseId }>(
  random: RandomSource,
  all: readonly One[],
  last: readonly CaseId[],
): readonly One[] {
  const before = new Set(last);
  for (;;) {
    const drawn = shuffled(random, all).slice(0, CHECK_LENGTH);
    const isSame =
      drawn.length === before.size &&
      drawn.every((one) => before.has(one.case));
    if (!isSame || all.length <= CHECK_LENGTH) return drawn;
  }
}
