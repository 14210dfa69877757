import { expect, it } from "vitest";
import type { Deck } from "../../core/deck/deck";
import { deckChanges } from "../../core/deck/deck-changes";
import { learnerChangesInWords } from "../../renderer/state/deck-news-words";

const BEFORE: Deck = {
  id: "0b9f6e0e-5f0a-4c1e-9d57-3f1f6f3c2a11",
  name: "Monday",
  description: "",
  newPerRound: 2,
  cases: [
    { case: "C1", target: 20 },
    { case: "C2", target: 20 },
    { case: "C3", target: 30 },
  ],
};

it("a learner is told how many cases came, went and are asked differently", () => {
  const after: Deck = {
    ...BEFORE,
    cases: [
      { case: "C2", target: 15, note: "look" },
      { case: "C3", target: 30 },
      { case: "C4", target: 30 },
      { case: "C5", target: 30 },
    ],
  };
  expect(learnerChangesInWords(deckChanges(BEFORE, after))).toBe(
    "Two cases more, one case gone and one case asked differently.",
  );
});

it("a change of the deck alone is told as such", () => {
  const after: Deck = { ...BEFORE, newPerRound: 3 };
  expect(learnerChangesInWords(deckChanges(BEFORE, after))).toBe(
    "The deck comes a little differently now.",
  );
});
