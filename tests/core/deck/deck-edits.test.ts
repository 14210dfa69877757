import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import type { Deck } from "../../../core/deck/deck";
import {
  addCase,
  addCases,
  changeCase,
  changeDeck,
  copyDeck,
  type EditedDeck,
  moveCase,
  removeCase,
  renameDeck,
} from "../../../core/deck/deck-edits";
import { formatDeckFile, parseDeckFile } from "../../../core/deck/deck-file";
import { ARBITRARY_DECK } from "./arbitrary-decks";

const DECK: Deck = {
  id: "0c9e2f61-6a3d-4f57-9a43-0d6d0e5c8a11",
  name: "Monday",
  description: "",
  message: "Hello",
  newPerRound: 2,
  cases: [
    { case: "C1", target: 20, note: "Look underneath." },
    { case: "C2", target: 20 },
    { case: "E8a", target: 12 },
  ],
};

const ids = (edited: EditedDeck) =>
  edited.ok ? edited.value.cases.map((c) => c.case).join() : edited.error.code;

describe("editing a deck", () => {
  it("adds a case at a place or at the end, with its starting target", () => {
    expect(ids(addCase(DECK, "S1"))).toBe("C1,C2,E8a,S1");
    expect(ids(addCase(DECK, "S1", 0))).toBe("S1,C1,C2,E8a");
    expect(ids(addCase(DECK, "S1", 3))).toBe("C1,C2,E8a,S1");
    expect(addCase({ ...DECK, cases: [] }, "S1")).toMatchObject({
      value: { cases: [{ case: "S1", target: 65 }] },
    });
  });

  it("adds many cases at the end, those it has already left out", () => {
    expect(ids(addCases(DECK, ["C2", "S1", "C3"]))).toBe("C1,C2,E8a,S1,C3");
    const all = casesOfStage("last-layer-placed").map(({ id }) => id);
    const edited = addCases(DECK, all);
    expect(edited.ok && edited.value.cases).toHaveLength(3 + 21);
    expect(edited.ok && edited.value.cases.at(-1)?.target).toBe(
      caseEntry(all[0] ?? "E1").targets.starting,
    );
  });

  it("does not take more cases than a deck may hold", () => {
    const all = casesOfStage("last-layer-whole").map(({ id }) => id);
    expect(ids(addCases(DECK, all))).toBe("list-too-long");
  });

  it("removes and moves a case", () => {
    expect(ids(removeCase(DECK, "C2"))).toBe("C1,E8a");
    expect(ids(moveCase(DECK, 0, 2))).toBe("C2,E8a,C1");
    expect(ids(moveCase(DECK, 2, 0))).toBe("E8a,C1,C2");
    expect(ids(moveCase(DECK, 1, 1))).toBe("C1,C2,E8a");
  });

  it("changes the fields of a case, and leaves them to the app again", () => {
    const way = { kind: "turns", turns: "D' R' D R" } as const;
    const changed = changeCase(DECK, "C1", { way, placed: 2, note: undefined });
    expect(changed).toMatchObject({ ok: true });
    expect(changed.ok && changed.value.cases[0]).toEqual({
      case: "C1",
      target: 20,
      way,
      placed: 2,
    });
  });

  it("changes the fields of a deck; a text with nothing in it is none", () => {
    const changed = changeDeck(DECK, { message: " \n", hold: "down" });
    expect(changed).toEqual({
      ok: true,
      value: {
        ...Object.fromEntries(
          Object.entries(DECK).filter(([key]) => key !== "message"),
        ),
        hold: "down",
      },
    });
    expect(changeDeck(DECK, { description: "" }).ok).toBe(true);
    expect(changeCase(DECK, "C1", { note: "" })).toMatchObject({
      value: { cases: [{ case: "C1", target: 20 }, {}, {}] },
    });
  });

  it("renames a deck without the spaces about its name", () => {
    expect(renameDeck(DECK, " Tuesday ")).toEqual({
      ok: true,
      value: { ...DECK, name: "Tuesday" },
    });
  });

  it("copies a deck under another id", () => {
    const id = "11111111-2222-3333-4444-555555555555";
    expect(copyDeck(DECK, { id, name: "Copy" })).toEqual({
      ok: true,
      value: { ...DECK, id, name: "Copy" },
    });
  });

  const refused: readonly (readonly [string, EditedDeck, object])[] = [
    ["a blank name", renameDeck(DECK, "  "), { code: "blank-text" }],
    [
      "a name of two lines",
      renameDeck(DECK, "a\nb"),
      { code: "unwanted-character", path: ["name"], found: "\n" },
    ],
    [
      "no name at all",
      changeDeck(DECK, { name: undefined }),
      { code: "missing-field", path: ["name"] },
    ],
    [
      "a foreign id",
      copyDeck(DECK, { id: "1", name: "A" }),
      { code: "malformed-id" },
    ],
    [
      "a case twice",
      addCase(DECK, "C2"),
      { code: "duplicate-case", path: ["cases", 3, "case"] },
    ],
    [
      "a place behind the end",
      addCase(DECK, "S1", 4),
      { code: "no-such-place", place: 4 },
    ],
    [
      "half a place",
      addCase(DECK, "S1", 0.5),
      { code: "no-such-place", place: 0.5 },
    ],
    [
      "a move from nowhere",
      moveCase(DECK, -1, 0),
      { code: "no-such-place", place: -1 },
    ],
    [
      "a move to nowhere",
      moveCase(DECK, 0, 3),
      { code: "no-such-place", place: 3 },
    ],
    [
      "removing what is not there",
      removeCase(DECK, "S1"),
      { code: "case-not-in-deck", case: "S1" },
    ],
    [
      "changing what is not there",
      changeCase(DECK, "S1", {}),
      { code: "case-not-in-deck", case: "S1" },
    ],
    [
      "more placed than the case allows",
      changeCase(DECK, "E8a", { placed: 3 }),
      { code: "too-many-placed", path: ["cases", 2, "placed"] },
    ],
    [
      "no way of answering",
      changeCase(DECK, "C1", { answerWays: [] }),
      { code: "empty-list" },
    ],
    [
      "a target of an hour",
      changeCase(DECK, "C1", { target: 3600 }),
      { code: "out-of-range" },
    ],
    [
      "a way that cannot be read",
      changeCase(DECK, "C1", { way: { kind: "turns", turns: "Q" } }),
      { code: "way-not-notation", path: ["cases", 0, "way"] },
    ],
    [
      "a ceiling until a day that never comes",
      changeDeck(DECK, { ceiling: { everyDays: 7, until: "2027-02-30" } }),
      { code: "impossible-day", path: ["ceiling", "until"] },
    ],
  ];

  it.each(refused)("refuses %s", (_what, edited, error) => {
    expect(edited).toMatchObject({ ok: false, error });
  });

  it("leaves a deck behind that a file can hold, whatever was done to it", () => {
    const anyId = fc.constantFrom(...FIRST_LAYER_IDS);
    const place = fc.integer({ min: -1, max: 8 });
    const edit = fc.oneof(
      fc.tuple(anyId, place).map(
        ([id, at]) =>
          (d: Deck) =>
            addCase(d, id, at),
      ),
      anyId.map((id) => (d: Deck) => removeCase(d, id)),
      fc.tuple(place, place).map(
        ([a, b]) =>
          (d: Deck) =>
            moveCase(d, a, b),
      ),
      fc.string().map((name) => (d: Deck) => renameDeck(d, name)),
      fc.string().map((message) => (d: Deck) => changeDeck(d, { message })),
      fc.tuple(anyId, fc.double(), fc.constantFrom<0 | 3>(0, 3)).map(
        ([id, target, placed]) =>
          (d: Deck) =>
            changeCase(d, id, { target, placed }),
      ),
    );
    fc.assert(
      fc.property(ARBITRARY_DECK, fc.array(edit), (start, edits) => {
        const before = structuredClone(start);
        let deck = start;
        for (const make of edits) {
          const edited = make(deck);
          if (edited.ok) deck = edited.value;
        }
        expect(start).toEqual(before);
        expect(parseDeckFile(formatDeckFile(deck))).toEqual({
          ok: true,
          value: { deck, unknownCases: [] },
        });
      }),
    );
  });

  it("takes every case there is", () => {
    let deck: Deck = { ...DECK, cases: [] };
    for (const id of FIRST_LAYER_IDS) {
      const edited = addCase(deck, id);
      if (edited.ok) deck = edited.value;
    }
    expect(deck.cases).toEqual(
      FIRST_LAYER_IDS.map((id) => ({
        case: id,
        target: caseEntry(id).targets.starting,
      })),
    );
  });
});
