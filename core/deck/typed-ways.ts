/** Typed ways in a deck from elsewhere: nobody has played them yet. */
import type { CaseId } from "../cases/case-ids";
import type { RandomSource } from "../random-source";
import { checkWay } from "./check-way";
import type { DeckCase } from "./deck";

/**
 * The cases whose typed way does not answer them as the deck asks them, found
 * out by playing it; about 10 ms each.
 */
export function casesWithBadWays(
  cases: readonly DeckCase[],
  random: RandomSource,
): readonly CaseId[] {
  return cases.flatMap(({ case: id, way, placed }) => {
    if (way?.kind !== "turns") return [];
    const trial = placed === undefined ? {} : { placed };
    return checkWay(id, way.turns, random, trial).ok ? [] : [id];
  });
}

/** The cases without the ways of some of them: what is taught is then left to the app. */
export function withoutWays(
  cases: readonly DeckCase[],
  ids: readonly CaseId[],
): readonly DeckCase[] {
  return cases.map((entry) => {
    const { way, ...rest } = entry;
    return way !== undefined && ids.includes(entry.case) ? rest : entry;
  });
}
