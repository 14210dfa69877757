import { describe, expect, it } from "vitest";
import { present } from "../../../core/invariant";
import { memoriesOf, memoryKey } from "../../../core/memory/schedule";
import { ago, missedAgo, slowAnswers, summaryOf, TODAY } from "./made-members";

describe("what a learner's log says to their coach", () => {
  it("is nothing without an answer", () => {
    expect(summaryOf([])).toEqual({ answers: 0, cases: [] });
    expect(summaryOf([ago(1, "E1", { asking: "shown" })])).toEqual({
      answers: 0,
      cases: [],
    });
  });

  it("has the memory that the schedule has", () => {
    const log = [ago(9, "E1"), missedAgo(5, "E1"), ago(4, "E1"), ago(1, "E1")];
    const [record] = summaryOf(log).cases;
    const { stability, lastDay, lastsUntil, missedLast, days } = present(
      memoriesOf(log).get(memoryKey("ada", "E1", "up")),
      "it was asked alone",
    );
    expect(record?.memory).toEqual({
      stability,
      lastDay,
      lastsUntil,
      missedLast,
      days,
    });
  });

  it("tells the last three days that counted, and not what was repeated on them", () => {
    const log = [
      missedAgo(9, "E1"),
      missedAgo(5, "E1"),
      ago(5, "E1", { asking: "again" }),
      ago(3, "E1"),
      missedAgo(1, "E1"),
    ];
    expect(summaryOf(log).cases[0]?.lastDays).toEqual([
      { lastDay: TODAY - 5, wasRight: false },
      { lastDay: TODAY - 3, wasRight: true },
      { lastDay: TODAY - 1, wasRight: false },
    ]);
  });

  it("tells whether a case was kept before it was missed", () => {
    const right = [60, 55, 40, 20].map((days) => ago(days, "E1"));
    expect(summaryOf([...right, missedAgo(1, "E1")]).cases[0]).toMatchObject({
      wasKept: true,
      memory: { missedLast: true },
    });
    expect(
      summaryOf([ago(3, "E1"), missedAgo(1, "E1")]).cases[0],
    ).toMatchObject({ wasKept: false });
  });

  it("tells what a case was taken for in its last ten answers, the most frequent first", () => {
    const log = [
      missedAgo(20, "C1", "C5"),
      missedAgo(19, "C1", "C2"),
      missedAgo(18, "C1", "C3"),
      missedAgo(17, "C1", "C2"),
      // The right case for another home.
      missedAgo(16, "C1", "C1"),
      ...[9, 8, 7, 6, 5, 4].map((days) => ago(days, "C1")),
    ];
    expect(summaryOf(log).cases[0]?.takenFor).toEqual([
      { case: "C2", times: 2 },
      { case: "C3", times: 1 },
    ]);
  });

  it("has the usual time beside the target, and the newest day of all cases", () => {
    const summary = summaryOf([...slowAnswers("E2a", 17, 4), ago(0, "E1")]);
    expect(summary).toMatchObject({ answers: 5, lastDay: TODAY });
    expect(summary.cases[0]?.times).toEqual({
      answers: 4,
      total: 17_000,
      target: 8,
      lastDay: TODAY - 1,
    });
  });

  it("keeps the newest day where a clock was set back", () => {
    const log = [ago(2, "E1"), ago(9, "E1", { at: ago(1, "E1").at })];
    expect(summaryOf(log).lastDay).toBe(TODAY - 2);
  });
});
