import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areAlike } from "../../../core/cases/alike";
import { type CaseId, FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { freshInOrder, freshOfRound } from "../../../core/memory/fresh-order";

/** Twins. Source: `first-layer.md`. */
const TWINS: readonly (readonly CaseId[])[] = [
  ["C1", "C2"],
  ["C4", "C5"],
];
const isTwin = (a: CaseId, b: CaseId) =>
  TWINS.some((pair) => pair.includes(a) && pair.includes(b));

function order(fresh: readonly CaseId[], met: readonly CaseId[]): string {
  return freshInOrder(fresh, (id) => id, met, isTwin).join(" ");
}

describe("new cases", () => {
  it("come in the deck's order where none are alike", () => {
    expect(order(["E1", "C3", "C1"], [])).toBe("E1 C3 C1");
  });

  it("that are like one met lately, or before them, wait for others", () => {
    expect(order(["C1", "C2", "C3", "C4", "C5"], [])).toBe("C1 C3 C4 C2 C5");
    expect(order(["C1", "C3", "E1"], ["C2"])).toBe("C3 E1 C1");
  });

  it("wait for the next few of the deck, and not for those far down", () => {
    const far: readonly CaseId[] = ["C1", "C2", "C1", "C2", "C1", "C2", "E1"];
    expect(order(far, ["C1", "C2"]).startsWith("C1")).toBe(true);
  });

  it("are all there, each once, whatever they are like", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...FIRST_LAYER_IDS)),
        fc.uniqueArray(fc.constantFrom(...FIRST_LAYER_IDS)),
        (fresh, met) => {
          const sorted = freshInOrder(fresh, (id) => id, met, areAlike);
          expect(sorted.toSorted()).toEqual(fresh.toSorted());
        },
      ),
    );
  });

  it("of one round are never alike", () => {
    const deck = STARTER_DECKS.flatMap(({ cases }) => cases);
    for (const from of deck.keys()) {
      const round = freshOfRound(deck.slice(from), 3, areAlike);
      for (const [i, one] of round.entries())
        for (const other of round.slice(i + 1))
          expect(areAlike(one.case, other.case)).toBe(false);
    }
  });
});
