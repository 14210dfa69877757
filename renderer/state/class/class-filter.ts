/** Which cases of a class are looked at, and in which order they stand. */
import type { CaseId } from "../../../core/cases/case-ids";
import { stageOfCase } from "../../../core/cases/case-table";
import { parseStage, type Stage, STAGES } from "../../../core/cases/stage";
import type { Deck, DeckCase } from "../../../core/deck/deck";

/** Every case that somebody has answered; those of one deck; those answered of one stage. */
export type ClassFilter =
  | { readonly kind: "met" }
  | { readonly kind: "deck"; readonly deck: string }
  | { readonly kind: "stage"; readonly stage: Stage };

/** A filter as a choice's value. */
export function formatClassFilter(filter: ClassFilter): string {
  switch (filter.kind) {
    case "met":
      return "met";
    case "deck":
      return `deck ${filter.deck}`;
    case "stage":
      return `stage ${filter.stage}`;
  }
}

/** The filter that a choice's value stands for; every case where it stands for none. */
export function parseClassFilter(text: string): ClassFilter {
  const space = text.indexOf(" ");
  const rest = text.slice(space + 1);
  if (text.startsWith("deck ")) return { kind: "deck", deck: rest };
  const stage = text.startsWith("stage ") ? parseStage(rest) : undefined;
  return stage === undefined ? { kind: "met" } : { kind: "stage", stage };
}

/** Decks' cases, each once, as the first of them has it. */
export function eachOnce(cases: readonly DeckCase[]): readonly DeckCase[] {
  const first = new Map<CaseId, DeckCase>();
  for (const one of cases) if (!first.has(one.case)) first.set(one.case, one);
  return [...first.values()];
}

/** Cases in the order of decks, then of the solve, each once. Shape: `order` has each once. */
export function inDeckOrder(
  cases: Iterable<CaseId>,
  order: readonly DeckCase[],
): readonly CaseId[] {
  const places = new Map(order.map((one, place) => [one.case, place]));
  const placeOf = (id: CaseId) =>
    places.get(id) ?? order.length + STAGES.indexOf(stageOfCase(id));
  return [...new Set(cases)].toSorted((a, b) => placeOf(a) - placeOf(b));
}

/** The cases that a filter lets through, in their order. */
export function filteredCases(
  filter: ClassFilter,
  met: ReadonlySet<CaseId>,
  decks: readonly Deck[],
  order: readonly DeckCase[],
): readonly CaseId[] {
  switch (filter.kind) {
    case "met":
      return inDeckOrder(met, order);
    case "deck":
      return (
        decks
          .find(({ id }) => id === filter.deck)
          ?.cases.map((one) => one.case) ?? []
      );
    case "stage":
      return inDeckOrder(
        [...met].filter((id) => stageOfCase(id) === filter.stage),
        order,
      );
  }
}
