import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { default_w } from "ts-fsrs";
import { present } from "../../../core/invariant";
import { type FitOutcome, LEAST_ANSWERS } from "../../../core/memory/fit";
import { dayAfter, dayNumber } from "../../../core/memory/local-day";
import type { Milliseconds } from "../../../core/memory/review";
import { type Memory, WEIGHTS_VERSION } from "../../../core/memory/schedule";
import { err, ok } from "../../../core/result";
import { openApp } from "../../../renderer/state/app-state.svelte";
import {
  answersToFit,
  type FitCandidate,
  FitDesk,
  storedFit,
  TRY_AGAIN_AFTER,
} from "../../../renderer/state/fit-desk.svelte";
import {
  parseLearnerSettings,
  type StoredFit,
} from "../../../renderer/state/learner-settings";
import type { fitInWorker } from "../../../renderer/workers/fit-client";
import { forgetDatabases } from "../storage/fresh-database";
import { sampleReview, TUESDAY_NINE } from "../storage/sample-review";
import { windowLocks } from "../storage/window-locks";

const weights = default_w.map((weight, i) => (i < 4 ? weight * 2 : weight));

const MEMORY: Memory = {
  learner: "ann",
  case: "E1",
  hold: "up",
  stability: 5,
  difficulty: 5,
  lastDay: dayNumber(20_000),
  lastsUntil: dayNumber(20_005),
  missedLast: false,
  days: 1,
};

const FITTED: FitOutcome = {
  kind: "fitted",
  weights,
  answers: 900,
  lossBefore: 0.4,
  lossAfter: 0.36,
};

/** A fit that goes on until it is ended. */
const endless: typeof fitInWorker = (_, options) =>
  new Promise((resolve) =>
    options?.signal?.addEventListener("abort", () =>
      resolve(err({ code: "cancelled" })),
    ),
  );

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
      review: {
        ...first,
        id,
        localDay: day,
        at: (first.at + n) as Milliseconds,
      },
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
    const stopped = new FitDesk(endless);
    const under = stopped.start(learner);
    expect(stopped.progress).toBe(0);
    stopped.stop(learner);
    await under;
    expect(stopped.progress).toBeUndefined();
    expect(stopped.trouble).toBeUndefined();
    const failing = new FitDesk(() =>
      Promise.resolve(err({ code: "fit-failed", reason: "why" })),
    );
    await failing.start(learner);
    expect(failing.trouble).toEqual({ code: "fit-failed", reason: "why" });
    expect(learner.settings.fit).toBeUndefined();
  });

  it("leaves with its learner, and serves the next one at once", async () => {
    const learner = await learnerWithAnswers(2);
    const fits: AbortSignal[] = [];
    const desk = new FitDesk((request, options = {}) => {
      if (options.signal !== undefined) fits.push(options.signal);
      return endless(request, options);
    });
    const first = desk.start(learner);
    desk.leave();
    const second = desk.start(learner);
    await first;
    // The first one's end is not taken for the second's.
    expect(desk.progress).toBe(0);
    expect(fits.map(({ aborted }) => aborted)).toEqual([true, false]);
    desk.leave();
    await second;
    expect(desk.progress).toBeUndefined();
  });

  it("does not take what a fit says after its learner has left", async () => {
    const learner = await learnerWithAnswers(2);
    let say: (progress: number) => void = () => undefined;
    const desk = new FitDesk((_, options = {}) => {
      say = (progress) => options.onprogress?.(progress);
      return Promise.resolve(ok(FITTED));
    });
    const under = desk.start(learner);
    say(0.4);
    expect(desk.progress).toBe(0.4);
    desk.leave();
    say(0.6);
    await under;
    expect(desk.progress).toBeUndefined();
    expect(learner.settings.fit).toBeUndefined();
  });
});

describe("a fit that is tried by itself", () => {
  const settings = parseLearnerSettings(undefined);

  /** A learner with so many answers on later days. */
  function candidate(answers: number, tried?: number): FitCandidate {
    const fit: StoredFit | undefined =
      tried === undefined
        ? undefined
        : {
            weightsVersion: 1,
            tried: { answers: tried, isTaken: false, gain: 0 },
          };
    return {
      learner: { id: "ann", name: "Ann", createdAt: TUESDAY_NINE },
      memories: new Map([["ann E1 up", { ...MEMORY, days: answers + 1 }]]),
      settings: { ...settings, fit },
    };
  }

  it("is due with enough answers on later days, and again after 200 more", () => {
    const desk = new FitDesk(endless);
    const due = (answers: number, tried?: number) =>
      desk.isDue(candidate(answers, tried));
    expect(answersToFit(candidate(77))).toBe(77);
    expect(due(LEAST_ANSWERS - 1)).toBe(false);
    expect(due(LEAST_ANSWERS)).toBe(true);
    const tried = LEAST_ANSWERS + 10;
    expect(due(tried + TRY_AGAIN_AFTER - 1, tried)).toBe(false);
    expect(due(tried + TRY_AGAIN_AFTER, tried)).toBe(true);
  });

  it("is begun where it is due, and not where it is not", async () => {
    const desk = new FitDesk(endless);
    expect(desk.startIfDue(await learnerWithAnswers(3))).toBe(false);
    expect(desk.progress).toBeUndefined();
    const learner = await learnerWithAnswers(LEAST_ANSWERS + 1);
    expect(desk.startIfDue(learner)).toBe(true);
    expect(desk.progress).toBe(0);
    desk.leave();
  });

  it("is not due while another is under way, nor again after it was stopped or failed", async () => {
    const learner = await learnerWithAnswers(2);
    const same = { ...candidate(900), learner: learner.learner };
    const desk = new FitDesk(endless);
    const under = desk.start(learner);
    expect(desk.isDue(same)).toBe(false);
    desk.stop(learner);
    await under;
    expect(desk.isDue(same)).toBe(false);
    expect(desk.isDue(candidate(900))).toBe(true);
    const failing = new FitDesk(() =>
      Promise.resolve(err({ code: "fit-failed", reason: "why" })),
    );
    await failing.start(learner);
    expect(failing.isDue(same)).toBe(false);
  });
});
