import { describe, expect, it } from "vitest";
import { randomSource } from "../../../core/random-source";
import { validateCubies } from "../../../core/cube/validity";
import type { LocalDay } from "../../../core/memory/review";
import { mixedCube } from "../../../core/runs/mixed-cube";
import { runHistory } from "../../../core/runs/run-history";
import { ms, sampleRun } from "./sample-run";

const DAY = 20_000 as LocalDay;
const NEXT = 20_001 as LocalDay;

describe("the history of a kind", () => {
  it("has nothing to say before the first run", () => {
    expect(runHistory([sampleRun()], "solve")).toEqual({
      runs: [],
      best: undefined,
      usual: undefined,
      averageOfFive: undefined,
      meanOfThree: undefined,
      days: [],
    });
  });

  it("has the days on which runs were made, the newest first, each with its best", () => {
    const runs = [
      sampleRun({ id: "a", localDay: DAY, time: ms(30_000) }),
      sampleRun({ id: "b", localDay: DAY, time: ms(20_000) }),
      sampleRun({ id: "c", localDay: NEXT, ending: "not-done" }),
      sampleRun({ id: "other", localDay: NEXT, kind: "cross" }),
    ];
    const history = runHistory(runs, "first-layer");
    expect(history.best).toBe(20_000);
    expect(history.meanOfThree).toBe("did-not-finish");
    expect(
      history.days.map(({ day, best, runs: ofDay }) => [
        day,
        best,
        ofDay.map(({ run }) => run.id),
      ]),
    ).toEqual([
      [NEXT, undefined, ["c"]],
      [DAY, 20_000, ["a", "b"]],
    ]);
  });
});

describe("a cube that is mixed for a run", () => {
  it("can be reached by turning, is another one each time, and leaves something to do", () => {
    const random = randomSource(7);
    const drawn = Array.from({ length: 200 }, () => mixedCube(random));
    for (const state of drawn) expect(validateCubies(state).ok).toBe(true);
    const marks = drawn.map((state) => JSON.stringify(state));
    expect(new Set(marks).size).toBe(200);
  });

  it("is drawn again where its cross is done already", () => {
    // The last of every shuffle's outcomes exchanges nothing, and the first of
    // the 3^7 twists and 2^11 flips turns nothing: a solved cube, some times.
    let solved = 30;
    const chance = randomSource(3);
    const below = (n: number) => {
      solved -= 1;
      if (solved < 0) return chance.below(n);
      return n === 3 ** 7 || n === 2 ** 11 ? 0 : n - 1;
    };
    const random = { below };
    const state = mixedCube(random);
    const placed = [0, 1, 2, 3].every(
      (at) =>
        state.edgePermutation[at] === at && state.edgeOrientation[at] === 0,
    );
    expect(placed).toBe(false);
    expect(solved).toBeLessThan(0);
  });
});
