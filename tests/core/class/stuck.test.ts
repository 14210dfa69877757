import { describe, expect, it } from "vitest";
import { gravity, stuckAt } from "../../../core/class/stuck";
import { present } from "../../../core/invariant";
import { dayNumber } from "../../../core/memory/local-day";
import type { Review } from "../../../core/memory/review";
import { ms } from "../memory/sample-review";
import { ago, missedAgo, slowAnswers, summaryOf, TODAY } from "./made-members";

function stuck(answers: readonly Review[], today = TODAY) {
  const [record] = summaryOf(answers).cases;
  return stuckAt(present(record, "answered"), dayNumber(today));
}

describe("being stuck at a case", () => {
  it("is missing it on two of the last three days", () => {
    expect(
      stuck([missedAgo(5, "E1"), ago(3, "E1"), missedAgo(1, "E1")]),
    ).toEqual({ kind: "misses", missed: 2, days: 3 });
    expect(stuck([missedAgo(3, "E1"), missedAgo(1, "E1")])).toEqual({
      kind: "misses",
      missed: 2,
      days: 2,
    });
  });

  it("is not one miss, nor two in one round, nor what was missed long before", () => {
    expect(stuck([missedAgo(1, "E1")])).toBeUndefined();
    expect(
      stuck([missedAgo(1, "E1"), { ...missedAgo(1, "E1"), asking: "again" }]),
    ).toBeUndefined();
    expect(
      stuck([
        missedAgo(9, "E1"),
        missedAgo(8, "E1"),
        ...[5, 3, 1].map((days) => ago(days, "E1")),
      ]),
    ).toBeUndefined();
  });

  it("says for what the case is taken", () => {
    expect(stuck([missedAgo(3, "C1", "C2"), missedAgo(1, "C1")])).toMatchObject(
      {
        kind: "misses",
        takenFor: "C2",
      },
    );
  });

  it("is missing a case last time that was kept", () => {
    const kept = [60, 55, 40, 20].map((days) => ago(days, "E1"));
    expect(stuck([...kept, missedAgo(1, "E1")])).toEqual({ kind: "lost" });
    expect(stuck([...kept, missedAgo(2, "E1"), ago(1, "E1")])).toBeUndefined();
  });

  it("is taking over twice the target though it is right, from three timed answers on", () => {
    expect(stuck(slowAnswers("E1", 20, 3))).toEqual({
      kind: "slow",
      share: 2.5,
    });
    expect(stuck(slowAnswers("E1", 20, 2))).toBeUndefined();
    expect(stuck(slowAnswers("E1", 16, 5))).toBeUndefined();
    const missedSince = stuck([
      ...slowAnswers("E1", 20, 5),
      missedAgo(0, "E1"),
    ]);
    expect(missedSince?.kind).not.toBe("slow");
  });

  it("is over four weeks after the last day that counted", () => {
    const log = [missedAgo(3, "E1"), missedAgo(1, "E1")];
    expect(stuck(log, TODAY + 25)).toMatchObject({ missed: 2, days: 2 });
    expect(stuck(log, TODAY + 26)).toBeUndefined();
    const lost = [60, 55, 40, 20].map((days) => ago(days, "E1"));
    lost.push(missedAgo(1, "E1"));
    expect(stuck(lost, TODAY + 27)).toBeDefined();
    expect(stuck(lost, TODAY + 28)).toBeUndefined();
    const slow = slowAnswers("E1", 20, 3);
    expect(stuck(slow, TODAY + 27)).toBeDefined();
    expect(stuck(slow, TODAY + 28)).toBeUndefined();
  });

  it("is not begun again by an answer that does not count", () => {
    const chosen = ago(1, "E1", { asking: "extra", answerWay: "which-is-it" });
    expect(
      stuck([missedAgo(202, "E1"), missedAgo(200, "E1"), chosen]),
    ).toBeUndefined();
    const kept = [320, 315, 300, 260].map((days) => ago(days, "E1"));
    expect(stuck([...kept, missedAgo(200, "E1"), chosen])).toBeUndefined();
    const slow = [203, 202, 201].map((days) =>
      ago(days, "E1", { total: ms(20_000) }),
    );
    expect(stuck(slow, TODAY - 190)?.kind).toBe("slow");
    expect(stuck([...slow, chosen])).toBeUndefined();
  });

  it("counts the missed days of four weeks, and none before them", () => {
    expect(stuck([missedAgo(200, "E1"), missedAgo(1, "E1")])).toBeUndefined();
    expect(
      stuck([missedAgo(200, "E1"), missedAgo(3, "E1"), missedAgo(1, "E1")]),
    ).toEqual({ kind: "misses", missed: 2, days: 2 });
  });

  it("weighs every missed day, and what is lost or slow as one", () => {
    expect(gravity({ kind: "misses", missed: 3, days: 3 })).toBe(3);
    expect(gravity({ kind: "lost" })).toBe(1);
    expect(gravity({ kind: "slow", share: 9 })).toBe(1);
  });
});
