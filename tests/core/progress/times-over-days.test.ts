import { describe, expect, it } from "vitest";
import type { Review } from "../../../core/memory/review";
import {
  addShares,
  caseOverDays,
  TimesByDay,
} from "../../../core/progress/times-over-days";
import { ms } from "../memory/sample-review";
import { answered, timed } from "./timed-answers";

function allOverDays(answers: readonly Review[]) {
  const all = new TimesByDay();
  addShares(all, answers);
  return all.overDays();
}

describe("times over days", () => {
  it("are medians by day, interruptions and misses left out", () => {
    const over = caseOverDays([
      timed(1, 4, 4),
      timed(1, 2, 2),
      timed(1, 3, 4),
      timed(2, 1, 90, { interrupted: true }),
      timed(2, 1, 90, { verdict: "missed" }),
      timed(3, 1, 1),
    ]);
    expect(over?.periodDays).toBe(1);
    expect(over?.periods).toEqual([
      { day: 1, answers: 3, total: 7000, thinking: 3000 },
      { day: 3, answers: 1, total: 2000, thinking: 1000 },
    ]);
  });

  it("keep the last five attempts, a miss as one that did not finish", () => {
    const over = caseOverDays([
      timed(1, 9, 9),
      timed(2, 1, 1.239),
      timed(3, 1, 1, { verdict: "missed" }),
      timed(3, 1, 1, { asking: "again" }),
      timed(4, 1, 8, { interrupted: true }),
      timed(5, 2, 2),
      timed(6, 3, 3),
    ]);
    expect(over?.lastAttempts).toEqual([
      2230,
      "did-not-finish",
      2000,
      4000,
      6000,
    ]);
  });

  it("leave out of the attempts what was ticked on paper without a time", () => {
    const ticked = {
      answerWay: "on-paper",
      untimed: true,
      total: ms(0),
    } as const;
    const over = caseOverDays([
      timed(1, 2, 2, { answerWay: "on-paper" }),
      timed(2, 0, 0, ticked),
      timed(3, 0, 0, { ...ticked, verdict: "missed" }),
    ]);
    expect(over?.lastAttempts).toEqual([4000]);
  });

  it("know nothing of answers that were chosen", () => {
    const chosen = { asking: "extra", answerWay: "which-is-it" } as const;
    const over = caseOverDays([
      timed(1, 4, 4),
      timed(2, 1, 0, chosen),
      timed(3, 1, 0, { ...chosen, verdict: "missed" }),
    ]);
    expect(over?.periods.map(({ day }) => day)).toEqual([1]);
    expect(over?.lastAttempts).toEqual([8000]);
  });

  it("take days together where there are more than a picture holds", () => {
    const daily = (count: number) =>
      caseOverDays(Array.from({ length: count }, (_, day) => timed(day, 1, 1)));
    expect(daily(60)?.periodDays).toBe(1);
    expect(daily(61)?.periodDays).toBe(7);
    expect(daily(61)?.periods).toHaveLength(9);
    expect(daily(2000)?.periodDays).toBe(91);
    const answers = daily(2000)?.periods.map((period) => period.answers) ?? [];
    expect(answers.reduce((a, b) => a + b)).toBe(2000);
  });

  it("of all cases are shares of their targets", () => {
    const { periods } = allOverDays([
      timed(1, 4, 4, { target: 8 }),
      timed(1, 6, 12, { case: "C1", target: 9 }),
      timed(1, 1, 1, { case: "C2", target: 4 }),
    ]);
    expect(periods).toEqual([{ day: 1, answers: 3, total: 1, thinking: 0.5 }]);
  });

  it("are none without an answer that counts", () => {
    expect(caseOverDays([])).toBeUndefined();
    expect(caseOverDays([answered(1, { hints: ["home"] })])).toBeUndefined();
    expect(allOverDays([]).periods).toEqual([]);
  });
});
