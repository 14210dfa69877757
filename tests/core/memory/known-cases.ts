/** Cases that are known, what they take and how surely, named or drawn, to rank weak spots from. */
import fc from "fast-check";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { lastLayerTradeTitle } from "../../../core/cases/last-layer-words";
import { present } from "../../../core/invariant";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import type { CaseFacts } from "../../../core/memory/weak-spots";

/** A case that is kept. Units of the target: seconds. */
export function known(id: CaseId, target = 4): PlannedCase {
  return {
    case: id,
    hold: "up",
    deck: "d",
    target,
    memory: "kept",
    times: 1,
  };
}

/** The case of the last layer with a title. */
export function named(
  title: string,
  stage: "last-layer-turned" | "last-layer-placed",
): CaseId {
  const found = casesOfStage(stage).find(({ id }) => {
    const entry = caseEntry(id);
    return (
      entry.group === "last-layer" && lastLayerTradeTitle(entry.shows) === title
    );
  });
  return present(found, `${title} is a case`).id;
}

/** What a case takes and how likely it is known, by case. */
export type Facts = Readonly<
  Record<string, { readonly seconds?: number; readonly chance: number }>
>;

/** The same as weak spots ask for it; a case that is not among them is known for sure. */
export function factsOf(facts: Facts, level = 0.9): CaseFacts {
  return {
    usualSeconds: ({ case: id }) => facts[id]?.seconds,
    chance: ({ case: id }) => facts[id]?.chance ?? 1,
    level,
  };
}

/** Which cases, in order. */
export function ids(
  cases: readonly { readonly planned: PlannedCase }[],
): CaseId[] {
  return cases.map(({ planned }) => planned.case);
}

/** Cases that solves meet more and less often. */
export const POOL: readonly CaseId[] = [
  "E1",
  "E3",
  "E7",
  "E8a",
  "C1",
  "C4",
  "C6",
  "S1",
  named("PLL T", "last-layer-placed"),
  named("PLL H", "last-layer-placed"),
  named("OLL 21", "last-layer-turned"),
];

/** Some of them, due or resting, with what they take and how surely they are known. */
export const KNOWN_CASES = fc
  .uniqueArray(
    fc.record({
      id: fc.constantFrom(...POOL),
      target: fc.double({ min: 1, max: 40, noNaN: true }),
      seconds: fc.option(fc.double({ min: 0.5, max: 90, noNaN: true }), {
        nil: undefined,
      }),
      chance: fc.double({ min: 0.05, max: 1, noNaN: true }),
      isDue: fc.boolean(),
      secondsToAsk: fc.double({ min: 3, max: 120, noNaN: true }),
    }),
    { selector: ({ id }) => id, minLength: 1 },
  )
  .map((rows) => ({
    rows,
    facts: Object.fromEntries(
      rows.map(({ id, seconds, chance }) => [
        id,
        { ...(seconds === undefined ? {} : { seconds }), chance },
      ]),
    ),
    due: rows
      .filter(({ isDue }) => isDue)
      .map(({ id, target }) => known(id, target)),
    resting: rows
      .filter(({ isDue }) => !isDue)
      .map(({ id, target }) => known(id, target)),
    secondsToAsk: ({ case: id }: PlannedCase) =>
      present(
        rows.find((row) => row.id === id),
        "only these are asked",
      ).secondsToAsk,
  }));
