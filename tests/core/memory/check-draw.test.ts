/**
 * The limit is `chiSquareLimit` at 4.5 standard deviations (its source stands
 * in `chi-square.ts`), with a fixed seed; the control has one case twice.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { CHECK_LENGTH, drawCheck } from "../../../core/memory/check-draw";
import { randomSource, seedFrom } from "../../../core/random-source";
import { chiSquare, evenly } from "../cube/chi-square";

const CASES = FIRST_LAYER_IDS.map((id) => ({ case: id }));
const TWELVE = CASES.slice(0, 12);

/** Which cases are asked first, over many checks: five at once are not independent. */
function firsts(all: typeof CASES): readonly string[] {
  return Array.from({ length: 3000 }, (_, n) => {
    const [first] = drawCheck(randomSource(seedFrom(5, n)), all, []);
    return first?.case ?? "";
  });
}

describe("the cases of a check", () => {
  it("are five different ones of the deck; all where it has fewer", () => {
    fc.assert(
      fc.property(fc.integer(), fc.nat(12), (seed, count) => {
        const all = CASES.slice(0, count);
        const drawn = drawCheck(randomSource(seed), all, []);
        expect(drawn).toHaveLength(Math.min(CHECK_LENGTH, count));
        expect(new Set(drawn).size).toBe(drawn.length);
        for (const one of drawn) expect(all).toContain(one);
      }),
    );
  });

  it("are each as likely as any other", () => {
    const cells = evenly(TWELVE.map((one) => one.case));
    expect(chiSquare(firsts(TWELVE), cells).passes).toBe(true);
    const biased = [...TWELVE, ...TWELVE.slice(0, 1)];
    expect(chiSquare(firsts(biased), cells).passes).toBe(false);
  });

  it("are not the same five as last time, where there are others", () => {
    const six = CASES.slice(0, 6);
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = randomSource(seed);
        const last = drawCheck(random, six, []).map((one) => one.case);
        const next = drawCheck(random, six, last).map((one) => one.case);
        expect([...next].sort()).not.toEqual([...last].sort());
      }),
    );
  });

  it("are the same five where the deck has no others", () => {
    const five = CASES.slice(0, 5);
    const last = five.map((one) => one.case);
    expect(drawCheck(randomSource(1), five, last)).toHaveLength(5);
  });
});
