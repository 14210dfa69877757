import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import {
  caseTimes,
  shareOfTarget,
  slowestFirst,
  turningTells,
} from "../../../core/progress/case-times";
import { answered, timed } from "./timed-answers";

describe("how long a case takes", () => {
  it("is the middle one of the last five, whose parts add up", () => {
    const times = caseTimes([
      timed(1, 90, 90),
      timed(2, 1, 9),
      timed(3, 5, 1),
      timed(4, 2, 2),
      timed(5, 4, 4),
      timed(6, 6, 6, { target: 9 }),
      timed(7, 1, 1, { verdict: "missed" }),
    ]);
    expect(times).toEqual({
      case: "E1",
      hold: "up",
      answerWay: "on-screen",
      answers: 5,
      total: 8000,
      thinking: 4000,
      turning: 4000,
      usualThinking: 4000,
      target: 9,
    });
  });

  it("is not known before an answer counts, nor are parts that were not measured", () => {
    expect(caseTimes([])).toBeUndefined();
    expect(caseTimes([answered(1, { verdict: "missed" })])).toBeUndefined();
    const { thinking, ...unmeasured } = answered(1);
    expect(thinking).toBeDefined();
    expect(caseTimes([unmeasured])).not.toHaveProperty("thinking");
  });

  it("is looked at in the way it is usually answered", () => {
    const written = timed(1, 30, 30, { answerWay: "write-it" });
    const times = caseTimes([timed(1, 1, 1), written, timed(3, 1, 1)]);
    expect(times).toMatchObject({ answers: 2, total: 2000 });
  });

  it("is slow by its own target", () => {
    const one = (id: CaseId, seconds: number, target: number) =>
      caseTimes([timed(1, 0, seconds, { case: id, target })]) ?? [];
    const times = [one("E1", 9, 10), one("C1", 12, 24), one("E3", 5, 4)].flat();
    expect(slowestFirst(times).map((t) => [t.case, shareOfTarget(t)])).toEqual([
      ["E3", 1.25],
      ["E1", 0.9],
      ["C1", 0.5],
    ]);
  });
});

describe("what a case's turns tell", () => {
  /** A case with a target of eight seconds. */
  const tells = (thinking: number, turning: number, besideOthers?: number) => {
    const times = caseTimes([timed(1, thinking, turning)]);
    return (
      times &&
      turningTells({
        ...times,
        ...(besideOthers === undefined
          ? {}
          : { turns: { usual: 7, besideOthers } }),
      })
    );
  };

  it("is fumbling where they take clearly longer than others, whatever the target", () => {
    expect(tells(2, 7, 1.25)).toBe("fumbled");
    expect(tells(7, 2, 3)).toBe("fumbled");
    expect(tells(1, 2, 1.3)).toBe("fumbled");
  });

  it("is that there are many where they do not, and turning takes it over the target", () => {
    expect(tells(2, 7, 1.24)).toBe("as-others");
    expect(tells(2, 7, 0.8)).toBe("as-others");
  });

  it("is nothing within the target, where most is thinking, or unknown", () => {
    expect(tells(2, 6, 1)).toBeUndefined();
    expect(tells(7, 2, 1)).toBeUndefined();
    expect(tells(2, 7)).toBeUndefined();
  });
});
