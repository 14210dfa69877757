/**
 * The window's end of the worker that reads a class's logs, one after the
 * other. It is progress's worker, kept for as long as logs are read: starting
 * one for each of forty learners would take longer than reading them.
 */
import * as v from "valibot";
import type { MemberSummary } from "../../core/class/member-summary";
import { parseMemberSummary } from "../../core/class/member-summary-schema";
import { columnsOf } from "../../core/progress/packed-log";
import { err, type Result } from "../../core/result";
import {
  type ProgressError,
  type ProgressPort,
  startProgressWorker,
} from "./progress-client";
import type { SummaryRequest } from "./progress-request";

/** A summary, or why there is none. */
export type SummaryOutcome = Result<MemberSummary, ProgressError>;

/** Reads logs until it is ended. */
export interface LogReader {
  /** What a log says; asked one at a time. Its columns change hands and are empty afterwards. Never rejects. */
  summaryOf(request: Omit<SummaryRequest, "question">): Promise<SummaryOutcome>;
  /** Ends the worker; whatever was asked is given up. */
  end(): void;
}

const REPLY = v.variant("kind", [
  v.object({ kind: v.literal("summary"), summary: v.unknown() }),
  v.object({ kind: v.literal("failed"), reason: v.string() }),
]);

function failed(reason: string): SummaryOutcome {
  return err({ code: "progress-failed", reason });
}

function outcomeOf(message: unknown): SummaryOutcome {
  const reply = v.safeParse(REPLY, message);
  if (!reply.success) return failed("not understood");
  if (reply.output.kind === "failed") return failed(reply.output.reason);
  const summary = parseMemberSummary(reply.output.summary);
  if (summary.ok) return summary;
  const { code, field } = summary.error;
  return failed(`not understood: ${code} at "${field}"`);
}

/** Makes a reader; its worker is started by the first log. */
export function logReader(
  start: () => ProgressPort = startProgressWorker,
): LogReader {
  let port: ProgressPort | undefined;
  let waiting: ((outcome: SummaryOutcome) => void) | undefined;
  let isEnded = false;
  const settle = (outcome: SummaryOutcome) => {
    const resolve = waiting;
    waiting = undefined;
    resolve?.(outcome);
  };
  const started = (): ProgressPort => {
    if (port !== undefined) return port;
    const worker = start();
    worker.addEventListener("message", (event: MessageEvent<unknown>) =>
      settle(outcomeOf(event.data)),
    );
    worker.addEventListener("error", (event) => {
      // It may never answer again: the next log gets another.
      worker.terminate();
      if (port === worker) port = undefined;
      settle(failed(event.message || "the worker could not start"));
    });
    port = worker;
    return worker;
  };
  return {
    summaryOf(request) {
      if (isEnded) return Promise.resolve(err({ code: "cancelled" }));
      let worker: ProgressPort;
      try {
        worker = started();
      } catch (error) {
        return Promise.resolve(failed(String(error)));
      }
      return new Promise((resolve) => {
        waiting = resolve;
        worker.postMessage(
          { question: "summary", ...request },
          columnsOf(request.log).map(({ buffer }) => buffer),
        );
      });
    },
    end() {
      isEnded = true;
      port?.terminate();
      settle(err({ code: "cancelled" }));
    },
  };
}
