import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type MemoryTraits,
  strengthAfterMiss,
  strengthAfterRecall,
  taughtStrength,
  trueChance,
} from "../../../../core/memory/learner-model/true-memory";

const traits: MemoryTraits = {
  decay: 0.2,
  firstStrength: 0.3,
  growth: 1,
  saturation: 0.2,
  kept: 0.6,
  savings: 0.35,
};

const strengths = fc.double({ min: 0.05, max: 500, noNaN: true });
const eases = fc.double({ min: -1, max: 1, noNaN: true });

describe("the true memory of a made-up learner", () => {
  it("is certain at once, falls to 0.9 after its strength, and keeps falling by a power of time", () => {
    fc.assert(
      fc.property(strengths, (strength) => {
        expect(trueChance(traits, strength, 0)).toBe(1);
        expect(trueChance(traits, strength, strength)).toBeCloseTo(0.9, 9);
        expect(trueChance(traits, strength, 2 * strength)).toBeLessThan(0.9);
      }),
    );
    // Late on, ten times as long leaves 10^-0.2 of the chance.
    const late = trueChance(traits, 1, 1e6) / trueChance(traits, 1, 1e5);
    expect(late).toBeCloseTo(10 ** -0.2, 4);
  });

  it("grows by a recall, more by one that was nearly forgotten, and less the stronger it is", () => {
    fc.assert(
      fc.property(strengths, eases, (strength, ease) => {
        const after = (chance: number) =>
          strengthAfterRecall(traits, strength, ease, chance);
        expect(after(0.95)).toBeGreaterThan(strength);
        expect(after(0.7)).toBeGreaterThan(after(0.95));
        const stronger = strengthAfterRecall(traits, 2 * strength, ease, 0.9);
        expect(stronger / (2 * strength)).toBeLessThan(after(0.9) / strength);
      }),
    );
  });

  it("is never stronger after a miss, and stronger for cases of more ease", () => {
    fc.assert(
      fc.property(strengths, eases, (strength, ease) => {
        const after = strengthAfterMiss(traits, strength, ease);
        expect(after).toBeLessThanOrEqual(Math.max(strength, 0.05));
        expect(after).toBeGreaterThanOrEqual(0.05);
        expect(
          strengthAfterMiss(traits, strength, ease + 0.5),
        ).toBeGreaterThanOrEqual(after);
        expect(taughtStrength(traits, ease + 0.5)).toBeGreaterThanOrEqual(
          taughtStrength(traits, ease),
        );
      }),
    );
  });
});
