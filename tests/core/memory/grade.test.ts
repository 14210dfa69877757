import { describe, expect, it } from "vitest";
import { gradeOf, outcomeOf } from "../../../core/memory/grade";
import { ms, sampleReview } from "./sample-review";

describe("the grade of an answer", () => {
  it("is clean for a right answer without correction or hint", () => {
    expect(gradeOf(sampleReview(0))).toBe("clean");
  });

  it("is hesitant after a correction or after a hint", () => {
    expect(gradeOf(sampleReview(0, { corrections: 1 }))).toBe("hesitant");
    for (const hint of ["piece", "home", "first-turn"] as const)
      expect(gradeOf(sampleReview(0, { hints: [hint] }))).toBe("hesitant");
  });

  it("is not touched by finger slips", () => {
    expect(gradeOf(sampleReview(0, { slips: 5 }))).toBe("clean");
  });

  it("is missed for a miss and for being shown the whole way", () => {
    expect(gradeOf(sampleReview(0, { verdict: "missed" }))).toBe("missed");
    expect(gradeOf(sampleReview(0, { hints: ["whole-way"] }))).toBe("missed");
  });
});

describe("the outcome of an answer", () => {
  const outcome = (total: number, changes = {}) =>
    outcomeOf(sampleReview(0, { target: 8, total: ms(total), ...changes }));

  it("is quick within half the target, steady within it, slow beyond", () => {
    expect(outcome(4000)).toBe("quick");
    expect(outcome(4001)).toBe("steady");
    expect(outcome(8000)).toBe("steady");
    expect(outcome(8001)).toBe("slow");
  });

  it("is steady at best after a correction or a hint", () => {
    expect(outcome(1000, { corrections: 1 })).toBe("steady");
    expect(outcome(1000, { hints: ["home"] })).toBe("steady");
    expect(outcome(9000, { corrections: 1 })).toBe("slow");
  });

  it("is missed for a miss, however quick", () => {
    expect(outcome(1000, { verdict: "missed" })).toBe("missed");
  });

  it("is steady for a right answer whose time an interruption spoilt", () => {
    expect(outcome(900_000, { interrupted: true })).toBe("steady");
  });
});
