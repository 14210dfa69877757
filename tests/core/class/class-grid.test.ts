import { describe, expect, it } from "vitest";
import {
  casesMet,
  classGrid,
  stuckByCase,
  stuckFirst,
} from "../../../core/class/class-grid";
import { dayNumber } from "../../../core/memory/local-day";
import { ago, member, missedAgo, slowAnswers, TODAY } from "./made-members";

const today = dayNumber(TODAY);
const stuckAt = (...ids: readonly ("E1" | "E2a" | "E3")[]) =>
  [4, 2].flatMap((days) => ids.map((id) => missedAgo(days, id)));

const ADA = member("Ada", ago(1, "E1"), ago(1, "E3"));
const BEN = member("Ben", ...stuckAt("E2a"));
const CAM = member("Cam", ...stuckAt("E2a", "E3"));
const DEE = member("Dee", missedAgo(20, "E1"), missedAgo(8, "E1"));
const EVA = member("Eva");

const grid = classGrid([EVA, DEE, ADA, BEN, CAM], ["E1", "E2a", "E3"], today);

describe("a class's grid", () => {
  it("has a row a learner and a cell for each case that they met", () => {
    expect(grid.rows.map(({ member: { name } }) => name)).toEqual([
      "Eva",
      "Dee",
      "Ada",
      "Ben",
      "Cam",
    ]);
    const ada = grid.rows[2];
    expect(ada?.cells.map((cell) => cell?.state)).toEqual([
      "settling",
      undefined,
      "settling",
    ]);
    expect(ada?.stuck).toBe(0);
    expect(grid.rows[4]).toMatchObject({ stuck: 2 });
  });

  it("tells who practises, who has been away for more than a week, and who never began", () => {
    expect(grid.rows.map(({ attendance }) => attendance)).toEqual([
      { kind: "not-begun" },
      { kind: "away", days: 8 },
      { kind: "practises" },
      { kind: "practises" },
      { kind: "practises" },
    ]);
    const week = classGrid([member("Fay", ago(7, "E1"))], ["E1"], today);
    expect(week.rows[0]?.attendance.kind).toBe("practises");
  });

  it("counts those who are stuck at a case, without those who are away", () => {
    expect(stuckByCase(grid)).toEqual([0, 2, 1]);
  });

  it("puts what needs looking at first, each learner's cells with their cases", () => {
    const sorted = stuckFirst(grid);
    expect(sorted.cases).toEqual(["E2a", "E3", "E1"]);
    expect(sorted.rows.map(({ member: { name } }) => name)).toEqual([
      "Cam",
      "Ben",
      "Ada",
      "Dee",
      "Eva",
    ]);
    for (const { cells } of sorted.rows)
      cells.forEach((cell, i) => {
        if (cell !== undefined) expect(cell.record.case).toBe(sorted.cases[i]);
      });
    expect(sorted.rows[3]?.cells[2]?.stuck?.kind).toBe("misses");
  });

  it("marks what is slow and what is taken for another, stuck or not", () => {
    const gus = member(
      "Gus",
      ...slowAnswers("E1", 30, 3),
      missedAgo(1, "E2a", "E3"),
    );
    const [row] = classGrid([gus], ["E1", "E2a"], today).rows;
    expect(row?.cells[0]).toMatchObject({ isSlow: true });
    expect(row?.cells[1]).toMatchObject({
      isSlow: false,
      takenFor: { case: "E3", times: 1 },
    });
    expect(row?.cells[1]?.stuck).toBeUndefined();
  });

  it("shows a case in the hold in which it was answered last", () => {
    const both = member(
      "Hal",
      ago(9, "E1", { hold: "down" }),
      ago(2, "E1", { hold: "up" }),
    );
    const [row] = classGrid([both], ["E1"], today).rows;
    expect(row?.cells[0]?.record.hold).toBe("up");
  });

  it("knows every case that somebody has met", () => {
    expect([...casesMet([ADA, BEN])].sort()).toEqual(["E1", "E2a", "E3"]);
    expect(casesMet([EVA]).size).toBe(0);
  });
});
