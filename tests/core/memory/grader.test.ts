import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Grader, gradeLog, THINKING_SHARE } from "../../../core/memory/grader";
import { dayNumber } from "../../../core/memory/local-day";
import { RECOGNISING_WAYS, type Review } from "../../../core/memory/review";
import { memoriesOf } from "../../../core/memory/schedule";
import { ms, noonOf, sampleReview } from "./sample-review";

/** A target of 6 s: 2 s for thinking. */
const TARGET = 6;
const USUAL = TARGET * 1000 * THINKING_SHARE;

let made = 0;
function answer(day: number, changes: Partial<Review> = {}): Review {
  made += 1;
  return sampleReview(day, {
    id: `answer-${String(made).padStart(5, "0")}`,
    target: TARGET,
    thinking: ms(USUAL),
    total: ms(3 * USUAL),
    ...changes,
  });
}

/** A grader that has seen so many days of E1 at the usual time. */
function practised(days: number, changes: Partial<Review> = {}): Grader {
  const grader = new Grader();
  for (let day = 0; day < days; day++) grader.grade(answer(day, changes));
  return grader;
}

const outcome = (grader: Grader, review: Review) =>
  grader.grade(review).outcome;

describe("thinking time", () => {
  it("decides whether a clean answer was quick, steady or slow for this learner", () => {
    const thinking = (factor: number) =>
      outcome(practised(10), answer(10, { thinking: ms(USUAL * factor) }));
    expect(thinking(1)).toBe("steady");
    expect(thinking(1.15)).toBe("steady");
    expect(thinking(1.5)).toBe("slow");
    expect(thinking(0.6)).toBe("quick");
  });

  it("is measured against the learner's own, not against the target", () => {
    const slowLearner = practised(10, { thinking: ms(USUAL * 4) });
    expect(outcome(slowLearner, answer(10, { thinking: ms(USUAL * 4) }))).toBe(
      "steady",
    );
    expect(outcome(slowLearner, answer(11, { thinking: ms(USUAL * 2) }))).toBe(
      "quick",
    );
  });

  it("of a case hardly met is measured by how this learner does on others", () => {
    const thinking = ms(USUAL * 2.2);
    const grader = new Grader();
    for (const id of ["C1", "C2", "C3", "C4"] as const)
      for (const day of [0, 1])
        grader.grade(answer(day, { case: id, thinking }));
    grader.grade(answer(2, { case: "E1", thinking }));
    expect(outcome(grader, answer(3, { case: "E1", thinking }))).toBe("steady");
    expect(outcome(practised(1), answer(3, { case: "E1", thinking }))).toBe(
      "slow",
    );
  });

  it("that says the learner was away changes nothing", () => {
    const grader = practised(10);
    const before = grader.usualTime("ada", "E1", "on-screen");
    expect(grader.grade(answer(10, { thinking: ms(120_000) }))).toEqual({
      outcome: "steady",
      recall: "steady",
    });
    expect(grader.usualTime("ada", "E1", "on-screen")).toEqual(before);
  });

  it("far above the usual is taken in only as far as 2.5 spreads", () => {
    // The usual time once, then a slow one: the median lies halfway between, in log time.
    const usual = (z: number) => {
      const grader = practised(1);
      const slow = answer(1, { thinking: ms(USUAL * Math.exp(z * spread)) });
      expect(outcome(grader, slow)).toBe("slow");
      return grader.usualTime("ada", "E1", "on-screen")?.time ?? 0;
    };
    // Of the one time 0.12, of the prior four times 0.3. Source: issue 5, "Grades".
    const spread = Math.sqrt((0.12 ** 2 + 4 * 0.3 ** 2) / 5);
    expect(usual(2)).toBeCloseTo(USUAL * Math.exp(spread), 6);
    for (const z of [2.6, 3.9])
      expect(usual(z)).toBeCloseTo(USUAL * Math.exp(1.25 * spread), 6);
  });

  it("that is as long twice running is what the case takes", () => {
    const grader = practised(10);
    const long = { thinking: ms(USUAL * 5) };
    expect(outcome(grader, answer(10, long))).toBe("steady");
    expect(outcome(grader, answer(11, long))).toBe("slow");
    for (let day = 12; day < 32; day++) grader.grade(answer(day, long));
    expect(outcome(grader, answer(32, long))).toBe("steady");
    expect(grader.usualTime("ada", "E1", "on-screen")?.time).toBeCloseTo(
      USUAL * 5,
      3,
    );
  });

  it("of an interrupted answer changes nothing, and the answer is steady", () => {
    const grader = practised(5);
    const interrupted = answer(5, { interrupted: true, thinking: ms(1) });
    expect(grader.grade(interrupted)).toEqual({
      outcome: "steady",
      recall: "steady",
    });
    expect(grader.usualTime("ada", "E1", "on-screen")?.from).toBe(5);
  });

  it("has a baseline of its own in each way of answering, and the whole time one where it is unknown", () => {
    const grader = practised(10);
    const written = answer(10, {
      answerWay: "write-it",
      thinking: ms(USUAL * 1.1),
    });
    grader.grade(written);
    expect(grader.usualTime("ada", "E1", "write-it")?.from).toBe(1);
    const { thinking, ...whole } = answer(11, {
      answerWay: "my-cube",
      total: ms(9000),
    });
    expect(thinking).toBeDefined();
    grader.grade(whole);
    expect(grader.usualTime("ada", "E1", "my-cube")).toMatchObject({
      isThinking: false,
      from: 1,
    });
    expect(grader.usualTime("ada", "C1", "my-cube")).toBeUndefined();
  });
});

