import { describe, expect, it } from "vitest";
import type { Deck } from "../../../core/deck/deck";
import { formatDeckFile } from "../../../core/deck/deck-file";
import { changeCase, moveCase } from "../../../core/deck/deck-edits";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { present } from "../../../core/invariant";
import { ok } from "../../../core/result";
import type { ReadTextFile } from "../../../renderer/platform/files";
import {
  arrivedDeck,
  type DeckArrival,
  deckArrival,
} from "../../../renderer/state/deck-arrival";
import { changesInWords } from "../../../renderer/state/deck-words";
import { newDeckInWords } from "../../../renderer/state/new-deck-words";

const ID = "0b1e5d0e-7c3d-4c7e-9c3b-2f6b1d1a0001";
const corners = present(STARTER_DECKS[1], "there are three");
const mine: Deck = { ...corners, id: ID, name: "Tuesdays" };
const READING = {
  naming: { first: "white", last: "yellow", hold: "up" },
  notation: "both",
} as const;

function file(text: string): ReadTextFile {
  return ok({ name: "a.turnwise-deck", text });
}

function arrival(text: string, decks: readonly Deck[]): DeckArrival {
  const arrived = deckArrival(file(text), decks);
  if (!arrived.ok) throw new Error(arrived.error.reason);
  return arrived.value;
}

describe("a deck file that arrives", () => {
  it("is a new deck under its own id where nobody has it", () => {
    const arrived = arrival(formatDeckFile(mine), STARTER_DECKS);
    expect(arrived.revises).toBeUndefined();
    expect(arrivedDeck(arrived, STARTER_DECKS, { asNew: false })).toEqual(mine);
  });

  it("revises the deck with its id, and is another one where that is wanted", () => {
    const decks = [...STARTER_DECKS, mine];
    const moved = moveCase(mine, 0, 2);
    if (!moved.ok) throw new Error(moved.error.code);
    const changed = changeCase(moved.value, "C1", { target: 9 });
    if (!changed.ok) throw new Error(changed.error.code);
    const arrived = arrival(formatDeckFile(changed.value), decks);
    expect(arrived.revises).toBe(mine);
    expect(changesInWords(arrived.changes, READING)).toEqual([
      "Moved: Under its home, white on the front (corner), now third; it was first.",
      "Under its home, white on the front (corner): target 9 seconds; it was 20 seconds.",
    ]);
    expect(arrivedDeck(arrived, decks, { asNew: false })).toEqual(
      changed.value,
    );
    const other = arrivedDeck(arrived, decks, { asNew: true });
    expect(other).toEqual({ ...changed.value, id: other.id });
    expect(other.id).not.toBe(ID);
  });

  it("never takes a starter deck's place, whatever id it says", () => {
    const arrived = arrival(formatDeckFile(corners), STARTER_DECKS);
    expect(arrived.revises).toBeUndefined();
    const taken = arrivedDeck(arrived, STARTER_DECKS, { asNew: false });
    expect(taken.id).not.toBe(corners.id);
    expect(taken.cases).toEqual(corners.cases);
  });

  it("gets an id where the file has none, and names the cases that nobody knows", () => {
    const text = `{"turnwise": "deck", "version": 1, "name": "By hand",
      "cases": [{"case": "C1"}, {"case": "X9"}, {"case": "E1"}]}`;
    const arrived = arrival(text, []);
    expect(arrived.unknownCases).toEqual([{ id: "X9", index: 1 }]);
    expect(arrivedDeck(arrived, [], { asNew: false }).id).toMatch(
      /^[0-9a-f-]{36}$/,
    );
    expect(newDeckInWords(arrived.draft, READING)).toEqual([
      "First-layer edges, 1: Under its home, white on the bottom.",
      "First-layer corners, 1: Under its home, white on the front.",
      "New cases a round: at most 2.",
    ]);
  });

  it("says in short sentences what a new deck asks for, and what its hold means", () => {
    const asked = arrival(
      formatDeckFile({
        ...mine,
        hold: "down",
        newPerRound: 3,
        stages: ["first-layer-corners", "first-layer-edges"],
        ceiling: { everyDays: 7, until: "2027-02-01" },
        cases: [
          {
            case: "C1",
            target: 20,
            way: { kind: "school", school: "shortest" },
            note: "Look.",
          },
          { case: "C2", target: 20, note: "Look again.", home: "front" },
          { case: "C3", target: 20, placed: 0, answerWays: ["my-cube"] },
        ],
      }),
      [],
    );
    expect(newDeckInWords(asked.draft, READING).slice(2)).toEqual([
      "1 case has a way of its own.",
      "2 cases have a note to the learner.",
      "2 cases are asked in a special way.",
      "1 case allows only some ways of answering.",
      "New cases a round: at most 3.",
      "Order of the stages: first-layer corners, then first-layer edges.",
      "It is held with the first layer down. What is known of a case held the other way does not count there, so such a case begins new.",
      "Each case comes at least every 7 days until 1 February 2027.",
    ]);
  });

  it("says what another hold means for what is remembered", () => {
    const decks = [...STARTER_DECKS, mine];
    const arrived = arrival(formatDeckFile({ ...mine, hold: "down" }), decks);
    expect(changesInWords(arrived.changes, READING)).toEqual([
      "Hold: first layer down; it was as the learner likes. What is known of a case held the other way does not count there, so such a case begins new.",
    ]);
  });

  it("is refused with the line, the letter and what to do", () => {
    const text = `{\n  "turnwise": "deck", "version": 1, "name": "Twice",\n  "cases": [{"case": "C1"},\n  {"case": "C1"}]}`;
    expect(deckArrival(file(text), [])).toEqual({
      ok: false,
      error: {
        file: "a.turnwise-deck",
        reason:
          "Line 4, letter 12: The case C1 is in the deck twice. Take one out.",
      },
    });
  });

  it.each([
    ["file-too-large", /less than a megabyte/],
    ["file-not-text", /no text/],
    ["file-not-read", /another folder/],
  ] as const)("is refused unread: %s", (code, reason) => {
    const arrived = deckArrival(
      { ok: false, error: { code, name: "b.bin" } },
      [],
    );
    expect(arrived).toMatchObject({ ok: false, error: { file: "b.bin" } });
    expect(!arrived.ok && arrived.error.reason).toMatch(reason);
  });
});
