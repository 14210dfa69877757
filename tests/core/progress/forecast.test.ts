import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../core/memory/local-day";
import { memoriesOf } from "../../../core/memory/schedule";
import { randomSource } from "../../../core/random-source";
import {
  forecastOf,
  forecastVerdict,
  wilsonInterval,
} from "../../../core/progress/forecast";
import { type RecallDay, recallDays } from "../../../core/progress/recall-days";
import type { Review } from "../../../core/memory/review";
import { sampleReview } from "../memory/sample-review";
import { graded } from "./graded";

function day(chance: number | undefined, wasRight: boolean): RecallDay {
  return {
    ...(chance === undefined ? {} : { chance }),
    wasRight,
    stability: 1,
    lastDay: dayNumber(0),
    lastsUntil: dayNumber(1),
    missedLast: !wasRight,
    days: 2,
  };
}

/** So many days foretold at one chance of which so many were right. */
function foretold(chance: number, right: number, missed: number): RecallDay[] {
  return [
    ...Array.from({ length: right }, () => day(chance, true)),
    ...Array.from({ length: missed }, () => day(chance, false)),
  ];
}

describe("Wilson's interval", () => {
  // Source: Newcombe, Statistics in Medicine 17 (1998), 857–872, table I,
  // method 3; from memory, and agreeing with the formula to four places.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("of %d in %d is the published one", (successes, trials, low, high) => {
    const interval = wilsonInterval(successes, trials);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });

  it("holds the share it is about and stays within 0 and 1", () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 5000 })
          .chain((trials) =>
            fc.tuple(fc.nat({ max: trials }), fc.constant(trials)),
          ),
        ([successes, trials]) => {
          const { low, high } = wilsonInterval(successes, trials);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(low).toBeLessThanOrEqual(successes / trials);
          expect(high).toBeGreaterThanOrEqual(successes / trials);
        },
      ),
    );
  });
});

describe("the forecast", () => {
  it("is compared with the answers bin by bin, first days left out", () => {
    const { bins, ...all } = forecastOf([
      day(undefined, true),
      ...foretold(0.85, 3, 2),
      ...foretold(0.97, 9, 1),
      ...foretold(0.2, 0, 5),
    ]);
    expect(bins).toEqual([
      { foretold: expect.closeTo(0.2) as number, right: 0, answers: 5 },
      { foretold: expect.closeTo(0.85) as number, right: 3, answers: 5 },
      { foretold: expect.closeTo(0.97) as number, right: 9, answers: 10 },
    ]);
    expect(all.answers).toBe(20);
    expect(all.right).toBe(12);
    expect(all.expected).toBeCloseTo(5 * 0.2 + 5 * 0.85 + 10 * 0.97);
  });

  it("makes no group of a few answers, and loses none", () => {
    const { bins } = forecastOf([
      ...foretold(0.4, 1, 1),
      ...foretold(0.75, 4, 0),
      ...foretold(0.92, 6, 0),
      ...foretold(0.99, 2, 0),
    ]);
    expect(bins.map(({ answers, right }) => [answers, right])).toEqual([
      [6, 5],
      [6, 6],
      [2, 2],
    ]);
    expect(bins[0]?.foretold).toBeCloseTo((2 * 0.4 + 4 * 0.75) / 6);
    expect(forecastOf([]).bins).toEqual([]);
  });

  it("gets no verdict before there are twenty", () => {
    expect(forecastVerdict(forecastOf(foretold(0.9, 0, 19)))).toBe("too-few");
    expect(forecastVerdict(forecastOf(foretold(0.9, 0, 20)))).toBe("too-bold");
  });

  it("holds where chance could lead there, and is off where it hardly could", () => {
    expect(forecastVerdict(forecastOf(foretold(0.9, 89, 11)))).toBe("holds");
    expect(forecastVerdict(forecastOf(foretold(0.9, 75, 25)))).toBe("too-bold");
    expect(forecastVerdict(forecastOf(foretold(0.7, 95, 5)))).toBe(
      "too-careful",
    );
  });

  it("of a true model is said to be off in about one of twenty logs", () => {
    const random = randomSource(20_261_126);
    let off = 0;
    for (let log = 0; log < 400; log++) {
      const days = Array.from({ length: 150 }, () => {
        const chance = (600 + random.below(400)) / 1000;
        return day(chance, random.below(1000) < chance * 1000);
      });
      if (forecastVerdict(forecastOf(days)) !== "holds") off += 1;
    }
    // 5% of 400 are 20, with a standard deviation of 4.4.
    expect(off).toBeGreaterThan(5);
    expect(off).toBeLessThan(36);
  });
});

describe("the days of a memory", () => {
  const log = fc
    .array(
      fc.record({
        gap: fc.constantFrom(0, 0, 1, 2, 9, 40),
        verdict: fc.constantFrom<Review["verdict"][]>(
          "right",
          "right",
          "missed",
        ),
        asking: fc.constantFrom<Review["asking"][]>("alone", "alone", "again"),
        interrupted: fc.boolean(),
        corrections: fc.nat({ max: 1 }),
      }),
      { minLength: 1, maxLength: 40 },
    )
    .map((answers) => {
      let at = 100;
      return answers.map(({ gap, ...told }, i) =>
        sampleReview((at += gap), {
          ...told,
          id: String(i).padStart(3, "0"),
        }),
      );
    });

  it("end where the schedule ends", () => {
    fc.assert(
      fc.property(log, (reviews) => {
        const [memory] = memoriesOf(reviews).values();
        const last = recallDays(graded(reviews)).at(-1);
        expect(last?.stability).toBe(memory?.stability);
        expect(last?.lastDay).toBe(memory?.lastDay);
        expect(last?.lastsUntil).toBe(memory?.lastsUntil);
        expect(last?.missedLast).toBe(memory?.missedLast);
        expect(last?.days).toBe(memory?.days);
      }),
    );
  });

  it("foretell each day but the first, from the days before it", () => {
    // Source: check-values. After a first clean answer S is 2.3065, so that
    // the chance is 0.9 after about two days.
    const days = recallDays(
      graded([
        sampleReview(10),
        sampleReview(12),
        sampleReview(12, { id: "later", verdict: "missed" }),
      ]),
    );
    expect(days).toHaveLength(2);
    expect(days[0]?.chance).toBeUndefined();
    expect(days[1]?.chance).toBeGreaterThan(0.9);
    expect(days[1]?.chance).toBeLessThan(0.92);
    // The first answer of the day counts; the miss came from what was warm.
    expect(days[1]).toMatchObject({ wasRight: true, missedLast: false });
  });
});
