import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  expectedTime,
  noTimes,
  RecentValues,
  winsorised,
} from "../../../core/memory/baseline";

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  const at = (i: number) => sorted[i] ?? 0;
  return sorted.length % 2 === 1
    ? at(Math.floor(half))
    : (at(half - 1) + at(half)) / 2;
}

describe("the last few of a row of numbers", () => {
  const rows = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), {
    minLength: 1,
    maxLength: 40,
  });

  it("have the median and the median deviation that sorting them gives", () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 12 }), (row, most) => {
        const recent = new RecentValues(most);
        for (const value of row) recent.add(value);
        const kept = row.slice(-most);
        const centre = median(kept);
        const deviations = kept
          .map((value) => Math.abs(value - centre))
          .toSorted((a, b) => a - b);
        expect(recent.count).toBe(kept.length);
        expect(recent.median()).toBeCloseTo(centre, 12);
        expect(recent.medianDeviation(recent.median())).toBeCloseTo(
          deviations[Math.floor((kept.length - 1) / 2)] ?? 0,
          12,
        );
      }),
    );
  });

  it("are told apart from those of a copy", () => {
    const recent = new RecentValues(3);
    recent.add(1);
    const copy = recent.copy();
    copy.add(9);
    expect(recent.count).toBe(1);
    expect(copy.median()).toBe(5);
  });
});

describe("the time expected of a case", () => {
  // Source: issue 5, "Grades": four times of the prior, a spread of 0.3.
  it("is the prior without times", () => {
    expect(expectedTime(undefined, 7)).toEqual({ centre: 7, spread: 0.3 });
    expect(expectedTime(noTimes(), 7).centre).toBe(7);
    expect(expectedTime(noTimes(), 7).spread).toBeCloseTo(0.3, 12);
  });

  it("moves from the prior to the median of the last ten as they come", () => {
    const times = noTimes();
    for (let n = 1; n <= 30; n++) {
      times.add(8);
      const kept = Math.min(10, n);
      const { centre, spread } = expectedTime(times, 7);
      expect(centre).toBeCloseTo((kept * 8 + 4 * 7) / (kept + 4), 12);
      // Nobody is taken to be steadier than 0.12.
      expect(spread).toBeCloseTo(
        Math.sqrt((kept * 0.12 ** 2 + 4 * 0.3 ** 2) / (kept + 4)),
        12,
      );
    }
  });

  it("is hardly moved by one long look out of the window", () => {
    const times = noTimes();
    for (const time of [7, 7.1, 6.9, 7, 7.05]) times.add(time);
    const before = expectedTime(times, 7);
    times.add(winsorised(12, before));
    const after = expectedTime(times, 7);
    expect(winsorised(12, before)).toBeCloseTo(
      before.centre + 2.5 * before.spread,
      12,
    );
    expect(Math.abs(after.centre - before.centre)).toBeLessThan(0.05);
  });
});
