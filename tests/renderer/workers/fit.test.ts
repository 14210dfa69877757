import { describe, expect, it } from "vitest";
import { default_w } from "ts-fsrs";
import type { FitOutcome, Trainer } from "../../../core/memory/fit";
import { gradeLog } from "../../../core/memory/grader";
import { dayAfter } from "../../../core/memory/local-day";
import { recalledDays } from "../../../core/memory/recalls";
import type { Milliseconds } from "../../../core/memory/review";
import {
  fitInWorker,
  type FitPort,
} from "../../../renderer/workers/fit-client";
import {
  daysOfRequest,
  type FitReply,
  fitRequest,
  parseFitReply,
  parseFitRequest,
} from "../../../renderer/workers/fit-messages";
import {
  answerFitRequest,
  type LoadTrainer,
} from "../../../renderer/workers/fit-service";
import { sampleReview } from "../storage/sample-review";

/** So many answers, one a day, cases and holds in turn. */
function answers(count: number) {
  const first = sampleReview();
  return gradeLog(
    Array.from({ length: count }, (_, n) => {
      const ids = ["E1", "C1", "E3"] as const;
      return sampleReview({
        id: `answer-${String(n).padStart(4, "0")}`,
        case: ids[n % 3] ?? "E1",
        hold: n % 2 === 0 ? "up" : "down",
        at: (first.at + n * 86_400_000) as Milliseconds,
        localDay: dayAfter(first.localDay, n),
        verdict: n % 7 === 0 ? "missed" : "right",
      });
    }),
  );
}

const loading =
  (train: Trainer): LoadTrainer =>
  (onround) => {
    for (let round = 0; round < 6; round++) onround();
    return Promise.resolve(train);
  };

/** A worker that is none: the service, and messages as a browser would clone them. */
function port(load: LoadTrainer, seen: { ended: number }): () => FitPort {
  return () => {
    let hear: (message: unknown) => void = () => undefined;
    return {
      post: (request) =>
        void answerFitRequest(structuredClone(request), load, (reply) =>
          hear(structuredClone(reply)),
        ),
      listen: (onmessage) => (hear = onmessage),
      end: () => {
        seen.ended += 1;
        hear = () => undefined;
      },
    };
  };
}

const KEPT: FitOutcome["kind"] = "kept";

describe("a fit in a worker", () => {
  it("gets the days that counted, and says what came of them", async () => {
    const log = answers(1000);
    const seen = { ended: 0 };
    const told: number[] = [];
    const outcome = await fitInWorker(
      fitRequest(log, undefined),
      { onprogress: (progress) => told.push(progress) },
      port(
        loading(() => default_w),
        seen,
      ),
    );
    expect(outcome).toMatchObject({
      ok: true,
      value: { kind: KEPT, answers: 994, weights: undefined },
    });
    expect(told).toHaveLength(6);
    expect(told[1]).toBe(0.4);
    expect(told.slice(-2)).toEqual([1, 1]);
    expect(seen.ended).toBe(1);
  });

  it("has the same days on both sides of the wire", () => {
    const log = answers(60);
    const received = daysOfRequest(structuredClone(fitRequest(log, undefined)));
    const plain = (days: ReturnType<typeof daysOfRequest>) =>
      days.map(({ review, grade, before }) => ({
        day: review.localDay,
        grade,
        before: before?.review.localDay,
      }));
    expect(plain(received)).toEqual(plain(recalledDays(log)));
  });

  it("says too few where there are", async () => {
    const outcome = await fitInWorker(
      fitRequest(answers(20), undefined),
      {},
      port(
        loading(() => default_w),
        { ended: 0 },
      ),
    );
    expect(outcome).toMatchObject({
      ok: true,
      value: { kind: "too-few", has: 14 },
    });
  });

  it("is ended when it is cancelled, before or meanwhile", async () => {
    const seen = { ended: 0 };
    const never: LoadTrainer = () => new Promise(() => undefined);
    const controller = new AbortController();
    const request = fitRequest(answers(10), undefined);
    const under = fitInWorker(
      request,
      { signal: controller.signal },
      port(never, seen),
    );
    controller.abort();
    const cancelled = { ok: false, error: { code: "cancelled" } };
    expect(await under).toEqual(cancelled);
    expect(seen.ended).toBe(1);
    expect(
      await fitInWorker(
        request,
        { signal: controller.signal },
        port(never, seen),
      ),
    ).toEqual(cancelled);
    expect(seen.ended).toBe(1);
  });

  it("that fails says why", async () => {
    const failing = loading(() => {
      throw new Error("out of memory");
    });
    expect(
      await fitInWorker(
        fitRequest(answers(1000), undefined),
        {},
        port(failing, { ended: 0 }),
      ),
    ).toEqual({
      ok: false,
      error: { code: "fit-failed", reason: "Error: out of memory" },
    });
    const broken: () => FitPort = () => ({
      post: () => undefined,
      listen: (_, onerror) => onerror("no such file"),
      end: () => undefined,
    });
    expect(
      await fitInWorker(fitRequest(answers(10), undefined), {}, broken),
    ).toEqual({
      ok: false,
      error: { code: "fit-failed", reason: "no such file" },
    });
  });
});

describe("what is said on the wire", () => {
  it("is refused where it is not understood, with the place", async () => {
    const good = fitRequest(answers(10), [...default_w]);
    expect(parseFitRequest(good).ok).toBe(true);
    for (const wrong of [
      { ...good, days: [1, 2] },
      { ...good, days: new Int32Array(3) },
      { ...good, grades: new Uint8Array(good.days.length).fill(99) },
      { ...good, inUse: [1, 2, 3] },
      undefined,
    ])
      expect(parseFitRequest(wrong).ok).toBe(false);
    const replies: FitReply[] = [];
    await answerFitRequest(
      "what?",
      loading(() => default_w),
      (reply) => replies.push(reply),
    );
    expect(replies).toHaveLength(1);
    expect(replies[0]?.kind).toBe("failed");
    expect(parseFitReply({ kind: "progress", progress: 2 })).toMatchObject({
      ok: false,
      error: { field: "progress" },
    });
    expect(parseFitReply({ kind: "hello" }).ok).toBe(false);
  });
});
