import { describe, expect, it } from "vitest";
import type { Review } from "../../../core/memory/review";
import { TurningSpeed } from "../../../core/memory/turning-speed";
import { randomSource } from "../../../core/random-source";
import { ms, sampleReview } from "./sample-review";

const START = 400;
const EACH = 500;

/** A right answer of so many turns, in a time, after a second of thinking and a turn that only lines up. */
function turned(
  turns: number,
  time: number,
  changes: Partial<Review> = {},
): Review {
  return sampleReview(0, {
    thinking: ms(1000),
    turning: ms(time),
    turns: [
      { turn: "U", at: ms(500) },
      ...Array.from({ length: turns }, (_, i) => ({
        turn: "R",
        at: ms(1000 + (i * time) / turns),
      })),
    ],
    ...changes,
  });
}

const onLine = (turns: number, factor = 1) =>
  turned(turns, factor * (START + EACH * turns));

describe("the turning of a learner", () => {
  it("is split into a start and a time for each turn", () => {
    const speed = new TurningSpeed([3, 4, 6, 8, 10].map((n) => onLine(n)));
    expect(speed.line("on-screen")?.start).toBeCloseTo(START, 6);
    expect(speed.line("on-screen")?.eachTurn).toBeCloseTo(EACH, 6);
    expect(speed.expected("C1", "on-screen", 7)).toBeCloseTo(3900, 6);
  });

  it("is hardly moved by a fifth of fumbled times", () => {
    const random = randomSource(20_261_126);
    const log = Array.from({ length: 60 }, (_, i) =>
      onLine(3 + random.below(8), i % 5 === 0 ? 4 : 1),
    );
    const line = new TurningSpeed(log).line("on-screen");
    expect(line?.eachTurn).toBeGreaterThan(EACH * 0.8);
    expect(line?.eachTurn).toBeLessThan(EACH * 1.3);
  });

  it("gives each case a speed beside the others", () => {
    const log = [3, 4, 5, 6, 7, 8, 9, 10].flatMap((n) => [
      onLine(n),
      { ...onLine(n, n === 6 ? 1.5 : 1), case: n === 6 ? "C1" : "E1" } as const,
    ]);
    const speed = new TurningSpeed(log);
    expect(speed.speedOf("C1", "on-screen")).toBeCloseTo(1.5, 1);
    expect(speed.speedOf("E1", "on-screen")).toBeCloseTo(1, 1);
    expect(speed.expected("C1", "on-screen", 6)).toBeCloseTo(
      1.5 * (START + EACH * 6),
      -2,
    );
    expect(speed.speedOf("C2", "on-screen")).toBeUndefined();
  });

  it("is laid through turns only where all ways are equally long", () => {
    const line = new TurningSpeed(
      Array.from({ length: 6 }, () => turned(5, 2500)),
    ).line("on-screen");
    expect(line).toEqual({ start: 0, eachTurn: 500 });
  });

  it("counts repeats in a round, and leaves out misses, corrections, showings, interruptions and turns nobody saw", () => {
    const good = Array.from({ length: 5 }, (_, n) => ({
      ...onLine(n + 3),
      asking: "again" as const,
    }));
    const spoilt: readonly Review[] = [
      turned(5, 60_000, { verdict: "missed" }),
      turned(5, 60_000, { corrections: 1 }),
      turned(5, 60_000, { asking: "shown" }),
      turned(5, 60_000, { interrupted: true }),
      turned(5, 60_000, { turns: [] }),
    ];
    expect(new TurningSpeed(spoilt).line("on-screen")).toBeUndefined();
    expect(new TurningSpeed([...good, ...spoilt]).line("on-screen")).toEqual(
      new TurningSpeed(good).line("on-screen"),
    );
  });

  it("is apart for each way of answering, and unknown with fewer than five answers", () => {
    const four = [3, 4, 5, 6].map((n) => onLine(n));
    expect(new TurningSpeed(four).line("on-screen")).toBeUndefined();
    const five = [...four, onLine(7)];
    const speed = new TurningSpeed(five);
    expect(speed.line("on-screen")).toBeDefined();
    expect(speed.line("my-cube")).toBeUndefined();
    expect(speed.expected("E1", "my-cube", 3)).toBeUndefined();
  });
});
