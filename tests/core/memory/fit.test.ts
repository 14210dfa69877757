import { beforeAll, describe, expect, it } from "vitest";
import { default_w } from "ts-fsrs";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import {
  fitWeights,
  LEAST_ANSWERS,
  type Trainer,
  type TrainingItems,
} from "../../../core/memory/fit";
import { gradeLog } from "../../../core/memory/grader";
import { daysSinceBefore, recalledDays } from "../../../core/memory/recalls";
import { drawUnit } from "../../../core/memory/learner-model/draw";
import { pick, randomSource } from "../../../core/random-source";
import { ours } from "../../simulate/choosers";
import { FULL } from "../../simulate/experiments";
import { LEARNERS } from "../../simulate/learners";
import { liveWith } from "../../simulate/life";
import { loadTrainer } from "../../simulate/node-trainer";
import { ms, sampleReview } from "./sample-review";

/** A log of so many answers after the first meetings, a share of them missed, which may change on the way; gaps of 1 to 9 days. */
function days(
  answers: number,
  missed: number | ((share: number) => number),
  seed = 7,
) {
  const random = randomSource(seed);
  const cases = FIRST_LAYER_IDS.slice(0, 20);
  const last = new Map(cases.map((id) => [id, 0]));
  const asked = Array.from({ length: answers }, () => {
    const id = pick(random, cases);
    const day = (last.get(id) ?? 0) + 1 + random.below(9);
    last.set(id, day);
    return { id, day, drawn: drawUnit(random) };
  });
  const missedAt = typeof missed === "number" ? () => missed : missed;
  const log = [
    ...cases.map((id) => ({ id, day: 0, isMissed: false })),
    ...asked
      .toSorted((a, b) => a.day - b.day)
      .map(({ id, day, drawn }, i) => ({
        id,
        day,
        isMissed: drawn < missedAt(i / answers),
      })),
  ].map(({ id, day, isMissed }, i) =>
    sampleReview(day, {
      id: `answer-${i}`,
      case: id,
      at: ms(i),
      verdict: isMissed ? "missed" : "right",
    }),
  );
  return recalledDays(gradeLog(log));
}

const same: Trainer = () => default_w;

/** Weights under which everything lasts many times as long. */
const LASTING = default_w.map((weight, i) => (i < 4 ? weight * 40 : weight));

describe("a fit", () => {
  it("is not tried on too few answers, and says how many there are", () => {
    const few = days(LEAST_ANSWERS - 1, 0.1);
    const never: Trainer = () => {
      throw new Error("tried");
    };
    expect(fitWeights(few, undefined, never)).toEqual({
      kind: "too-few",
      has: LEAST_ANSWERS - 1,
      needs: LEAST_ANSWERS,
    });
    expect(fitWeights(days(LEAST_ANSWERS, 0.1), undefined, same).kind).toBe(
      "kept",
    );
  });

  it("learns from all answers but the newest 30%, each with the days before it", () => {
    let seen: TrainingItems | undefined;
    const all = days(1000, 0.1);
    fitWeights(all, undefined, (items) => {
      seen = items;
      return default_w;
    });
    // Short logs are shown four times over.
    expect(seen?.lengths).toHaveLength(4 * 700);
    expect(seen?.lengths.slice(700, 1400)).toEqual(seen?.lengths.slice(0, 700));
    const total = seen?.lengths.reduce((sum, length) => sum + length, 0);
    expect(seen?.ratings).toHaveLength(total ?? 0);
    expect(seen?.days).toHaveLength(total ?? 0);
    // Those left out are the newest.
    const last = all.filter(({ before }) => before !== undefined)[699];
    expect(
      seen?.days[seen.lengths.slice(0, 700).reduce((a, b) => a + b) - 1],
    ).toBe(last === undefined ? undefined : daysSinceBefore(last));
    // The first day of every item has none before it, every other has.
    let place = 0;
    for (const length of seen?.lengths ?? []) {
      const own = seen?.days.slice(place, place + length) ?? [];
      expect(own[0]).toBe(0);
      expect(own.slice(1).every((gap) => gap >= 1)).toBe(true);
      expect(length).toBeGreaterThan(1);
      place += length;
    }
  });

  it("is taken where it foretells the newest answers better, and not where it does worse or as well", () => {
    const remembers = days(1000, 0.01);
    const better = fitWeights(remembers, undefined, () => LASTING);
    expect(better).toMatchObject({ kind: "fitted", weights: LASTING });
    const forgets = days(1000, 0.4);
    expect(fitWeights(forgets, undefined, () => LASTING)).toMatchObject({
      kind: "kept",
      weights: undefined,
    });
    expect(fitWeights(forgets, LASTING, () => LASTING)).toMatchObject({
      kind: "kept",
      weights: LASTING,
    });
  });

  it("is tested by the newest 30% alone, whatever the answers before them say", () => {
    const lately = (missed: number) =>
      fitWeights(
        days(1000, (share) => (share < 0.7 ? 0 : missed)),
        undefined,
        () => LASTING,
      ).kind;
    expect(lately(0)).toBe("fitted");
    expect(lately(0.12)).toBe("kept");
  });

  it("is not taken where log loss falls by less than 0.5%, however surely", () => {
    // Nothing is missed: whatever lasts longer foretells every answer better.
    const lasting = (times: number) => {
      const outcome = fitWeights(days(1000, 0), undefined, () =>
        default_w.map((weight, i) => (i < 4 ? weight * times : weight)),
      );
      if (outcome.kind === "too-few") throw new Error(outcome.kind);
      const { kind, lossAfter, lossBefore } = outcome;
      return { kind, gain: 1 - lossAfter / lossBefore };
    };
    expect(lasting(1.5).gain).toBeGreaterThan(0.002);
    expect(lasting(1.5).gain).toBeLessThan(0.005);
    expect(lasting(1.5).kind).toBe("kept");
    expect(lasting(2.5).gain).toBeLessThan(0.01);
    expect(lasting(2.5).kind).toBe("fitted");
  });

  it("is not taken on a gain that a few answers could have made", () => {
    // Of ten held out answers, all right: better, but what of it?
    const outcome = fitWeights(days(30, 0.2, 4), undefined, () => LASTING, 0);
    expect(outcome.kind).toBe("kept");
  });

  it("never has a first stability under 0.1", () => {
    // Weights under which all is forgotten, on a log in which all was.
    const low = default_w.map((weight, i) => (i < 4 ? 0.01 : weight));
    const outcome = fitWeights(days(100, 1), LASTING, () => low, 0);
    expect(outcome).toMatchObject({
      kind: "fitted",
      weights: [0.1, 0.1, 0.1, 0.1, ...low.slice(4)],
    });
  });

  it("with weights that are none is not taken", () => {
    for (const broken of [[1, 2], default_w.map(() => NaN)])
      expect(
        fitWeights(days(1000, 0.1), undefined, () => broken),
      ).toMatchObject({ kind: "kept", weights: undefined });
  });
});

describe("the library that fits", () => {
  let train: Trainer;
  beforeAll(async () => {
    train = await loadTrainer();
  });

  it("gives the same weights for the same answers, and takes them where they help", () => {
    const { answers } = liveWith(ours({}), LEARNERS["remembers longer"], 3, {
      ...FULL.life,
      days: 200,
    });
    const all = recalledDays(gradeLog(answers.map(({ review }) => review)));
    const first = fitWeights(all, undefined, train, 0);
    expect(first.kind).toBe("fitted");
    expect(fitWeights(all, undefined, train, 0)).toEqual(first);
  });
});
