import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../core/memory/local-day";
import { RECOGNISING_WAYS, type Review } from "../../../core/memory/review";
import { keptOverTime } from "../../../core/progress/kept";
import { recallDays } from "../../../core/progress/recall-days";
import { graded } from "./graded";
import { answered } from "./timed-answers";

describe("what was kept over time", () => {
  const history = (...days: Review[]) => recallDays(graded(days));

  it("knows nothing of answers that were chosen", () => {
    for (const answerWay of RECOGNISING_WAYS)
      expect(history(answered(1, { answerWay }))).toEqual([]);
  });

  it("counts each case by its memory, from the first day that counts until today", () => {
    // A first clean answer lasts 2 days, a second on time 11, a third 46
    // (check-values), so the third is kept; a miss is fading at once.
    const over = keptOverTime(
      [
        history(answered(0), answered(2), answered(13)),
        history(answered(13, { verdict: "missed" })),
      ],
      dayNumber(14),
    );
    expect(over).toHaveLength(15);
    expect(over[0]).toEqual({ day: 0, kept: 0, settling: 1, fading: 0 });
    expect(over[12]).toEqual({ day: 12, kept: 0, settling: 1, fading: 0 });
    expect(over[13]).toEqual({ day: 13, kept: 1, settling: 0, fading: 1 });
    expect(over[14]?.day).toBe(14);
  });

  it("lets a case fade that is left alone", () => {
    const over = keptOverTime([history(answered(0))], dayNumber(60));
    expect(over[0]?.settling).toBe(1);
    expect(over.at(-1)).toMatchObject({ settling: 0, fading: 1 });
  });

  it("looks at no more days than a picture holds, first and last among them", () => {
    for (const last of [1, 59, 60, 61, 700, 5000]) {
      const days = keptOverTime([history(answered(0))], dayNumber(last)).map(
        ({ day }) => day,
      );
      expect(days[0]).toBe(0);
      expect(days.at(-1)).toBe(last);
      expect(days.length).toBeLessThanOrEqual(62);
      expect(new Set(days).size).toBe(days.length);
    }
  });

  it("is empty before anything counts, and one day where the clock was set back", () => {
    expect(keptOverTime([], dayNumber(5))).toEqual([]);
    expect(keptOverTime([[]], dayNumber(5))).toEqual([]);
    expect(keptOverTime([history(answered(9))], dayNumber(5))).toEqual([
      { day: 5, kept: 0, settling: 0, fading: 0 },
    ]);
  });
});
