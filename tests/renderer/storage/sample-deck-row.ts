import type { Deck } from "../../../core/deck/deck";

/** The id of a deck for tests. */
export const DECK_ID = "0b9f6e0e-5f0a-4c1e-9d57-3f1f6f3c2a11";

/** A deck as it lies in the store, under a name. */
export function sampleDeckRow(name: string, id: string = DECK_ID) {
  const deck: Deck = {
    id,
    name,
    description: "",
    newPerRound: 2,
    cases: [{ case: "E1", target: 8 }],
  };
  return { id, createdAt: 1, deck };
}
