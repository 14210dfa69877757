import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Deck } from "../../../core/deck/deck";
import { type DeckChange, deckChanges } from "../../../core/deck/deck-changes";
import { ARBITRARY_DECK } from "./arbitrary-decks";

const BEFORE: Deck = {
  id: "0c9e2f61-6a3d-4f57-9a43-0d6d0e5c8a11",
  name: "Monday",
  description: "",
  newPerRound: 2,
  ceiling: { everyDays: 7, until: "2027-02-01" },
  cases: [
    { case: "C1", target: 20 },
    { case: "C2", target: 20, note: "Turn the cube." },
    { case: "C3", target: 30 },
    { case: "C4", target: 30 },
  ],
};

const caseField = (
  id: string,
  field: string,
  before: unknown,
  after: unknown,
) => ({ code: "case-field", case: id, field, before, after }) as const;

/** The deck that the changes make of another one. */
function withChanges(
  before: Deck,
  changes: readonly DeckChange[],
  after: Deck,
) {
  const fields = new Map<string, unknown>(Object.entries(before));
  const cases = new Map<string, Map<string, unknown>>(
    before.cases.map((entry) => [entry.case, new Map(Object.entries(entry))]),
  );
  const gone = new Set<string>();
  const put: { readonly id: string; readonly at: number }[] = [];
  for (const change of changes) {
    if (change.code === "deck-field") fields.set(change.field, change.after);
    if (change.code === "case-field")
      cases.get(change.case)?.set(change.field, change.after);
    if (change.code === "case-removed") gone.add(change.case);
    if (change.code === "case-moved")
      put.push({ id: change.case, at: change.to });
    if (change.code === "case-added") {
      put.push({ id: change.case, at: change.at });
      const added = after.cases.find((entry) => entry.case === change.case);
      cases.set(change.case, new Map(Object.entries(added ?? {})));
    }
  }
  let order = before.cases
    .map((entry): string => entry.case)
    .filter((id) => !gone.has(id) && !put.some((moved) => moved.id === id));
  for (const { id, at } of put.toSorted((a, b) => a.at - b.at))
    order = order.toSpliced(at, 0, id);
  const plain = (map: ReadonlyMap<string, unknown>) =>
    Object.fromEntries([...map].filter(([, value]) => value !== undefined));
  return {
    ...plain(fields),
    id: after.id,
    cases: order.map((id) =>
      plain(cases.get(id) ?? new Map<string, unknown>()),
    ),
  };
}

describe("what changed in a deck", () => {
  it("is nothing where the same is said", () => {
    expect(deckChanges(BEFORE, structuredClone(BEFORE))).toEqual([]);
    fc.assert(
      fc.property(ARBITRARY_DECK, (deck) => {
        expect(deckChanges(deck, structuredClone(deck))).toEqual([]);
      }),
    );
  });

  it("of a deck that was not there is the deck and all its cases", () => {
    expect(deckChanges(undefined, BEFORE)).toEqual([
      { code: "deck-added", name: "Monday" },
      { code: "case-added", case: "C1", at: 0 },
      { code: "case-added", case: "C2", at: 1 },
      { code: "case-added", case: "C3", at: 2 },
      { code: "case-added", case: "C4", at: 3 },
    ]);
  });

  it("is told field by field and case by case", () => {
    const { ceiling, ...rest } = BEFORE;
    const after: Deck = {
      ...rest,
      name: "Tuesday",
      message: "Hello",
      cases: [
        { case: "C4", target: 30 },
        { case: "C1", target: 15, answerWays: ["my-cube"] },
        { case: "C2", target: 20, way: { kind: "school", school: "first" } },
        { case: "E1", target: 8 },
      ],
    };
    expect(deckChanges(BEFORE, after)).toEqual([
      { code: "deck-field", field: "name", before: "Monday", after: "Tuesday" },
      {
        code: "deck-field",
        field: "message",
        before: undefined,
        after: "Hello",
      },
      {
        code: "deck-field",
        field: "ceiling",
        before: ceiling,
        after: undefined,
      },
      { code: "case-removed", case: "C3", from: 2 },
      { code: "case-moved", case: "C4", from: 3, to: 0 },
      caseField("C1", "target", 20, 15),
      caseField("C1", "answerWays", undefined, ["my-cube"]),
      caseField("C2", "way", undefined, { kind: "school", school: "first" }),
      caseField("C2", "note", "Turn the cube.", undefined),
      { code: "case-added", case: "E1", at: 3 },
    ]);
  });

  it("counts as few cases as possible as moved", () => {
    const [first, ...others] = BEFORE.cases;
    const cases = first === undefined ? others : [...others, first];
    expect(deckChanges(BEFORE, { ...BEFORE, cases })).toEqual([
      { code: "case-moved", case: "C1", from: 0, to: 3 },
    ]);
  });

  it("says enough to make the new deck of the old one", () => {
    // The new deck keeps some of the old one's cases, in any order.
    const pairs = fc.tuple(ARBITRARY_DECK, ARBITRARY_DECK).chain(([a, b]) =>
      fc.shuffledSubarray([...a.cases]).map((kept) => {
        const own = b.cases.filter(
          (entry) => !kept.some((other) => other.case === entry.case),
        );
        const cases = kept.flatMap((entry, i) => [
          entry,
          ...own.slice(i, i + 1),
        ]);
        return [a, { ...b, cases }] as const;
      }),
    );
    fc.assert(
      fc.property(
        fc.oneof(pairs, fc.tuple(ARBITRARY_DECK, ARBITRARY_DECK)),
        ([before, after]) => {
          const changes = deckChanges(before, after);
          expect(withChanges(before, changes, after)).toEqual(after);
        },
      ),
      { numRuns: 300 },
    );
  });
});
