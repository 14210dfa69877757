import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { dayNumber } from "../../../core/memory/local-day";
import { RECOGNISING_WAYS, type Review } from "../../../core/memory/review";
import { isTimed, usualWay } from "../../../core/progress/answer-log";
import {
  caseTimes,
  shareOfTarget,
  slowestFirst,
  turningTells,
} from "../../../core/progress/case-times";
import { confusionsOf, timesMixedUp } from "../../../core/progress/confusions";
import { keptOverTime } from "../../../core/progress/kept";
import { median } from "../../../core/progress/median";
import { milestonesOf } from "../../../core/progress/milestones";
import { recallDays } from "../../../core/progress/recall-days";
import {
  addShares,
  caseOverDays,
  TimesByDay,
} from "../../../core/progress/times-over-days";
import { ms, sampleReview } from "../memory/sample-review";
import { graded } from "./graded";

const answered = (day: number, changes: Partial<Review> = {}): Review =>
  sampleReview(day, changes);

/** An answer that took so many seconds, thinking and turning. */
const timed = (
  day: number,
  thinking: number,
  turning: number,
  changes: Partial<Review> = {},
): Review =>
  answered(day, {
    thinking: ms(1000 * thinking),
    turning: ms(1000 * turning),
    total: ms(1000 * (thinking + turning)),
    ...changes,
  });

describe("the median", () => {
  it("is the middle one, or the mean of the two middle ones", () => {
    expect(median([])).toBeUndefined();
    expect(median([7])).toBe(7);
    expect(median([9, 1, 5])).toBe(5);
    expect(median([9, 1, 5, 2])).toBe(3.5);
  });
});

