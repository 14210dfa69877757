import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../core/memory/local-day";
import { CODED_KINDS } from "../../../core/paper/sheet-code";
import {
  firstDaysToChoose,
  likelyFirstDay,
  mondayOf,
} from "../../../core/paper/sheet-days";

/** Days by date: UTC, which has no zones. */
const day = (date: string) => dayNumber(Date.parse(date) / 86_400_000);

describe("the first day of a sheet", () => {
  it("is found on a Monday by the calendar", () => {
    // Source: ECMA-262, Date.prototype.getUTCDay.
    fc.assert(
      fc.property(fc.nat({ max: 40_000 }), (n) => {
        const monday = mondayOf(dayNumber(n));
        expect(new Date(monday * 86_400_000).getUTCDay()).toBe(1);
        expect(n - monday).toBeGreaterThanOrEqual(0);
        expect(n - monday).toBeLessThan(7);
      }),
    );
  });

  it.each([
    // Monday 16 to Sunday 22 November 2026; entered on Monday the 30th.
    ["2026-11-16", "2026-11-30", "2026-11-16"],
    ["2026-11-19", "2026-11-30", "2026-11-16"],
    ["2026-11-20", "2026-11-30", "2026-11-23"],
    ["2026-11-22", "2026-11-30", "2026-11-23"],
    // Printed for a week that has not begun.
    ["2026-11-20", "2026-11-21", "2026-11-16"],
  ])(
    "of a case sheet printed on %s and entered on %s is guessed as %s",
    (printed, today, first) => {
      expect(likelyFirstDay("cases", day(printed), day(today))).toBe(
        day(first),
      );
    },
  );

  it("of a practice sheet is the day it was printed, under a clock set back today", () => {
    const printed = day("2026-11-19");
    expect(likelyFirstDay("practice", printed, day("2026-11-30"))).toBe(
      printed,
    );
    expect(likelyFirstDay("practice", printed, day("2026-11-18"))).toBe(
      day("2026-11-18"),
    );
  });

  it("can be chosen, the guessed one among them, none of them to come, Mondays for a case sheet", () => {
    const some = fc.nat({ max: 40_000 }).map(dayNumber);
    fc.assert(
      fc.property(
        fc.constantFrom(...CODED_KINDS),
        some,
        some,
        (kind, printed, today) => {
          const days = firstDaysToChoose(kind, printed, today);
          expect(days).toContain(likelyFirstDay(kind, printed, today));
          expect(Math.max(...days)).toBeLessThanOrEqual(today);
          expect(days).toEqual(days.toSorted((a, b) => b - a));
          if (kind === "cases")
            for (const one of days) expect(mondayOf(one)).toBe(one);
        },
      ),
      { numRuns: 50 },
    );
  });
});