describe("facts", () => {
  it("go before the time: a miss is missed, a hint or a correction slow, however quick", () => {
    const grader = practised(10);
    const quick = { thinking: ms(USUAL / 4) };
    expect(outcome(grader, answer(10, { ...quick, verdict: "missed" }))).toBe(
      "missed",
    );
    expect(
      outcome(grader, answer(11, { ...quick, hints: ["whole-way"] })),
    ).toBe("missed");
    expect(outcome(grader, answer(12, { ...quick, hints: ["home"] }))).toBe(
      "slow",
    );
    expect(outcome(grader, answer(13, { ...quick, corrections: 1 }))).toBe(
      "slow",
    );
    expect(outcome(grader, answer(14, { ...quick, slips: 3 }))).toBe("quick");
  });

  it("are all that counts of what was chosen: a target of turns says nothing of it", () => {
    for (const answerWay of RECOGNISING_WAYS)
      for (const seconds of [0.5, 16, 40]) {
        const { thinking, ...untimed } = answer(10, {
          answerWay,
          asking: "extra",
          target: 16,
          total: ms(1000 * seconds),
        });
        expect(thinking).toBeDefined();
        const grader = practised(10);
        expect(grader.grade(untimed)).toEqual({ outcome: "steady" });
        expect(grader.grade({ ...untimed, verdict: "missed" })).toEqual({
          outcome: "missed",
        });
      }
  });
});

describe("an answer written on paper", () => {
  const onPaper = (day: number, changes: Partial<Review> = {}): Review => {
    const { thinking, ...rest } = answer(day, {
      answerWay: "on-paper",
      reported: true,
      ...(changes.total === undefined ? { total: ms(0), untimed: true } : {}),
      ...changes,
    });
    expect(thinking).toBeDefined();
    return rest;
  };

  it("is right or missed, slow from over two targets on, and never quick", () => {
    const graded = (changes: Partial<Review>) =>
      outcome(practised(10), onPaper(10, changes));
    expect(graded({})).toBe("steady");
    expect(graded({ total: ms(1) })).toBe("steady");
    expect(graded({ total: ms(2 * TARGET * 1000) })).toBe("steady");
    expect(graded({ total: ms(2 * TARGET * 1000 + 1) })).toBe("slow");
    expect(graded({ verdict: "missed" })).toBe("missed");
    expect(graded({ verdict: "missed", total: ms(1) })).toBe("missed");
  });

  it("counts for memory once a day, with what was turned on a screen", () => {
    const grader = practised(3);
    expect(grader.grade(onPaper(3)).recall).toBe("steady");
    expect(grader.grade(answer(3)).recall).toBeUndefined();
    expect(grader.grade(answer(4)).recall).toBe("steady");
    expect(
      grader.grade(onPaper(4, { verdict: "missed" })).recall,
    ).toBeUndefined();
  });

  it("moves no baseline and no offset, whatever its time", () => {
    const grader = practised(10);
    const other = practised(10);
    for (let day = 10; day < 40; day++)
      for (const id of ["E1", "C1", "C2"] as const)
        grader.grade(onPaper(day, { case: id, total: ms(60_000) }));
    expect(grader.usualTime("ada", "E1", "on-paper")).toBeUndefined();
    expect(grader.usualTime("ada", "E1", "on-screen")).toEqual(
      other.usualTime("ada", "E1", "on-screen"),
    );
    // A case that was never turned is measured by the offset alone.
    for (const one of [grader, other])
      one.grade(answer(50, { case: "E3", thinking: ms(USUAL) }));
    for (const factor of [0.6, 0.7, 1, 1.3, 1.4, 2]) {
      const next = answer(51, { case: "E3", thinking: ms(USUAL * factor) });
      expect(grader.copy().grade(next)).toEqual(other.copy().grade(next));
    }
  });
});

