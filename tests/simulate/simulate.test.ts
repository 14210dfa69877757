import { beforeAll, describe, expect, it } from "vitest";
import type { Trainer } from "../../core/memory/fit";
import { everyDay, fixedIntervals, ours } from "./choosers";
import { type Design, fitAfter, FULL, holding } from "./experiments";
import { gainOf, scoreOf } from "./forecast-score";
import { LEARNERS } from "./learners";
import { liveWith } from "./life";
import { loadTrainer } from "./node-trainer";

/** The short form of `npm run simulate`: six learners instead of 24. The limits are the full form's with room for six. */
const SHORT: Design = { ...FULL, learners: 6 };

let train: Trainer;
beforeAll(async () => {
  train = await loadTrainer();
});

describe("forecasts of made-up learners", () => {
  it("of those like the defaults are calibrated, and a fit does not spoil them", () => {
    const [result] = fitAfter("like the defaults", SHORT, train, [600]);
    expect(result?.before.calibration.value).toBeLessThan(0.02);
    expect(result?.gated.calibration.value).toBeLessThan(0.02);
    expect(result?.gated.rmse.value).toBeLessThan(0.06);
    expect(result?.gain.value).toBeGreaterThan(-0.005);
  });

  it("of those who remember longer are better by more than 2% after a fit, and calibrated then", () => {
    const [result] = fitAfter("remembers longer", SHORT, train, [400]);
    expect(result?.before.calibration.value).toBeGreaterThan(0.04);
    expect(result?.gain.value).toBeGreaterThan(0.02);
    expect(result?.gated.rmse.value).toBeLessThan(0.06);
  });
});

describe("holding sixty cases", () => {
  it("at 0.9 costs less than fixed intervals, and a tenth of asking everything every day", () => {
    const [us, fixed, daily] = holding(
      "like the defaults",
      { ...SHORT, learners: 3 },
      train,
      [0.87],
    );
    expect(us?.known.value).toBeGreaterThan(0.88);
    expect(us?.minutesAWeek.value).toBeLessThan(
      0.95 * (fixed?.minutesAWeek.value ?? 0),
    );
    expect(us?.minutesAWeek.value).toBeLessThan(
      0.1 * (daily?.minutesAWeek.value ?? 0),
    );
  });
});

describe("the harness", () => {
  it("gives the same learner the same days off whoever chooses", () => {
    const off = (chooser: Parameters<typeof liveWith>[0]) =>
      liveWith(chooser, LEARNERS["like the defaults"], 1, {
        ...FULL.life,
        days: 100,
      })
        .days.filter(({ minutes }) => minutes === 0)
        .map(({ day }) => day);
    // Whoever asks everything has nothing to do on days off only.
    expect(off(everyDay()).length).toBeGreaterThan(3);
    expect(off(ours({}))).toEqual(expect.arrayContaining([...off(everyDay())]));
    expect(off(fixedIntervals())).toEqual(
      expect.arrayContaining([...off(everyDay())]),
    );
  });

  it("finds a forecast that is the truth perfect, and one that is too high not", () => {
    const truths = Array.from({ length: 200 }, (_, i) => 0.5 + i / 500);
    const perfect = [truths.map((truth) => ({ truth, foretold: truth }))];
    const high = [
      truths.map((truth) => ({ truth, foretold: Math.min(1, truth + 0.1) })),
    ];
    expect(scoreOf(perfect).loss.value).toBeCloseTo(1, 9);
    expect(scoreOf(perfect).rmse.value).toBe(0);
    expect(scoreOf(perfect).calibration.value).toBe(0);
    expect(scoreOf(high).calibration.value).toBeGreaterThan(0.08);
    expect(gainOf(high, perfect).value).toBeGreaterThan(0);
    expect(gainOf(perfect, high).value).toBeLessThan(0);
  });
});
