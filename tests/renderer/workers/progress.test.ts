import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../core/memory/local-day";
import { packLog, unpacked } from "../../../core/progress/packed-log";
import { progressFacts } from "../../../core/progress/progress-facts";
import {
  askForProgress,
  type ProgressPort,
} from "../../../renderer/workers/progress-client";
import type { FactsRequest } from "../../../renderer/workers/progress-request";
import { answerProgress } from "../../../renderer/workers/progress-service";
import { noonOf, sampleReview } from "../../core/memory/sample-review";

const TODAY = dayNumber(20_000);
const LOG = [
  sampleReview(19_990, { id: "a" }),
  sampleReview(19_994, { id: "b", verdict: "missed", answeredAs: "E3" }),
  sampleReview(19_996, { id: "c", at: noonOf(19_996) }),
];

const request = (): FactsRequest => ({
  question: "facts",
  log: packLog(LOG),
  today: TODAY,
  settings: { level: 0.9 },
});

/** A worker that answers as a test wants it to, its messages copied as a browser does. */
function standIn(answer: (message: unknown) => unknown) {
  const target = new EventTarget();
  const seen = { ended: 0 };
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
  return { port, seen, target };
}

const never = () => new AbortController().signal;

describe("progress's worker", () => {
  it("says of a packed log what the log itself says, and is ended then", async () => {
    const { port, seen } = standIn(answerProgress);
    const asked = request();
    const outcome = await askForProgress(asked, never(), () => port);
    expect(outcome).toEqual({
      ok: true,
      value: progressFacts(unpacked(packLog(LOG)), TODAY, { level: 0.9 }),
    });
    expect(seen.ended).toBe(1);
    // The columns changed hands and were not copied.
    expect(asked.log.columns.days).toHaveLength(0);
  });

  it("is ended by cancelling, whatever it says later", async () => {
    const { port, seen } = standIn(answerProgress);
    const controller = new AbortController();
    const asked = askForProgress(request(), controller.signal, () => port);
    controller.abort();
    expect(await asked).toEqual({ ok: false, error: { code: "cancelled" } });
    expect(seen.ended).toBeGreaterThan(0);
    const late = askForProgress(request(), controller.signal, () => port);
    expect(await late).toEqual({ ok: false, error: { code: "cancelled" } });
  });

  it.each([
    ["nothing known", undefined, "not understood"],
    ["a failure", { kind: "failed", reason: "a bug" }, "a bug"],
    [
      "half the facts",
      { kind: "facts", facts: { answers: 3 } },
      `not understood: missing-field at "times"`,
    ],
  ])("that says %s is not believed", async (_, reply, reason) => {
    const { port } = standIn(() => reply);
    expect(await askForProgress(request(), never(), () => port)).toEqual({
      ok: false,
      error: { code: "progress-failed", reason },
    });
  });

  it("that cannot start, or breaks, is told", async () => {
    const cannot = await askForProgress(request(), never(), () => {
      throw new Error("no workers here");
    });
    expect(cannot).toMatchObject({
      error: { code: "progress-failed", reason: "Error: no workers here" },
    });
    const { port, target } = standIn(answerProgress);
    const asked = askForProgress(request(), never(), () => port);
    target.dispatchEvent(new ErrorEvent("error", { message: "out of memory" }));
    expect(await asked).toMatchObject({ error: { reason: "out of memory" } });
  });

  it("does not believe the window either", () => {
    const { log, ...rest } = request();
    const days = new Int32Array(1);
    const crooked = { ...log, columns: { ...log.columns, days } };
    const unknown = { ...log, cases: [] };
    expect(answerProgress({ ...rest, log: crooked })).toEqual({
      kind: "failed",
      reason: `not understood: contradiction at "log.columns"`,
    });
    expect(answerProgress({ ...rest, log: unknown })).toMatchObject({
      kind: "failed",
      reason: expect.stringContaining("a packed case is known") as string,
    });
    expect(answerProgress({ ...rest, log, today: -1 })).toMatchObject({
      reason: `not understood: out-of-range at "today"`,
    });
  });
});
