import { describe, expect, it } from "vitest";
import {
  drawNormal,
  drawUnit,
} from "../../../../core/memory/learner-model/draw";
import {
  type LearnerTraits,
  type SyntheticAnswer,
  SyntheticLearner,
} from "../../../../core/memory/learner-model/synthetic-learner";
import { present } from "../../../../core/invariant";
import { randomSource } from "../../../../core/random-source";
import { LEARNERS } from "../../../simulate/learners";

const traits = LEARNERS["like the defaults"];
const CASES = 40;
const SEED = 20_261_126;

/** Everything a learner answers who is asked all cases every so many days. */
function answersOf(
  own: LearnerTraits,
  gap: number,
  seed = SEED,
): readonly SyntheticAnswer[] {
  const learner = new SyntheticLearner(randomSource(seed), own, CASES);
  const all = Array.from({ length: CASES }, (_, id) => id);
  for (const id of all) learner.teach(id, 0);
  return Array.from({ length: 40 }, (_, n) => (n + 1) * gap).flatMap((day) =>
    all.map((id) => present(learner.ask(id, day), "it was taught")),
  );
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function correlation(xs: readonly number[], ys: readonly number[]): number {
  const [mx, my] = [mean(xs), mean(ys)];
  const of = (
    a: readonly number[],
    ma: number,
    b: readonly number[],
    mb: number,
  ) => mean(a.map((value, i) => (value - ma) * ((b[i] ?? mb) - mb)));
  return (
    of(xs, mx, ys, my) / Math.sqrt(of(xs, mx, xs, mx) * of(ys, my, ys, my))
  );
}

describe("draws", () => {
  it("have the mean and the spread asked for", () => {
    const random = randomSource(SEED);
    const normal = Array.from({ length: 20_000 }, () =>
      drawNormal(random, 3, 2),
    );
    expect(mean(normal)).toBeCloseTo(3, 1);
    expect(mean(normal.map((value) => (value - 3) ** 2))).toBeCloseTo(4, 0);
    const units = Array.from({ length: 20_000 }, () => drawUnit(random));
    expect(mean(units)).toBeCloseTo(0.5, 1);
    expect(Math.max(...units)).toBeLessThan(1);
  });
});

describe("a made-up learner", () => {
  it("is the same with the same seed, and another with another", () => {
    expect(answersOf(traits, 5)).toEqual(answersOf(traits, 5));
    expect(answersOf(traits, 5, 1)).not.toEqual(answersOf(traits, 5, 2));
  });

  it("recalls as often as its chance says", () => {
    const answers = answersOf(traits, 12);
    const recalled = mean(answers.map((one) => (one.isRecalled ? 1 : 0)));
    // 1,600 answers: a standard error of about 0.01.
    expect(
      Math.abs(recalled - mean(answers.map(({ chance }) => chance))),
    ).toBeLessThan(0.03);
  });

  it("knows nothing that it was not taught, and forgets what it was", () => {
    const learner = new SyntheticLearner(randomSource(SEED), traits, 2);
    expect(learner.ask(0, 1)).toBeUndefined();
    expect(learner.chanceOf(0, 1)).toBe(0);
    learner.teach(0, 1);
    expect(learner.chanceOf(0, 2)).toBeGreaterThan(learner.chanceOf(0, 9));
  });

  it("thinks longer the less sure it is, where its times tell, and not where they say nothing", () => {
    const told = (telling: number) => {
      // The last answers only: the first are slow for want of practice.
      const answers = answersOf({ ...traits, telling }, 12).slice(-800);
      const usual = answers.filter(({ thinking }) => thinking < 25_000);
      return correlation(
        usual.map(({ chance }) => chance),
        usual.map(({ thinking }) => Math.log(thinking)),
      );
    };
    expect(told(0.25)).toBeLessThan(-0.3);
    expect(Math.abs(told(0))).toBeLessThan(0.2);
  });

  it("slips, is called away, corrects itself, asks for hints and mixes up look-alikes", () => {
    const answers = [...answersOf(traits, 1), ...answersOf(traits, 20)];
    const some = (is: (answer: SyntheticAnswer) => boolean) =>
      answers.filter(is).length;
    expect(some(({ slips }) => slips > 0)).toBeGreaterThan(50);
    expect(some(({ thinking }) => thinking > 30_000)).toBeGreaterThan(10);
    expect(some(({ corrections }) => corrections > 0)).toBeGreaterThan(50);
    expect(some(({ isHinted }) => isHinted)).toBeGreaterThan(10);
    const mistaken = answers.filter((one) => one.mistakenFor !== undefined);
    expect(mistaken.length).toBeGreaterThan(5);
    expect(mistaken.every(({ isRecalled }) => !isRecalled)).toBe(true);
  });

  it("skips about as many days as it is made to", () => {
    const learner = new SyntheticLearner(randomSource(SEED), traits, 1);
    const days = Array.from({ length: 2000 }, () => learner.comes());
    const skipped = mean(days.map((comes) => (comes ? 0 : 1)));
    expect(Math.abs(skipped - traits.skipsDays)).toBeLessThan(0.03);
  });
});
