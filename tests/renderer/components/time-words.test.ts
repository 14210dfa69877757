import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LocalDay } from "../../../core/memory/review";
import {
  answersSince,
  dayInWords,
  seconds,
  shortDay,
  shortWeekday,
  shownTimes,
  wholeDay,
} from "../../../renderer/components/time-words";

// 25 November 2025 was a Tuesday: day 20,417 since 1 January 1970 (ISO 8601 calendar).
const TUESDAY = (Date.UTC(2025, 10, 25) / 86_400_000) as LocalDay;
const after = (days: number) => (TUESDAY + days) as LocalDay;

describe("answers since a day", () => {
  it("are of today alone, or since the day of the first", () => {
    expect(answersSince(15, TUESDAY, TUESDAY)).toBe("15 answers today.");
    expect(answersSince(1, TUESDAY, TUESDAY)).toBe("1 answer today.");
    expect(answersSince(1, after(-1), TUESDAY)).toBe("1 answer, yesterday.");
    expect(answersSince(1500, after(-2), TUESDAY)).toBe(
      "1,500 answers since 23 November.",
    );
  });
});

describe("days in words", () => {
  it("name the days near today", () => {
    expect(dayInWords(TUESDAY, TUESDAY)).toBe("today");
    expect(dayInWords(after(1), TUESDAY)).toBe("tomorrow");
    expect(dayInWords(after(-1), TUESDAY)).toBe("yesterday");
    expect(dayInWords(after(2), TUESDAY)).toBe("Thursday");
    expect(dayInWords(after(6), TUESDAY)).toBe("Monday");
  });

  it("never call a day a week or more away by its weekday alone", () => {
    expect(dayInWords(after(7), TUESDAY)).toBe("2 December");
    expect(dayInWords(after(-2), TUESDAY)).toBe("23 November");
  });

  it("say the year only where it could be mistaken", () => {
    expect(dayInWords(after(50), TUESDAY)).toBe("14 January");
    expect(dayInWords(after(200), TUESDAY)).toBe("13 June 2026");
  });

  it("have a long and a short form", () => {
    expect(wholeDay(after(2))).toBe("Thursday 27 November");
    expect(shortDay(after(-3), TUESDAY)).toBe("Sat 22");
    expect(shortDay(TUESDAY, TUESDAY)).toBe("today");
    expect(shortDay(after(-30), TUESDAY)).toBe("26 Oct");
    expect(shortWeekday(TUESDAY)).toBe("Tue");
  });
});

describe("durations", () => {
  it("have one decimal and a unit", () => {
    expect(seconds(9284)).toBe("9.3 s");
    expect(seconds(5000)).toBe("5.0 s");
  });
});

describe("the times of an answer", () => {
  it("add up as they are shown", () => {
    fc.assert(
      fc.property(
        fc.nat(60_000),
        fc.nat(60_000),
        fc.nat(2_000),
        (thinking, turning, finishing) => {
          const total = thinking + turning + finishing;
          const shown = shownTimes(total, thinking, turning);
          const sum = shown.thinking + shown.turning + shown.finishing;
          expect(seconds(sum)).toBe(seconds(total));
          expect(Math.abs(shown.turning - turning)).toBeLessThanOrEqual(150);
          expect(shown.turning).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});
