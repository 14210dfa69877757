import { describe, expect, it } from "vitest";
import {
  gradeOf,
  isAway,
  outcomeByFacts,
  outcomeByTime,
} from "../../../core/memory/grade";
import { HINTS } from "../../../core/memory/review";
import { sampleReview } from "./sample-review";

describe("the grade of an answer by itself", () => {
  it("is clean for a right answer without help", () => {
    expect(gradeOf(sampleReview(0))).toBe("clean");
  });

  it("is hesitant after a correction or a hint", () => {
    expect(gradeOf(sampleReview(0, { corrections: 1 }))).toBe("hesitant");
    for (const hint of HINTS.filter((h) => h !== "whole-way"))
      expect(gradeOf(sampleReview(0, { hints: [hint] }))).toBe("hesitant");
  });

  it("is not touched by finger slips", () => {
    expect(gradeOf(sampleReview(0, { slips: 5 }))).toBe("clean");
  });

  it("is missed after a miss, and after the whole way was shown", () => {
    expect(gradeOf(sampleReview(0, { verdict: "missed" }))).toBe("missed");
    expect(gradeOf(sampleReview(0, { hints: ["whole-way"] }))).toBe("missed");
  });
});

describe("an outcome", () => {
  // Source: issue 5, "Grades".
  it.each([
    [-1.31, "quick"],
    [-1.3, "steady"],
    [1, "steady"],
    [1.01, "slow"],
    [4, "slow"],
    [4.01, "steady"],
  ] as const)("at %d spreads from the usual time is %s", (z, outcome) => {
    expect(outcomeByTime(z)).toBe(outcome);
    expect(isAway(z)).toBe(z > 4);
  });

  it("without a time that says anything is that of the facts", () => {
    expect(outcomeByFacts("missed")).toBe("missed");
    expect(outcomeByFacts("hesitant")).toBe("slow");
    expect(outcomeByFacts("clean")).toBe("steady");
  });
});
