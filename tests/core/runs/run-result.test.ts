/**
 * Results and averages against worked examples. Source of the rules: WCA
 * Regulations, Articles 9f, 10, A3 and A4, from memory: the document is not at
 * hand here. Sums were made by hand.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inspectionPenalty } from "../../../core/runs/inspection";
import {
  averageOfFive,
  bestOf,
  meanOfThree,
  usualOf,
} from "../../../core/runs/run-averages";
import {
  penaltiesOf,
  recordedMean,
  recordedTime,
  resultOf,
  type RunResult,
} from "../../../core/runs/run-result";
import { ms, sampleRun } from "./sample-run";

const DNF = "did-not-finish";

function results(...seconds: readonly (number | typeof DNF)[]): RunResult[] {
  return seconds.map((one) => (one === DNF ? DNF : ms(Math.round(one * 1000))));
}

describe("a measured time", () => {
  it("under ten minutes is cut to the hundredth (9f)", () => {
    expect(recordedTime(12_349.99)).toBe(12_340);
    expect(recordedTime(12_340)).toBe(12_340);
    expect(recordedTime(599_999.9)).toBe(599_990);
  });

  it("of ten minutes and more is rounded to the second (9f)", () => {
    expect(recordedTime(600_490)).toBe(600_000);
    expect(recordedTime(600_500)).toBe(601_000);
  });

  it("is cut, and a mean is rounded (9f)", () => {
    expect(recordedTime(10_005)).toBe(10_000);
    expect(recordedMean(10_005)).toBe(10_010);
    expect(recordedMean(700_499)).toBe(700_000);
  });
});

describe("looking at the cube", () => {
  it("costs nothing for 15 seconds, 2 seconds up to 17, and then the attempt (A3, A4)", () => {
    expect(inspectionPenalty(0)).toBe("none");
    expect(inspectionPenalty(14_999)).toBe("none");
    expect(inspectionPenalty(15_000)).toBe("two-seconds");
    expect(inspectionPenalty(16_999)).toBe("two-seconds");
    expect(inspectionPenalty(17_000)).toBe(DNF);
  });
});

describe("a run by competition rules", () => {
  const run = sampleRun({ rules: "competition", inspection: ms(3000) });

  it("counts its time, cut", () => {
    expect(resultOf(run)).toBe(12_340);
  });

  it("has 2 seconds more one turn from done, and 2 for looking too long: they add up", () => {
    expect(resultOf({ ...run, ending: "one-turn-off" })).toBe(14_340);
    expect(resultOf({ ...run, inspection: ms(15_100) })).toBe(14_340);
    const both = { ...run, ending: "one-turn-off", inspection: ms(16_000) };
    expect(resultOf(both as typeof run)).toBe(16_340);
    expect(penaltiesOf(both as typeof run)).toBe(2);
  });

  it("did not finish where it is not done, or was looked at for 17 seconds", () => {
    expect(resultOf({ ...run, ending: "not-done" })).toBe(DNF);
    expect(resultOf({ ...run, inspection: ms(17_000) })).toBe(DNF);
  });
});

describe("a run by plain rules", () => {
  it("knows done and not done, and no penalty", () => {
    const run = sampleRun({ inspection: ms(40_000) });
    expect(resultOf(run)).toBe(12_340);
    expect(penaltiesOf({ ...run, ending: "one-turn-off" })).toBe(0);
    expect(resultOf({ ...run, ending: "one-turn-off" })).toBe(DNF);
    expect(resultOf({ ...run, ending: "not-done" })).toBe(DNF);
  });
});

describe("the average of five", () => {
  // 10.00 and 14.00 are left out: (11.00 + 12.00 + 13.01) / 3 = 12.0033…
  it("leaves the best and the worst out, and rounds", () => {
    expect(averageOfFive(results(10, 11, 12, 13.01, 14))).toBe(12_000);
    // (11.00 + 12.00 + 13.02) / 3 = 12.00666…
    expect(averageOfFive(results(14, 11, 12, 13.02, 10))).toBe(12_010);
  });

  it("is that of a published one (check-values: a world-record average of June 2023)", () => {
    expect(averageOfFive(results(4.72, 4.72, 3.99, 3.95, 5.99))).toBe(4_480);
  });

  it("lies between the second and the fourth, in whatever order they came", () => {
    const time = fc
      .nat({ max: 100_000 })
      .map((hundredths) => ms(10 * hundredths));
    fc.assert(
      fc.property(fc.tuple(time, time, time, time, time), (times) => {
        const average = averageOfFive(times);
        const sorted = times.toSorted((a, b) => a - b);
        expect(average).toBe(averageOfFive(sorted));
        expect(average).toBeGreaterThanOrEqual(sorted[1] ?? NaN);
        expect(average).toBeLessThanOrEqual(sorted[3] ?? NaN);
      }),
    );
  });

  it("is of the last five alone", () => {
    expect(averageOfFive(results(1, 10, 11, 12, 13, 14))).toBe(12_000);
  });

  it("takes one that did not finish for the worst", () => {
    expect(averageOfFive(results(10, 11, DNF, 12, 13))).toBe(12_000);
  });

  it("did not finish with two that did not", () => {
    expect(averageOfFive(results(10, DNF, DNF, 12, 13))).toBe(DNF);
  });

  it("leaves one of two equal bests in", () => {
    // 10.00 once is left out, and 20.00: (10.00 + 12.00 + 14.00) / 3
    expect(averageOfFive(results(10, 10, 12, 14, 20))).toBe(12_000);
  });

  it("needs five", () => {
    expect(averageOfFive(results(10, 11, 12, 13))).toBeUndefined();
  });
});

describe("the mean of three", () => {
  it("is of the last three", () => {
    // (11.00 + 12.00 + 13.00) / 3
    expect(meanOfThree(results(50, 11, 12, 13))).toBe(12_000);
    // (9.99 + 10.00 + 10.00) / 3 = 9.99666…
    expect(meanOfThree(results(9.99, 10, 10))).toBe(10_000);
  });

  it("did not finish with one that did not", () => {
    expect(meanOfThree(results(11, DNF, 13))).toBe(DNF);
  });

  it("needs three", () => {
    expect(meanOfThree(results(11, 13))).toBeUndefined();
  });
});

describe("best and usual", () => {
  it("are of the runs that finished, the usual one in the middle of the newest", () => {
    expect(bestOf(results(DNF, 12, 11, 30))).toBe(11_000);
    expect(bestOf(results(DNF))).toBeUndefined();
    expect(usualOf(results(12, 11, 30))).toBe(12_000);
    expect(usualOf(results(12, DNF, 11))).toBeUndefined();
    // Twelve newest: 99 is no longer among them.
    const newest = [10, 10, 10, 10, 10, 10, 20, 20, 20, 20, 20, 20];
    expect(usualOf(results(99, ...newest))).toBe(15_000);
  });
});
