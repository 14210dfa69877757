import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../core/memory/local-day";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import type { Review } from "../../../core/memory/review";
import { secondsPractised, timeNeeded } from "../../../core/memory/time-needed";
import { ms, noonOf, sampleReview } from "./sample-review";

function planned(changes: Partial<PlannedCase> = {}): PlannedCase {
  return {
    case: "E1",
    hold: "up",
    deck: "d",
    target: 8,
    memory: "settling",
    times: 1,
    ...changes,
  };
}

/** Answers of one day, so many seconds long, each so many after the one before it. */
function answers(
  day: number,
  seconds: readonly number[],
  apart: number,
  changes: Partial<Review> = {},
): readonly Review[] {
  let at = noonOf(day) as number;
  return seconds.map((length, i) => {
    at += (length + apart) * 1000;
    return sampleReview(day, {
      id: `${day}-${i}`,
      at: ms(at),
      total: ms(length * 1000),
      ...changes,
    });
  });
}

describe("the time that a case needs", () => {
  it("is its target before anything was answered, a new case taking longer", () => {
    const { toAsk: needed } = timeNeeded([], "on-screen");
    // 1.2 × (8 + 6) s; 6 × (8 + 6) s.
    expect(needed(planned())).toBeCloseTo(16.8);
    expect(needed(planned({ memory: "new" }))).toBeCloseTo(84);
    expect(needed(planned({ times: 3 }))).toBeCloseTo(50.4);
    // A cube in the hands is set up first.
    expect(timeNeeded([], "my-cube").toAsk(planned())).toBeCloseTo(1.2 * 33);
  });

  it("is the learner's own once the case was answered, with what lies between", () => {
    const log = answers(1, [3, 4, 5, 40], 10);
    const { toAsk: needed } = timeNeeded(log, "on-screen");
    // The median of 3, 4, 5 and 40, and the ten seconds between.
    expect(needed(planned())).toBeCloseTo(1.2 * (4.5 + 10));
  });

  it("follows their share of the targets where the case was not answered that way", () => {
    const log = answers(1, [4, 4, 4], 6);
    const { toAsk: needed } = timeNeeded(log, "on-screen");
    expect(needed(planned({ case: "C3", target: 20 }))).toBeCloseTo(19.2);
    // The same case under the other hold is another.
    expect(needed(planned({ hold: "down", target: 20 }))).toBeCloseTo(19.2);
    const { toAsk: inHands } = timeNeeded(log, "my-cube");
    expect(inHands(planned({ target: 20 }))).toBeCloseTo(1.2 * 45);
  });

  it("is longer in writing, as its target is", () => {
    // Answers that took just what a written one should: half as long again.
    const log = answers(1, [12, 12, 12], 6, {
      answerWay: "write-it",
      target: 12,
    });
    const other = planned({ case: "C3", target: 20 });
    expect(timeNeeded(log, "write-it").toAsk(other)).toBeCloseTo(1.2 * 36);
  });

  it("takes no notice of showings, interruptions and pauses", () => {
    const usual = answers(1, [4, 4, 4], 10);
    const others = [
      ...answers(2, [90], 0, { asking: "shown" }),
      ...answers(3, [90], 0, { interrupted: true }),
      // Ten minutes away from the desk.
      ...answers(4, [4, 4], 600),
    ];
    const { toAsk: needed } = timeNeeded([...usual, ...others], "on-screen");
    expect(needed(planned())).toBeCloseTo(1.2 * 14);
  });

  it("forgets how slow the beginning was", () => {
    const log = [
      ...answers(1, Array<number>(60).fill(30), 6),
      ...answers(30, Array<number>(50).fill(2), 6),
    ];
    const { toAsk: needed } = timeNeeded(log, "on-screen");
    expect(needed(planned())).toBeCloseTo(1.2 * 8);
    expect(needed(planned({ case: "C3", target: 16 }))).toBeCloseTo(1.2 * 10);
  });
});

describe("the time practised on a day", () => {
  it("is its answers and what lies between, without pauses", () => {
    const log = [
      ...answers(1, [60], 0),
      ...answers(2, [5, 5, 5], 10),
      ...answers(2, [5], 3600),
    ];
    // Three answers with two breaths between, and one after a long pause.
    expect(secondsPractised(log, dayNumber(2))).toBe(40);
    expect(secondsPractised(log, dayNumber(3))).toBe(0);
  });

  it("leaves out what was asked beyond the schedule, and goes on past yesterday's round", () => {
    const log = [
      ...answers(2, [5, 5], 10),
      ...answers(2, [60], 900, { asking: "extra" }),
      // A round of yesterday that was taken up once more.
      ...answers(2, [7], 1800, { localDay: dayNumber(1) }),
    ];
    expect(secondsPractised(log, dayNumber(2))).toBe(20);
  });

  it("leaves out what was done on paper, whose instant is noon whenever it was", () => {
    const paper = { answerWay: "on-paper", total: ms(30_000) } as const;
    const screen = answers(5, [10], 0);
    const both = [...answers(5, [0], 0, { ...paper, id: "paper" }), ...screen];
    expect(secondsPractised(both, dayNumber(5))).toBe(
      secondsPractised(screen, dayNumber(5)),
    );
    expect(secondsPractised(both, dayNumber(5))).toBe(10);
    const gaps = (log: readonly Review[]) =>
      timeNeeded(log, "on-screen").toAsk(planned());
    expect(gaps(both)).toBe(gaps(screen));
  });

  it("does not count an answer left lying as practice", () => {
    const log = answers(2, [3600], 0, { interrupted: true });
    expect(secondsPractised(log, dayNumber(2))).toBe(300);
  });
});
