import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { dayNumber } from "../../../core/memory/local-day";
import type { Review } from "../../../core/memory/review";
import { confusionsOf, timesMixedUp } from "../../../core/progress/confusions";
import { answered } from "./timed-answers";

describe("what is mistaken for what", () => {
  const missed = (day: number, id: CaseId, answeredAs?: CaseId) =>
    answered(day, {
      case: id,
      verdict: "missed",
      ...(answeredAs === undefined ? {} : { answeredAs }),
    });

  it("counts pairs in the direction in which they happened, the most frequent first", () => {
    const { pairs, missed: misses } = confusionsOf([
      missed(1, "C1", "C2"),
      missed(2, "C2", "C1"),
      missed(3, "C1", "C2"),
      missed(4, "C3", "C4"),
      missed(5, "C3"),
      answered(6),
    ]);
    expect(
      pairs.map((p) => `${p.case} ${p.answeredAs} ${p.times} ${p.lastDay}`),
    ).toEqual(["C1 C2 2 3", "C3 C4 1 4", "C2 C1 1 2"]);
    expect(misses).toBe(5);
  });

  it("counts what was chosen with what was turned", () => {
    const chosen = (answerWay: Review["answerWay"], answeredAs?: CaseId) =>
      answered(7, {
        ...missed(7, "C1", answeredAs),
        asking: "extra",
        answerWay,
      });
    const { pairs, missed: misses } = confusionsOf([
      missed(1, "C1", "C2"),
      chosen("which-is-it", "C2"),
      chosen("which-is-it"),
    ]);
    expect(pairs.map((p) => `${p.case} ${p.answeredAs} ${p.times}`)).toEqual([
      "C1 C2 2",
    ]);
    expect(misses).toBe(3);
  });

  it("counts pieces and homes apart from cases: no case could be taken for another", () => {
    const chosen = (
      day: number,
      answerWay: Review["answerWay"],
      mistook?: Review["mistook"],
    ) =>
      answered(day, {
        ...missed(day, "C1"),
        asking: "extra",
        answerWay,
        ...(mistook === undefined ? {} : { mistook }),
      });
    const log = [
      missed(1, "C1", "C2"),
      chosen(1, "find-it", { piece: "URF", for: "UFL" }),
      chosen(2, "find-it", { piece: "UFL", for: "URF" }),
      chosen(3, "where-is-home", { piece: "URF", for: "UFL" }),
      chosen(4, "where-is-home", { piece: "URF", for: "UFL" }),
      // Chosen before it was kept what.
      chosen(5, "find-it"),
    ];
    const { pieces, pairs, missed: misses } = confusionsOf(log);
    expect(misses).toBe(1);
    expect(pairs).toHaveLength(1);
    expect(pieces).toEqual([
      {
        answerWay: "where-is-home",
        piece: "URF",
        for: "UFL",
        times: 2,
        lastDay: 4,
      },
      { answerWay: "find-it", piece: "UFL", for: "URF", times: 1, lastDay: 2 },
      { answerWay: "find-it", piece: "URF", for: "UFL", times: 1, lastDay: 1 },
    ]);
    expect(confusionsOf(log, dayNumber(4)).pieces).toMatchObject([
      { times: 1 },
    ]);
  });

  it("is told of one case in both directions, the most frequent first", () => {
    const { pairs } = confusionsOf([
      missed(1, "C1", "C2"),
      missed(2, "C3", "C1"),
      missed(3, "C1", "C3"),
      missed(4, "C1", "C3"),
      missed(5, "C2", "C1"),
      missed(6, "C4", "C5"),
    ]);
    expect([...timesMixedUp("C1", pairs)]).toEqual([
      ["C3", 3],
      ["C2", 2],
    ]);
    expect([...timesMixedUp("E1", pairs)]).toEqual([]);
  });

  it("leaves out old ones, and the right case for another home", () => {
    const log = [
      missed(1, "C1", "C2"),
      missed(5, "C1", "C1"),
      missed(6, "E1", "E3"),
    ];
    const { pairs, missed: misses } = confusionsOf(log, dayNumber(5));
    expect(pairs.map((pair) => pair.case)).toEqual(["E1"]);
    expect(misses).toBe(2);
  });
});
