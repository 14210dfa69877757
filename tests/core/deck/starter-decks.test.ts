import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";

// Source: the design's first-layer.md, "starter order" and starting targets;
// order and targets are common practice. S1 and S2 are tasks, not in its table.
const ORDER_AND_TARGETS = {
  "starter-edges":
    "E1 8, E2a 8, E2b 8, E3 15, E4a 15, E4b 15, E7 20, E5a 20, E5b 20, E6a 20, E6b 20",
  "starter-corners": "C1 20, C2 20, C3 30, C4 30, C5 30, C6 35, C7 35",
  "starter-rest":
    "E8a 12, E8b 12, E9a 15, E9b 15, E10 15, E11 20, C8 35, C9 35, C10 35, C11 35, C12 35, C13 35, C14 35, S1 65, S2 65",
};

describe("the starter decks", () => {
  it("have the cases of the table in its order, with its starting targets", () => {
    const written = Object.fromEntries(
      STARTER_DECKS.map((deck) => [
        deck.id,
        deck.cases.map((c) => `${c.case} ${c.target}`).join(", "),
      ]),
    );
    expect(written).toEqual(ORDER_AND_TARGETS);
  });

  it("hold every case exactly once between them", () => {
    const ids = STARTER_DECKS.flatMap((deck) => deck.cases.map((c) => c.case));
    expect(ids.toSorted()).toEqual([...FIRST_LAYER_IDS].toSorted());
  });

  it("bring two or three new cases into a round", () => {
    for (const { newPerRound } of STARTER_DECKS)
      expect([2, 3]).toContain(newPerRound);
  });
});
