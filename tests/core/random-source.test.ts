/**
 * The limit of every statistical test here is `chiSquareLimit` at 4.5 standard
 * deviations (its source stands in `chi-square.ts`), with at least 20 samples
 * expected in each cell and a fixed seed. Beside each stands its control: the
 * same samples with one deliberate bias, which must exceed the same limit.
 */
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { describe, expect, it } from "vitest";
import { randomSource, seedFrom, shuffled } from "../../core/random-source";
import { chiSquare, type ChiSquare, evenly } from "./cube/chi-square";

const BELOW_ELEVEN = evenly(Array.from({ length: 11 }, (_, i) => i));

const ORDERS = evenly(["abc", "acb", "bac", "bca", "cab", "cba"]);

const SEEDS = Array.from({ length: 4000 }, (_, seed) => seed);

/** The test tells the bias: by its limit, and not because it was ill set up. */
function expectTold(found: ChiSquare): void {
  expect(found).toMatchObject({ passes: false, strays: 0 });
  expect(found.smallestExpected).toBeGreaterThanOrEqual(20);
  expect(found.statistic).toBeGreaterThan(found.limit);
}

describe("a random source", () => {
  it("draws the same from the same seed, and other numbers from another", () => {
    const draws = (seed: number) => {
      const random = randomSource(seed);
      return Array.from({ length: 20 }, () => random.below(1000));
    };
    expect(draws(7)).toEqual(draws(7));
    expect(draws(7)).not.toEqual(draws(8));
  });

  // That the draws are made again where the range does not divide 2^32 is
  // exact by construction, and too small for any sample to show.
  it("draws every number below eleven evenly", () => {
    const random = randomSource(1);
    const samples = Array.from({ length: 20_000 }, () => random.below(11));
    expect(chiSquare(samples, BELOW_ELEVEN)).toMatchObject({ passes: true });
  });

  // Control: 64 = 5 · 11 + 9, so that the last two are drawn a sixth less often.
  it("would not draw evenly by the remainder of six random bits", () => {
    const random = randomSource(1);
    const samples = Array.from({ length: 20_000 }, () => random.below(64) % 11);
    expectTold(chiSquare(samples, BELOW_ELEVEN));
  });

  it("begins evenly over neighbouring seeds", () => {
    const first = SEEDS.map((seed) => randomSource(seed).below(4));
    expect(chiSquare(first, evenly([0, 1, 2, 3]))).toMatchObject({
      passes: true,
    });
  });

  // Control: the generator alone begins alike from small seeds.
  it("would not begin evenly without mixing the seed", () => {
    const first = SEEDS.map((seed) =>
      Math.floor(((xoroshiro128plus(seed).next() >>> 0) * 4) / 2 ** 32),
    );
    expectTold(chiSquare(first, evenly([0, 1, 2, 3])));
  });

  it("shuffles three things into each of their six orders evenly", () => {
    const random = randomSource(2);
    const orders = Array.from({ length: 12_000 }, () =>
      shuffled(random, ["a", "b", "c"]).join(""),
    );
    expect(chiSquare(orders, ORDERS)).toMatchObject({ passes: true });
  });

  // Control: 27 equally likely draws cannot be shared evenly by six orders.
  it("would not shuffle evenly by exchanging each thing with any other", () => {
    const random = randomSource(2);
    const orders = Array.from({ length: 12_000 }, () => {
      const order = ["a", "b", "c"];
      for (const i of order.keys()) {
        const j = random.below(3);
        [order[i], order[j]] = [order[j] ?? "", order[i] ?? ""];
      }
      return order.join("");
    });
    expectTold(chiSquare(orders, ORDERS));
  });
});

describe("seeds drawn from a seed", () => {
  it("differ for every number and every seed", () => {
    const seeds = SEEDS.slice(0, 100).flatMap((seed) =>
      SEEDS.slice(0, 100).map((n) => seedFrom(seed * 7919, n)),
    );
    expect(new Set(seeds).size).toBe(seeds.length);
  });
});
