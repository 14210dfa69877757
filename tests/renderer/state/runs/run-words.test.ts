import { describe, expect, it } from "vitest";
import {
  RUN_KINDS,
  RUN_PARTS,
  type RunPart,
  type RunRules,
} from "../../../../core/runs/run";
import { resultOf } from "../../../../core/runs/run-result";
import {
  averagesInWords,
  dayInRuns,
  historyInWords,
  notDoneWords,
  partName,
  penaltyWords,
  resultWords,
  runNotes,
  runTime,
  standingWords,
  tapPrompt,
} from "../../../../renderer/state/runs/run-words";
import { runHistory } from "../../../../core/runs/run-history";
import { ms, sampleRun } from "../../../core/runs/sample-run";

describe("a run's time", () => {
  it("is cut where it is shown, and said in minutes from one minute on", () => {
    expect(runTime(12_349.9)).toBe("12.34 s");
    expect(runTime(9_050)).toBe("9.05 s");
    expect(runTime(59_999)).toBe("59.99 s");
    expect(runTime(60_000)).toBe("1 min 0.00 s");
    expect(runTime(72_300)).toBe("1 min 12.30 s");
    expect(runTime(725_000)).toBe("12 min 5 s");
  });
});

describe("what is tapped", () => {
  it("is another thing with each tap, and the hands with the last", () => {
    for (const kind of RUN_KINDS) {
      const parts: readonly RunPart[] = RUN_PARTS[kind];
      const prompts = parts.map((part, n) =>
        tapPrompt(part, n === parts.length - 1),
      );
      expect(new Set(prompts).size).toBe(parts.length);
      expect(prompts.at(-1)).toBe("Tap when your hands are off the cube");
    }
    expect(tapPrompt("edge-1", false)).toBe("Tap when the 1st edge is home");
    expect(tapPrompt("cross", false)).toBe("Tap when the cross is done");
  });

  it("stands for several where taps are missing", () => {
    expect(partName({ parts: ["corner-2", "corner-3", "corner-4"] })).toBe(
      "2nd corner to 4th corner",
    );
    expect(partName({ parts: ["cross"] })).toBe("cross");
  });
});

describe("what a run came to", () => {
  const late = sampleRun({
    rules: "competition",
    inspection: ms(15_500),
    ending: "one-turn-off",
  });

  it("says what is added and why", () => {
    expect(penaltyWords(late)).toBe(
      "4 seconds are added, because you looked for more than 15 seconds and one turn was missing.",
    );
    expect(penaltyWords(sampleRun())).toBeUndefined();
    expect(runNotes(late)).toEqual(["4 s added", "by competition rules"]);
    expect(runNotes(sampleRun({ wasHidden: true }))).toEqual([
      "window out of sight",
    ]);
  });

  it("says kindly that it was not done", () => {
    const run = sampleRun({ ending: "not-done" });
    expect(resultWords(resultOf(run))).toBe("not done");
    expect(notDoneWords(run, resultOf(run))).toMatch(/^You turned for 12.34 s/);
    const slow = { ...late, inspection: ms(18_000), ending: "done" } as const;
    expect(notDoneWords(slow, resultOf(slow))).toMatch(/more than 17 seconds/);
    expect(notDoneWords(sampleRun(), ms(12_340))).toBeUndefined();
  });

  it("is set beside what was before", () => {
    const before = { best: ms(20_000), usual: ms(25_000) };
    expect(standingWords(ms(18_500), before)).toBe(
      "That is your best so far: 1.50 s quicker than before.",
    );
    expect(standingWords(ms(24_000), before)).toMatch(/quicker than usual/);
    expect(standingWords(ms(30_000), before)).toMatch(/^You usually take/);
    expect(standingWords(ms(30_000), { ...before, usual: undefined })).toBe(
      "Your best is 20.00 s.",
    );
    expect(standingWords(ms(9), { best: undefined, usual: undefined })).toMatch(
      /first number/,
    );
    expect(standingWords("did-not-finish", before)).toBeUndefined();
  });
});

describe("the history", () => {
  it("is told in sentences", () => {
    const none = sampleRun({ ending: "not-done" });
    const runs = [12, 11, 10, 13, 14].map((time, n) =>
      sampleRun({ id: String(n), time: ms(time * 1000) }),
    );
    const history = runHistory(runs, "first-layer", "plain");
    expect(historyInWords(history)).toBe("5 runs so far, the best 10.00 s.");
    expect(averagesInWords(history)).toEqual([
      // (11 + 12 + 13) / 3, and (10 + 13 + 14) / 3
      "Your last five: 12.00 s on average, with the best and the worst left out.",
      "Your last three: 12.33 s on average.",
    ]);
    expect(history.days.map(dayInRuns)).toEqual(["5 runs, the best 10.00 s."]);
    const tries = [none, none, ...runs.slice(2)].map((run, n) => ({
      ...run,
      id: String(n),
    }));
    expect(
      averagesInWords(runHistory(tries, "first-layer", "plain"))[0],
    ).toMatch(/^Two of your last five were not done/);
    for (const [count, said] of [
      [3, /^Three of your last five/],
      [4, /^Four of your last five/],
      [5, /^None of your last five was done/],
    ] as const) {
      const mostly = tries.map((run, n) => ({
        ...run,
        ending: n < count ? ("not-done" as const) : ("done" as const),
      }));
      const told = averagesInWords(runHistory(mostly, "first-layer", "plain"));
      expect(told[0]).toMatch(said);
    }
    const one = runHistory([none], "first-layer", "plain");
    expect(historyInWords(one)).toBe("1 run, none done yet.");
    expect(one.days.map(dayInRuns)).toEqual(["1 run, not done yet."]);
    expect(historyInWords(runHistory([], "cross", "plain"))).toMatch(
      /will stand here/,
    );
  });

  it("says by which rules its averages are, where there are runs by others too", () => {
    const run = (n: number, rules: RunRules) =>
      sampleRun({ id: `${rules}${n}`, time: ms(12_000), rules });
    const runs = [0, 1, 2].flatMap((n) => [
      run(n, "plain"),
      run(n, "competition"),
    ]);
    const told = (rules: RunRules, of = runs) =>
      averagesInWords(runHistory(of, "first-layer", rules));
    expect(told("plain")).toEqual([
      "Your last three by plain rules: 12.00 s on average.",
    ]);
    expect(told("competition")).toEqual([
      "Your last three by competition rules: 12.00 s on average.",
    ]);
    expect(
      told(
        "competition",
        runs.filter(({ rules }) => rules === "competition"),
      ),
    ).toEqual(["Your last three by competition rules: 12.00 s on average."]);
  });
});
