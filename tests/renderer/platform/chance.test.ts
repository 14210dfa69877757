import { describe, expect, it } from "vitest";
import { randomSource } from "../../../core/random-source";
import { CHANCE } from "../../../renderer/platform/chance";

describe("the machine's chance", () => {
  // Chi squared with 5 degrees of freedom: its mean is 5 and its variance 10, so
  // 45 is more than 12 standard deviations off. Nobody sets this chance's seed.
  const chiSquared = (draw: () => number) => {
    const seen = new Array<number>(6).fill(0);
    for (let i = 0; i < 6000; i += 1) {
      const at = draw();
      seen[at] = (seen[at] ?? 0) + 1;
    }
    return seen.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
  };

  it("draws every number alike, and a biased one would be seen", () => {
    expect(chiSquared(() => CHANCE.below(6))).toBeLessThan(45);
    const random = randomSource(1);
    expect(chiSquared(() => Math.min(5, random.below(7)))).toBeGreaterThan(45);
  });
});
