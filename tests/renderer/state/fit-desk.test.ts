import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { default_w } from "ts-fsrs";
import { present } from "../../../core/invariant";
import { type FitOutcome, LEAST_ANSWERS } from "../../../core/memory/fit";
import { dayAfter } from "../../../core/memory/local-day";
import { WEIGHTS_VERSION } from "../../../core/memory/schedule";
import { err, ok } from "../../../core/result";
import { openApp } from "../../../renderer/state/app-state.svelte";
import {
  answersToFit,
  FitDesk,
  storedFit,
} from "../../../renderer/state/fit-desk.svelte";
import { forgetDatabases } from "../storage/fresh-database";
import { sampleReview } from "../storage/sample-review";
import { windowLocks } from "../storage/window-locks";

const weights = default_w.map((weight, i) => (i < 4 ? weight * 2 : weight));

const FITTED: FitOutcome = {
  kind: "fitted",
  weights,
  answers: 900,
  lossBefore: 0.4,
  lossAfter: 0.36,
};

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

async function learnerWithAnswers(days: number) {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  const learner = opened.value.current;
  const first = sampleReview({ learner: learner.learner.id });
  for (let n = 0; n < days; n++) {
    const day = dayAfter(first.localDay, n);
    const id = `${learner.learner.id}-${n}`;
    await learner.acknowledge({
      review: { ...first, id, localDay: day, at: first.at },
    });
  }
  return learner;
}

describe("what is stored of a fit", () => {
  it("counts the weights' version up where new ones are taken, and not where they are kept", () => {
    expect(storedFit(undefined, FITTED, WEIGHTS_VERSION)).toMatchObject({
      weightsVersion: WEIGHTS_VERSION + 1,
      weights,
      tried: { answers: 900, isTaken: true },
    });
    const kept: FitOutcome = { ...FITTED, kind: "kept", lossAfter: 0.41 };
    const stored = storedFit(undefined, kept, 3);
    expect(stored).toMatchObject({
      weightsVersion: 3,
      tried: { isTaken: false },
    });
    expect(stored?.tried.gain).toBeCloseTo(-0.025, 9);
  });

  it("is nothing where there were too few answers, and never a number that is none", () => {
    expect(
      storedFit(undefined, { kind: "too-few", has: 1, needs: 2 }, 1),
    ).toBeUndefined();
    const endless: FitOutcome = {
      ...FITTED,
      kind: "kept",
      lossAfter: Infinity,
    };
    expect(storedFit(undefined, endless, 1)?.tried.gain).toBe(-1);
  });
});

describe("the desk where a fit is made", () => {
  it("gives the schedule the learner's own weights, which are there again after a reload", async () => {
    const learner = await learnerWithAnswers(3);
    const before = present(learner.memoryOf("E1"), "it was answered");
    const desk = new FitDesk(() => Promise.resolve(ok(FITTED)));
    await desk.start(learner);
    expect(desk.trouble).toBeUndefined();
    expect(learner.weightsVersion).toBe(WEIGHTS_VERSION + 1);
    expect(learner.schedule.weights).toEqual(weights);
    const after = present(learner.memoryOf("E1"), "it was answered");
    expect(after.stability).not.toBe(before.stability);
    expect((await learner.reload()).ok).toBe(true);
    expect(learner.schedule.weights).toEqual(weights);
    expect(learner.memoryOf("E1")).toEqual(after);
  });

  it("changes nothing when it is cancelled or fails, and says why it failed", async () => {
    const learner = await learnerWithAnswers(2);
    const cancelled = new FitDesk(
      (_, { signal } = {}) =>
        new Promise((resolve) =>
          signal?.addEventListener("abort", () =>
            resolve(err({ code: "cancelled" })),
          ),
        ),
    );
    const under = cancelled.start(learner);
    expect(cancelled.progress).toBe(0);
    expect(cancelled.isDue(learner)).toBe(false);
    cancelled.cancel();
    await under;
    expect(cancelled.progress).toBeUndefined();
    expect(cancelled.trouble).toBeUndefined();
    const failing = new FitDesk(() =>
      Promise.resolve(err({ code: "fit-failed", reason: "why" })),
    );
    await failing.start(learner);
    expect(failing.trouble).toEqual({ code: "fit-failed", reason: "why" });
    expect(learner.settings.fit).toBeUndefined();
  });

  it("is due by itself only with enough answers on later days", async () => {
    const learner = await learnerWithAnswers(5);
    expect(answersToFit(learner)).toBe(4);
    expect(LEAST_ANSWERS).toBeGreaterThan(4);
    expect(new FitDesk().isDue(learner)).toBe(false);
  });
});
