import type { PlantedFault } from "../planted-fault";

/** Faults in a coach's decks, and what learners are asked and told by them. */
export const DECK_FAULTS: readonly PlantedFault[] = [
  {
    name: "a typed way is taken when it answers its first position",
    file: "core/deck/check-way.ts",
    find: "const count = Math.max(positions, variants.length);",
    replace: "const count = Math.min(1, positions * variants.length);",
    tests: [
      "tests/core/deck/check-way.test.ts",
      "tests/core/deck/typed-ways.test.ts",
    ],
  },
  {
    name: "a deck's way that does not answer is taught all the same",
    file: "renderer/state/practise/deck-way.ts",
    find: "return own !== undefined && answers",
    replace: "return own !== undefined && (answers || true)",
    tests: ["tests/renderer/practise/own-deck-practised.test.ts"],
  },
  {
    name: "a deck file with the same case twice is read",
    file: "core/deck/deck-contradiction.ts",
    find: "if (seen.has(deckCase.case))",
    replace: "if (seen.has(deckCase.case) && place < 0)",
    tests: ["tests/core/deck/deck-file.test.ts"],
  },
  {
    name: "undoing an edit of a deck loses what was undone",
    file: "core/deck/edit-history.ts",
    find: "undone: [...history.undone, { label: step.label, value: history.value }],",
    replace: "undone: [{ label: step.label, value: history.value }],",
    tests: ["tests/core/deck/edit-history.test.ts"],
  },
  {
    name: "a learner is not told what changed in a deck that said nothing at first",
    file: "renderer/state/deck-news.svelte.ts",
    find: "return this.#see((deck) => !unread.includes(deck.id));",
    replace: "return this.#see((deck) => unread.includes(deck.id + deck.id));",
    tests: ["tests/renderer/deck-news.test.ts"],
  },
];
