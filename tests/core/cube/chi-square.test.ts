import { describe, expect, it } from "vitest";
import { chiSquare, chiSquareLimit, evenly } from "./chi-square";

describe("the limit of a chi-square test", () => {
  // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper
  // critical values at 0.001 (from memory); 3.0902 is the normal law's there.
  // With one degree the approximation is off by 3%: no test here has fewer than 3.
  it.each([
    [3, 16.266],
    [10, 29.588],
    [23, 49.728],
    [100, 149.449],
  ])(
    "with %i degrees of freedom is the table's to within 2%%",
    (degrees, table) => {
      const limit = chiSquareLimit(degrees, 3.0902);
      expect(Math.abs(limit / table - 1)).toBeLessThan(0.02);
    },
  );
});

describe("a chi-square test", () => {
  const coin = evenly(["heads", "tails"]);
  const tosses = (heads: number, tails: number) => [
    ...Array.from({ length: heads }, () => "heads"),
    ...Array.from({ length: tails }, () => "tails"),
  ];

  it("adds up the squared differences over what is expected", () => {
    // (60 − 50)² / 50 twice.
    expect(chiSquare(tosses(60, 40), coin)).toMatchObject({
      statistic: 4,
      smallestExpected: 50,
      passes: true,
    });
  });

  it("fails beyond its limit, with a stray, and with too few expected in a cell", () => {
    expect(chiSquare(tosses(80, 20), coin).passes).toBe(false);
    expect(chiSquare([...tosses(50, 50), "edge"], coin)).toMatchObject({
      passes: false,
      strays: 1,
    });
    expect(chiSquare(tosses(19, 19), coin).passes).toBe(false);
  });
});