describe("which answers are timed", () => {
  it("are the right ones on one's own, without hint or interruption", () => {
    expect(isTimed(answered(1))).toBe(true);
    expect(isTimed(answered(1, { asking: "again", corrections: 1 }))).toBe(
      true,
    );
    expect(isTimed(answered(1, { asking: "extra" }))).toBe(true);
    for (const change of [
      { asking: "shown" },
      { asking: "helped" },
      { verdict: "missed" },
      { hints: ["piece"] },
      { hints: ["whole-way"] },
      { interrupted: true },
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

function allOverDays(answers: readonly Review[]) {
  const all = new TimesByDay();
  addShares(all, answers);
  return all.overDays();
}

describe("times over days", () => {
  it("are medians by day, interruptions and misses left out", () => {
    const over = caseOverDays([
      timed(1, 4, 4),
      timed(1, 2, 2),
      timed(1, 3, 4),
      timed(2, 1, 90, { interrupted: true }),
      timed(2, 1, 90, { verdict: "missed" }),
      timed(3, 1, 1),
    ]);
    expect(over?.periodDays).toBe(1);
    expect(over?.periods).toEqual([
      { day: 1, answers: 3, total: 7000, thinking: 3000 },
      { day: 3, answers: 1, total: 2000, thinking: 1000 },
    ]);
  });

  it("keep the last five attempts, a miss as unfinished", () => {
    const over = caseOverDays([
      timed(1, 9, 9),
      timed(2, 1, 1.239),
      timed(3, 1, 1, { verdict: "missed" }),
      timed(3, 1, 1, { asking: "again" }),
      timed(4, 1, 8, { interrupted: true }),
      timed(5, 2, 2),
      timed(6, 3, 3),
    ]);
    expect(over?.lastAttempts).toEqual([223, "unfinished", 200, 400, 600]);
  });

  it("know nothing of answers that were chosen", () => {
    const chosen = { asking: "extra", answerWay: "which-is-it" } as const;
    const over = caseOverDays([
      timed(1, 4, 4),
      timed(2, 1, 0, chosen),
      timed(3, 1, 0, { ...chosen, verdict: "missed" }),
    ]);
    expect(over?.periods.map(({ day }) => day)).toEqual([1]);
    expect(over?.lastAttempts).toEqual([800]);
  });

  it("take days together where there are more than a picture holds", () => {
    const daily = (count: number) =>
      caseOverDays(Array.from({ length: count }, (_, day) => timed(day, 1, 1)));
    expect(daily(60)?.periodDays).toBe(1);
    expect(daily(61)?.periodDays).toBe(7);
    expect(daily(61)?.periods).toHaveLength(9);
    expect(daily(2000)?.periodDays).toBe(91);
    const answers = daily(2000)?.periods.map((period) => period.answers) ?? [];
    expect(answers.reduce((a, b) => a + b)).toBe(2000);
  });

  it("of all cases are shares of their targets", () => {
    const { periods } = allOverDays([
      timed(1, 4, 4, { target: 8 }),
      timed(1, 6, 12, { case: "C1", target: 9 }),
      timed(1, 1, 1, { case: "C2", target: 4 }),
    ]);
    expect(periods).toEqual([{ day: 1, answers: 3, total: 1, thinking: 0.5 }]);
  });

  it("are none without an answer that counts", () => {
    expect(caseOverDays([])).toBeUndefined();
    expect(caseOverDays([answered(1, { hints: ["home"] })])).toBeUndefined();
    expect(allOverDays([]).periods).toEqual([]);
  });
});

describe("what was kept over time", () => {
  const history = (...days: Review[]) => recallDays(graded(days));

  it("knows nothing of answers that were chosen", () => {
    for (const answerWay of RECOGNISING_WAYS)
      expect(history(answered(1, { answerWay }))).toEqual([]);
  });

  it("counts each case by its memory, from the first day that counts until today", () => {
    // A first clean answer lasts 2 days, a second on time 11, a third 46
    // (check-values), so the third is kept; a miss is fading at once.
    const over = keptOverTime(
      [
        history(answered(0), answered(2), answered(13)),
        history(answered(13, { verdict: "missed" })),
      ],
      dayNumber(14),
    );
    expect(over).toHaveLength(15);
    expect(over[0]).toEqual({ day: 0, kept: 0, settling: 1, fading: 0 });
    expect(over[12]).toEqual({ day: 12, kept: 0, settling: 1, fading: 0 });
    expect(over[13]).toEqual({ day: 13, kept: 1, settling: 0, fading: 1 });
    expect(over[14]?.day).toBe(14);
  });

  it("lets a case fade that is left alone", () => {
    const over = keptOverTime([history(answered(0))], dayNumber(60));
    expect(over[0]?.settling).toBe(1);
    expect(over.at(-1)).toMatchObject({ settling: 0, fading: 1 });
  });

  it("looks at no more days than a picture holds, first and last among them", () => {
    for (const last of [1, 59, 60, 61, 700, 5000]) {
      const days = keptOverTime([history(answered(0))], dayNumber(last)).map(
        ({ day }) => day,
      );
      expect(days[0]).toBe(0);
      expect(days.at(-1)).toBe(last);
      expect(days.length).toBeLessThanOrEqual(62);
      expect(new Set(days).size).toBe(days.length);
    }
  });

  it("is empty before anything counts, and one day where the clock was set back", () => {
    expect(keptOverTime([], dayNumber(5))).toEqual([]);
    expect(keptOverTime([[]], dayNumber(5))).toEqual([]);
    expect(keptOverTime([history(answered(9))], dayNumber(5))).toEqual([
      { day: 5, kept: 0, settling: 0, fading: 0 },
    ]);
  });
});

describe("milestones", () => {
  const corners = (state: "kept" | "settling" | "new", ...times: number[]) =>
    times.map((thinking) => ({
      stage: "first-layer-corners" as const,
      state,
      thinking,
    }));

  it("name the fastest step that half of the met cases have reached", () => {
    expect(
      milestonesOf([
        ...corners("kept", 800, 900),
        ...corners("settling", 1400, 5000),
        ...corners("new", 100),
      ]),
    ).toEqual([
      {
        stage: "first-layer-corners",
        met: 4,
        kept: 2,
        thinking: { under: 1000, cases: 2 },
      },
    ]);
  });

  it("name no time that is not reached or not known", () => {
    const [slow] = milestonesOf(corners("kept", 11_000, 900, 12_000));
    expect(slow).not.toHaveProperty("thinking");
    const [unknown] = milestonesOf([
      { stage: "first-layer-edges", state: "fading" },
    ]);
    expect(unknown).toEqual({ stage: "first-layer-edges", met: 1, kept: 0 });
    expect(milestonesOf([])).toEqual([]);
  });
});
