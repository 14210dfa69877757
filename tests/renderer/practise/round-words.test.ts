import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../core/memory/local-day";
import type { Outcome } from "../../../core/memory/grade";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import {
  answerItem,
  currentItem,
  type Round,
  startRound,
} from "../../../core/memory/round";
import {
  marksThatFit,
  roundRow,
  summaryOf,
} from "../../../renderer/state/practise/round-words";
import { sampleReview } from "../storage/sample-review";

type Asking = NonNullable<PlannedCase["asking"]>;

function roundOf(...askings: readonly Asking[]): Round {
  const ids = ["C1", "E1", "C2"] as const;
  const planned = ids.slice(0, askings.length).map((id, i): PlannedCase => ({
    case: id,
    hold: "up",
    deck: "d",
    target: 8,
    memory: "settling",
    times: 1,
    asking: askings[i] ?? "alone",
  }));
  return startRound(planned, {
    id: "r",
    learner: "ada",
    day: dayNumber(20_000),
    seed: 1,
    now: 1,
  });
}

/** The round answered so, and right from there on. */
function answered(round: Round, ...outcomes: readonly Outcome[]): Round {
  let next = round;
  for (let i = 0; currentItem(next) !== undefined; i++) {
    const outcome = outcomes[i] ?? "steady";
    const verdict = outcome === "missed" ? "missed" : "right";
    next = answerItem(
      next,
      sampleReview({ id: `answer-${i}`, verdict }),
      outcome,
    );
  }
  return next;
}

describe("the end of a round", () => {
  it("says which cases were missed, each once however often", () => {
    const round = answered(
      roundOf("extra", "extra", "extra"),
      "steady",
      "missed",
      "steady",
      "missed",
    );
    const summary = summaryOf(round);
    expect(summary.missed).toBe(2);
    expect(summary.missedCases.map((one) => one.case)).toEqual(["E1"]);
    expect(summary.cases).toHaveLength(3);
    expect(summaryOf(answered(roundOf("extra"))).missedCases).toEqual([]);
  });

  it("says whether all of it was beside the schedule", () => {
    expect(summaryOf(roundOf("extra", "extra")).isExtra).toBe(true);
    expect(summaryOf(roundOf("extra", "alone")).isExtra).toBe(false);
    expect(summaryOf(roundOf("alone")).isExtra).toBe(false);
  });
});

describe("the number of a case in its round", () => {
  it("stays while the case is tried once more", () => {
    const round: Round = {
      ...roundOf(),
      results: [{ case: "E1", asking: "alone", outcome: "missed" }],
    };
    expect(roundRow(round, undefined).label).toBe("1 of 1 done");
    expect(roundRow(round, "once-more").label).toBe("1 of 1");
  });
});

describe("the marks of a long round", () => {
  it("are cut so that the current one stays in sight", () => {
    const marks = Array.from({ length: 18 }, (_, n) =>
      n < 12 ? "quick" : n === 12 ? "current" : "to-come",
    );
    const fitting = marksThatFit(marks, 9);
    expect(fitting).toHaveLength(9);
    expect(fitting).toContain("current");
  });
});
