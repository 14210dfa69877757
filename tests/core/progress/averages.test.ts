import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Attempt,
  averageOfFive,
  meanOfThree,
  resultOf,
} from "../../../core/progress/averages";

type Five = readonly [Attempt, Attempt, Attempt, Attempt, Attempt];

describe("averages and means", () => {
  it("cut a result to a hundredth (WCA Regulations 9f1: 12.678 is 12.67)", () => {
    expect(resultOf(12_678)).toBe(1267);
    expect(resultOf(12_679.9)).toBe(1267);
    expect(resultOf(9)).toBe(0);
  });

  it("of five leave out the best and the worst (check-values: a world-record average of June 2023)", () => {
    expect(averageOfFive([472, 472, 399, 395, 599])).toBe(448);
  });

  it("of five count one unfinished as the worst, and end with two (9f8, 9f9)", () => {
    expect(averageOfFive(["unfinished", 500, 400, 300, 600])).toBe(500);
    expect(averageOfFive([500, "unfinished", 400, 300, "unfinished"])).toBe(
      "unfinished",
    );
  });

  it("of three end with one unfinished (9f10), and are rounded to a hundredth (9f1)", () => {
    expect(meanOfThree([100, 100, 101])).toBe(100);
    expect(meanOfThree([100, 101, 101])).toBe(101);
    expect(meanOfThree([100, "unfinished", 101])).toBe("unfinished");
  });

  it("of five lie between the second and the fourth, in whatever order they came", () => {
    const time = fc.nat({ max: 100_000 });
    fc.assert(
      fc.property(fc.tuple(time, time, time, time, time), (times) => {
        const average = averageOfFive(times satisfies Five);
        const sorted = times.toSorted((a, b) => a - b);
        expect(average).toBe(averageOfFive(sorted as unknown as Five));
        expect(average).toBeGreaterThanOrEqual(sorted[1] ?? NaN);
        expect(average).toBeLessThanOrEqual(sorted[3] ?? NaN);
      }),
    );
  });
});
