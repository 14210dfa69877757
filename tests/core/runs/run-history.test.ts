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
    expect(runHistory([sampleRun()], "solve", "plain")).toEqual({
      runs: [],
      best: undefined,
      usual: undefined,
      averages: {
        rules: "plain",
        ofFive: undefined,
        ofThree: undefined,
        notDone: 0,
      },
      isMixed: false,
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
    const history = runHistory(runs, "first-layer", "plain");
    expect(history.best).toBe(20_000);
    expect(history.averages.ofThree).toBe("did-not-finish");
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

describe("the averages of a kind", () => {
  it("are of runs by the same rules: a mixture would be neither", () => {
    const runs = [10, 11, 12, 13, 14].flatMap((time, n) => [
      sampleRun({ id: `p${n}`, time: ms(time * 1000) }),
      sampleRun({
        id: `c${n}`,
        time: ms(time * 2000),
        rules: "competition",
        ending: n < 2 ? "not-done" : "done",
      }),
    ]);
    const plain = runHistory(runs, "first-layer", "plain");
    // (11 + 12 + 13) / 3, and (12 + 13 + 14) / 3
    expect(plain.averages).toEqual({
      rules: "plain",
      ofFive: 12_000,
      ofThree: 13_000,
      notDone: 0,
    });
    const competition = runHistory(runs, "first-layer", "competition");
    expect(competition.averages).toEqual({
      rules: "competition",
      ofFive: "did-not-finish",
      ofThree: 26_000,
      notDone: 2,
    });
    expect([plain.isMixed, plain.runs.length]).toEqual([true, 10]);
    expect(
      runHistory(runs.slice(0, 1), "first-layer", "competition").isMixed,
    ).toBe(true);
    expect(runHistory(runs.slice(0, 1), "first-layer", "plain").isMixed).toBe(
      false,
    );
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
