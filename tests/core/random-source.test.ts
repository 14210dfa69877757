import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { describe, expect, it } from "vitest";
import { randomSource, seedFrom, shuffled } from "../../core/random-source";
import { chiSquare, evenly } from "./cube/chi-square";

const SEEDS = Array.from({ length: 4000 }, (_, seed) => seed);

describe("a random source", () => {
  it("draws the same from the same seed, and other numbers from another", () => {
    const draws = (seed: number) => {
      const random = randomSource(seed);
      return Array.from({ length: 20 }, () => random.below(1000));
    };
    expect(draws(7)).toEqual(draws(7));
    expect(draws(7)).not.toEqual(draws(8));
  });

  it("draws every residue evenly, also where it does not divide 2^32", () => {
    const random = randomSource(1);
    const cells = Array.from({ length: 11 }, (_, i) => i);
    const samples = Array.from({ length: 20_000 }, () => random.below(11));
    expect(chiSquare(samples, evenly(cells)).passes).toBe(true);
  });

  it("begins evenly over neighbouring seeds", () => {
    const first = SEEDS.map((seed) => randomSource(seed).below(4));
    expect(chiSquare(first, evenly([0, 1, 2, 3])).passes).toBe(true);
  });

  // Negative control: the generator alone begins alike from small seeds.
  it("would not begin evenly without mixing the seed", () => {
    const first = SEEDS.map((seed) =>
      Math.floor(((xoroshiro128plus(seed).next() >>> 0) * 4) / 2 ** 32),
    );
    expect(chiSquare(first, evenly([0, 1, 2, 3])).passes).toBe(false);
  });

  it("shuffles three things into each of their six orders evenly", () => {
    const random = randomSource(2);
    const orders = Array.from({ length: 12_000 }, () =>
      shuffled(random, ["a", "b", "c"]).join(""),
    );
    const all = ["abc", "acb", "bac", "bca", "cab", "cba"];
    expect(chiSquare(orders, evenly(all)).passes).toBe(true);
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
