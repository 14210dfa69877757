import { describe, expect, it } from "vitest";
import type { Review } from "../../../core/memory/review";
import { isTimed, usualWay } from "../../../core/progress/answer-log";
import { answered } from "./timed-answers";

describe("which answers are timed", () => {
  it("are the right ones on one's own, without hint or interruption", () => {
    expect(isTimed(answered(1))).toBe(true);
    expect(isTimed(answered(1, { asking: "again", corrections: 1 }))).toBe(
      true,
    );
    expect(isTimed(answered(1, { asking: "extra" }))).toBe(true);
    expect(isTimed(answered(1, { answerWay: "on-paper" }))).toBe(true);
    for (const change of [
      { asking: "shown" },
      { asking: "helped" },
      { verdict: "missed" },
      { hints: ["piece"] },
      { hints: ["whole-way"] },
      { interrupted: true },
      { answerWay: "on-paper", untimed: true },
      { asking: "extra", answerWay: "which-is-it" },
      { asking: "alone", answerWay: "find-it" },
      { asking: "again", answerWay: "where-is-home" },
    ] as const)
      expect(isTimed(answered(1, change)), JSON.stringify(change)).toBe(false);
  });
});

describe("the usual way of answering", () => {
  const by = (answerWay: Review["answerWay"], count: number) =>
    Array.from({ length: count }, () => answered(1, { answerWay }));

  it("is the most frequent of the last twenty, the newest of even ones", () => {
    expect(usualWay([])).toBeUndefined();
    expect(usualWay([...by("write-it", 3), ...by("on-screen", 2)])).toBe(
      "write-it",
    );
    expect(usualWay([...by("write-it", 2), ...by("on-screen", 2)])).toBe(
      "on-screen",
    );
    expect(usualWay([...by("write-it", 90), ...by("my-cube", 11)])).toBe(
      "my-cube",
    );
  });
});
