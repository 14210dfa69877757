import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { gradeLog } from "../../../core/memory/grader";
import { dayNumber } from "../../../core/memory/local-day";
import type { Review } from "../../../core/memory/review";
import { inReplayOrder, memoriesOf } from "../../../core/memory/schedule";
import {
  comingBackByDay,
  secondsByCase,
} from "../../../core/progress/coming-back";
import { lastAnswers } from "../../../core/progress/last-answers";
import { ms, sampleReview } from "../memory/sample-review";

function answered(
  id: CaseId,
  day: number,
  changes: Partial<Review> = {},
): Review {
  return sampleReview(day, { id: `${id}-${day}`, case: id, ...changes });
}

const OWN_TIMES = {
  hold: "up",
  answerWay: "on-screen",
  answers: 5,
  target: 8,
} as const;

describe("what comes back by day", () => {
  // A first clean answer lasts 2 days, a second on time 11 (check-values).
  const memories = memoriesOf([
    answered("E1", 10),
    answered("E2a", 9),
    answered("E2b", 2),
    answered("E3", 7),
    answered("E3", 9),
    answered("E4a", 8),
    answered("E4a", 10),
  ]);

  it("counts each case on the day it lasts until, and what is overdue today", () => {
    const { days, later } = comingBackByDay(memories.values(), dayNumber(10), {
      daysAhead: 14,
    });
    const cases = days.map((d) => d.memories.map((m) => m.case).join(" "));
    expect(cases).toEqual([
      "E2b",
      "E2a",
      "E1",
      ...Array<string>(7).fill(""),
      "E3",
      "E4a",
      "",
      "",
    ]);
    expect(days.map((d) => d.day)).toEqual(days.map((_, i) => 10 + i));
    expect(later).toBe(0);
  });

  it("counts what comes after the days ahead together", () => {
    const coming = comingBackByDay(memories.values(), dayNumber(10), {
      daysAhead: 3,
    });
    expect(coming.days).toHaveLength(3);
    expect(coming.later).toBe(2);
  });

  it("goes by the day that a deck wants, where one does", () => {
    const { days } = comingBackByDay(memories.values(), dayNumber(10), {
      daysAhead: 2,
      dueOn: () => dayNumber(11),
    });
    expect(days.map((d) => d.memories.length)).toEqual([0, 5]);
  });

  it("leaves out what no deck asks for, and counts it", () => {
    const { days, later, resting } = comingBackByDay(
      memories.values(),
      dayNumber(10),
      {
        daysAhead: 2,
        dueOn: ({ case: id, lastsUntil }) =>
          id === "E2b" || id === "E3" ? undefined : lastsUntil,
      },
    );
    expect(days.flatMap((d) => d.memories.map((m) => m.case))).toEqual(["E2a"]);
    expect({ later, resting }).toEqual({ later: 2, resting: 2 });
  });

  it("is counted in minutes, by the learner's own time for each case", () => {
    const secondsOf = secondsByCase([
      { ...OWN_TIMES, case: "E2b", total: 4000 },
      { ...OWN_TIMES, case: "E2a", total: 44_000 },
    ]);
    const { days } = comingBackByDay(memories.values(), dayNumber(10), {
      secondsOf,
    });
    // 1.2 × (4 + 6) s, 1.2 × (44 + 6) s, and E1 the middle of the two.
    expect(days.slice(0, 3).map((d) => 60 * d.minutes)).toEqual([
      expect.closeTo(12),
      expect.closeTo(60),
      expect.closeTo(36),
    ]);
    expect(days[3]?.minutes).toBe(0);
    expect(secondsByCase([])({ case: "E1", hold: "up" })).toBeCloseTo(19.2);
  });

  it("is thirty empty days without memories", () => {
    const { days, later } = comingBackByDay([], dayNumber(0));
    expect(days).toHaveLength(30);
    expect(days.every((d) => d.memories.length === 0)).toBe(true);
    expect(later).toBe(0);
  });
});

describe("the last answers", () => {
  const log = [
    ...[1, 2].map((day) => answered("E1", 1 - day)),
    answered("E1", 3, { thinking: ms(500) }),
    answered("C1", 1, { verdict: "missed" }),
    answered("E1", 2, { asking: "shown" }),
    answered("E2a", 4, { learner: "ben" }),
    answered("E1", 1, { hold: "down", id: "down" }),
  ];
  const listed = (
    count: number,
    filter: Partial<Parameters<typeof lastAnswers>[2]> = {},
  ) =>
    lastAnswers(gradeLog(inReplayOrder(log)), count, {
      learner: "ada",
      ...filter,
    }).map(({ review, outcome }) => `${review.id} ${outcome}`);

  it("are the newest first, with their outcome, showings left out", () => {
    expect(listed(10)).toEqual([
      "E1-3 quick",
      "down steady",
      "C1-1 missed",
      "E1-0 steady",
      "E1--1 steady",
    ]);
    expect(listed(1)).toEqual(["E1-3 quick"]);
    expect(listed(0)).toEqual([]);
  });

  it("are those of one case or hold where asked", () => {
    expect(listed(2, { case: "E1" })).toEqual(["E1-3 quick", "down steady"]);
    expect(listed(10, { case: "E1", hold: "down" })).toEqual(["down steady"]);
  });
});
