import { describe, expect, it } from "vitest";
import { memberSummary } from "../../../core/class/member-summary";
import { packLog, unpacked } from "../../../core/progress/packed-log";
import { logReader } from "../../../renderer/workers/class-client";
import type { ProgressPort } from "../../../renderer/workers/progress-client";
import { answerProgress } from "../../../renderer/workers/progress-service";
import { sampleReview } from "../../core/memory/sample-review";

const LOGS = [
  [sampleReview(19_990, { id: "a" }), sampleReview(19_994, { id: "b" })],
  [sampleReview(19_991, { id: "c", verdict: "missed", answeredAs: "E3" })],
];

/** A worker that answers as a test wants it to, its messages copied as a browser does. */
function standIn(answer: (message: unknown) => unknown) {
  const target = new EventTarget();
  const seen = { started: 0, ended: 0 };
  const port: ProgressPort = {
    postMessage: (message: unknown, transferred?: unknown) => {
      const copy = structuredClone(message, {
        transfer: transferred as ArrayBuffer[],
      });
      queueMicrotask(() => {
        const data = structuredClone(answer(copy));
        target.dispatchEvent(new MessageEvent("message", { data }));
      });
    },
    terminate: () => (seen.ended += 1),
    addEventListener: target.addEventListener.bind(target),
  };
  const start = () => {
    seen.started += 1;
    return port;
  };
  return { start, seen, target };
}

describe("the reader of a class's logs", () => {
  it("reads one log after the other in one worker, and is ended once", async () => {
    const { start, seen } = standIn(answerProgress);
    const reader = logReader(start);
    expect(seen.started).toBe(0);
    for (const log of LOGS) {
      const packed = packLog(log);
      expect(
        await reader.summaryOf({ log: packed, settings: { level: 0.9 } }),
      ).toEqual({
        ok: true,
        value: memberSummary(unpacked(packLog(log)), { level: 0.9 }),
      });
      // The columns changed hands and were not copied.
      expect(packed.columns.days).toHaveLength(0);
    }
    reader.end();
    expect(seen).toEqual({ started: 1, ended: 1 });
  });

  it("gives up what was asked when it is ended, and asks nothing after", async () => {
    const { start, seen } = standIn(() => ({ kind: "summary" }));
    const reader = logReader(start);
    const asked = reader.summaryOf({ log: packLog([]), settings: {} });
    reader.end();
    const cancelled = { ok: false, error: { code: "cancelled" } };
    expect(await asked).toEqual(cancelled);
    expect(await reader.summaryOf({ log: packLog([]), settings: {} })).toEqual(
      cancelled,
    );
    expect(seen.started).toBe(1);
  });

  it.each([
    ["nothing known", undefined, "not understood"],
    ["a failure", { kind: "failed", reason: "a bug" }, "a bug"],
    [
      "half a summary",
      { kind: "summary", summary: { answers: 3 } },
      `not understood: missing-field at "cases"`,
    ],
  ])("does not believe %s", async (_, reply, reason) => {
    const { start } = standIn(() => reply);
    const outcome = await logReader(start).summaryOf({
      log: packLog([]),
      settings: {},
    });
    expect(outcome).toEqual({
      ok: false,
      error: { code: "progress-failed", reason },
    });
  });

  it("tells where a worker cannot start, or breaks", async () => {
    const cannot = logReader(() => {
      throw new Error("no workers here");
    });
    const request = () => ({ log: packLog([]), settings: {} });
    expect(await cannot.summaryOf(request())).toMatchObject({
      error: { code: "progress-failed", reason: "Error: no workers here" },
    });
    const { start, target } = standIn(answerProgress);
    const asked = logReader(start).summaryOf(request());
    target.dispatchEvent(new ErrorEvent("error", { message: "out of memory" }));
    expect(await asked).toMatchObject({ error: { reason: "out of memory" } });
  });

  it("starts another worker after one that broke: it would answer nothing more", async () => {
    const { start, seen, target } = standIn(answerProgress);
    const reader = logReader(start);
    const asked = reader.summaryOf({ log: packLog([]), settings: {} });
    target.dispatchEvent(new ErrorEvent("error", { message: "torn" }));
    expect(await asked).toMatchObject({ error: { reason: "torn" } });
    expect(
      await reader.summaryOf({ log: packLog([]), settings: {} }),
    ).toMatchObject({ ok: true });
    expect(seen).toEqual({ started: 2, ended: 1 });
  });
});
