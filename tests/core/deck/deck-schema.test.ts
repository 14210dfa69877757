import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseDeck } from "../../../core/deck/deck-schema";
import type { DeckFault } from "../../../core/deck/deck-fault";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { ARBITRARY_DECK } from "./arbitrary-decks";

const GOOD = {
  id: "starter-edges",
  name: "A",
  description: "",
  cases: [{ case: "E8a", target: 20 }],
  newPerRound: 2,
};

const withCase = (fields: object) => ({
  ...GOOD,
  cases: [...GOOD.cases, { case: "C1", target: 20, ...fields }],
});

const REFUSED: readonly (readonly [
  what: string,
  row: unknown,
  fault: Partial<DeckFault>,
])[] = [
  ["no row", null, { code: "wrong-type", path: [] }],
  ["no cases", { ...GOOD, cases: undefined }, { code: "wrong-type" }],
  ["no id", { name: "A" }, { code: "missing-field", path: ["id"] }],
  [
    "an unknown case",
    { ...GOOD, cases: [{ case: "Z1", target: 20 }] },
    { code: "unknown-value", path: ["cases", 0, "case"], found: "Z1" },
  ],
  [
    "an endless target",
    withCase({ target: Infinity }),
    { code: "out-of-range", path: ["cases", 1, "target"] },
  ],
  [
    "a target that is no number",
    withCase({ target: NaN }),
    { code: "wrong-type", path: ["cases", 1, "target"] },
  ],
  [
    "an unknown kind of way",
    withCase({ way: { kind: "film" } }),
    { code: "wrong-type", path: ["cases", 1, "way", "kind"], found: "film" },
  ],
  [
    "an unknown school",
    withCase({ way: { kind: "school", school: "none" } }),
    { code: "unknown-value", path: ["cases", 1, "way", "school"] },
  ],
  [
    "a way that is not notation",
    withCase({ way: { kind: "turns", turns: "R Q" } }),
    { code: "way-not-notation", path: ["cases", 1, "way"] },
  ],
  [
    "more others placed than the case allows",
    { ...GOOD, cases: [{ case: "E8a", target: 20, placed: 3 }] },
    { code: "too-many-placed", path: ["cases", 0, "placed"] },
  ],
  [
    "a case twice",
    withCase({ case: "E8a" }),
    { code: "duplicate-case", path: ["cases", 1, "case"] },
  ],
  [
    "an impossible day",
    { ...GOOD, ceiling: { everyDays: 7, until: "2027-13-01" } },
    { code: "impossible-day", path: ["ceiling", "until"] },
  ],
];

describe("a stored deck", () => {
  it("is read as it was kept", () => {
    for (const deck of STARTER_DECKS)
      expect(parseDeck(deck)).toEqual({ ok: true, value: deck });
    fc.assert(
      fc.property(ARBITRARY_DECK, (deck) => {
        expect(parseDeck(deck)).toEqual({ ok: true, value: deck });
      }),
    );
  });

  it("leaves out what no deck has", () => {
    expect(parseDeck({ ...GOOD, sound: true })).toEqual({
      ok: true,
      value: GOOD,
    });
  });

  it.each(REFUSED)("is refused with %s", (_what, row, error) => {
    expect(parseDeck(row)).toMatchObject({ ok: false, error });
  });

  it.each(["2028-02-29", "2026-12-31"])("may run until %s", (until) => {
    expect(parseDeck({ ...GOOD, ceiling: { everyDays: 7, until } }).ok).toBe(
      true,
    );
  });

  it.each(["2027-02-29", "2026-04-31", "2026-00-10"])(
    "may not run until %s",
    (until) => {
      expect(parseDeck({ ...GOOD, ceiling: { everyDays: 7, until } }).ok).toBe(
        false,
      );
    },
  );
});
