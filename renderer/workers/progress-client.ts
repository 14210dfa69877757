/**
 * The window's end of progress's worker. Each question has a worker of its
 * own, which is ended with it: the page is opened now and then, and a log of a
 * million answers takes memory that nobody else may have meanwhile.
 */
import * as v from "valibot";
import { columnsOf } from "../../core/progress/packed-log";
import type { ProgressFacts } from "../../core/progress/progress-facts";
import { parseProgressFacts } from "../../core/progress/progress-facts-schema";
import { err, type Result } from "../../core/result";
import type { FactsRequest } from "./progress-request";

/** Why there are no facts. */
export type ProgressError =
  | { readonly code: "cancelled" }
  /** A bug of ours, or a worker that could not start. */
  | { readonly code: "progress-failed"; readonly reason: string };

/** The facts, or why there are none. */
export type ProgressOutcome = Result<ProgressFacts, ProgressError>;

/** What of a worker is needed. */
export type ProgressPort = Pick<
  Worker,
  "postMessage" | "terminate" | "addEventListener"
>;

const REPLY = v.variant("kind", [
  v.object({ kind: v.literal("facts"), facts: v.unknown() }),
  v.object({ kind: v.literal("failed"), reason: v.string() }),
]);

function failed(reason: string): ProgressOutcome {
  return err({ code: "progress-failed", reason });
}

function outcomeOf(message: unknown): ProgressOutcome {
  const reply = v.safeParse(REPLY, message);
  if (!reply.success) return failed("not understood");
  if (reply.output.kind === "failed") return failed(reply.output.reason);
  const facts = parseProgressFacts(reply.output.facts);
  if (facts.ok) return facts;
  const { code, field } = facts.error;
  return failed(`not understood: ${code} at "${field}"`);
}

/** Starts a worker that reads logs. Throws where the browser cannot. */
export function startProgressWorker(): ProgressPort {
  return new Worker(new URL("./progress-worker.ts", import.meta.url), {
    type: "module",
    name: "progress",
  });
}

/** Asks for a log's facts; aborting ends the worker. The log's columns change hands and are empty afterwards. Never rejects. */
export function askForProgress(
  request: FactsRequest,
  signal: AbortSignal,
  start: () => ProgressPort = startProgressWorker,
): Promise<ProgressOutcome> {
  if (signal.aborted) return Promise.resolve(err({ code: "cancelled" }));
  let port: ProgressPort;
  try {
    port = start();
  } catch (error) {
    return Promise.resolve(failed(String(error)));
  }
  return new Promise((resolve) => {
    const settle = (outcome: ProgressOutcome) => {
      signal.removeEventListener("abort", cancel);
      port.terminate();
      resolve(outcome);
    };
    const cancel = () => settle(err({ code: "cancelled" }));
    signal.addEventListener("abort", cancel);
    port.addEventListener("message", (event: MessageEvent<unknown>) =>
      settle(outcomeOf(event.data)),
    );
    port.addEventListener("error", (event) =>
      settle(failed(event.message || "the worker could not start")),
    );
    port.postMessage(
      request,
      columnsOf(request.log).map(({ buffer }) => buffer),
    );
  });
}