describe("what a memory is told", () => {
  it("is the first answer of a day asked alone, and nothing of the others", () => {
    const grader = practised(3);
    expect(grader.grade(answer(3)).recall).toBe("steady");
    expect(grader.grade(answer(3, { verdict: "missed" })).recall).toBe(
      undefined,
    );
    for (const asking of ["shown", "helped", "again"] as const)
      expect(grader.grade(answer(4, { asking })).recall).toBeUndefined();
    expect(grader.grade(answer(4)).recall).toBe("steady");
  });

  it("of a first meeting is taught where the way was shown that day, whatever came after", () => {
    for (const asking of ["shown", "helped"] as const) {
      const grader = new Grader();
      grader.grade(answer(0, { asking }));
      expect(grader.grade(answer(0))).toEqual({
        outcome: "steady",
        recall: "taught",
      });
    }
  });

  it("of a first meeting answered unaided is steady, slow with a hint, missed by a miss", () => {
    const first = (changes: Partial<Review>) =>
      new Grader().grade(answer(0, changes)).recall;
    expect(first({})).toBe("steady");
    expect(first({ thinking: ms(1) })).toBe("steady");
    expect(first({ hints: ["piece"] })).toBe("slow");
    expect(first({ verdict: "missed" })).toBe("missed");
  });

  it("is what was recalled, where the case was shown on an earlier day", () => {
    const grader = new Grader();
    grader.grade(answer(0, { asking: "shown" }));
    expect(grader.grade(answer(1)).recall).toBe("steady");
  });

  it("is what was taught, where the clock was set back between showing and asking", () => {
    const grader = new Grader();
    grader.grade(answer(3, { asking: "shown" }));
    grader.grade(answer(2, { asking: "helped" }));
    expect(grader.grade(answer(2)).recall).toBe("taught");
  });

  it("counts a clock set back as the day already reached", () => {
    const grader = practised(5);
    const back = answer(2, { at: ms(noonOf(9)), localDay: dayNumber(2) });
    expect(grader.grade(back).recall).toBeUndefined();
  });
});

describe("repeats in a round", () => {
  it("do not move the baseline: they are made from what is still warm", () => {
    const grader = practised(5);
    const before = grader.usualTime("ada", "E1", "on-screen");
    for (let n = 0; n < 5; n++)
      grader.grade(answer(4, { thinking: ms(USUAL / 3) }));
    expect(grader.usualTime("ada", "E1", "on-screen")).toEqual(before);
  });
});

describe("a log", () => {
  const logs = fc
    .array(
      fc.record({
        day: fc.integer({ min: 0, max: 3 }),
        learner: fc.constantFrom("ada", "ben"),
        thinking: fc.integer({ min: 0, max: 20_000 }),
        asking: fc.constantFrom("shown", "alone", "alone", "again"),
        case: fc.constantFrom("E1", "C1"),
      }),
      { maxLength: 40 },
    )
    .map((rows) =>
      rows.map(({ day, thinking, ...rest }, i) =>
        answer(day + Math.floor(i / 3), { ...rest, thinking: ms(thinking) }),
      ),
    );

  it("is graded alike as a whole and by copies of a grader, answer by answer", () => {
    fc.assert(
      fc.property(logs, (log) => {
        let grader = new Grader();
        const oneByOne = log.map((review) => {
          grader = grader.copy();
          return { review, ...grader.grade(review) };
        });
        expect(oneByOne).toEqual(gradeLog(log));
      }),
    );
  });

  it("of one learner is graded alike beside another's", () => {
    fc.assert(
      fc.property(logs, (log) => {
        const own = log.filter(({ learner }) => learner === "ada");
        expect(
          gradeLog(log).filter(({ review }) => review.learner === "ada"),
        ).toEqual(gradeLog(own));
      }),
    );
  });

  it("stored under grading version 1 is graded again by today's rules, and stays as it was", () => {
    const old = [0, 1, 2, 3, 4, 5].map((day) =>
      answer(day, {
        gradingVersion: 1,
        thinking: ms(day === 5 ? 1.8 * USUAL : USUAL),
        total: ms(2900),
      }),
    );
    // Version 1 took the whole time: within half of the target it was quick.
    expect(old.every(({ total }) => total <= (TARGET * 1000) / 2)).toBe(true);
    const stored = structuredClone(old);
    const outcomes = gradeLog(old).map((graded) => graded.outcome);
    expect(outcomes).toEqual([
      "steady",
      "steady",
      "steady",
      "steady",
      "steady",
      "slow",
    ]);
    const relabelled = old.map((review) => ({ ...review, gradingVersion: 2 }));
    expect(memoriesOf(old)).toEqual(memoriesOf(relabelled));
    expect(old).toEqual(stored);
  });
});
