/** The window's end of the worker that fits weights: one worker for each fit. */
import type { FitOutcome } from "../../core/memory/fit";
import { err, ok, type Result } from "../../core/result";
import { type FitRequest, parseFitReply } from "./fit-messages";

/** Why there is no outcome. */
export type FitError =
  | { readonly code: "cancelled" }
  /** The library failed, or the worker could not start. */
  | { readonly code: "fit-failed"; readonly reason: string };

/** A worker, or something that behaves like one. */
export interface FitPort {
  post(request: FitRequest): void;
  listen(
    onmessage: (message: unknown) => void,
    onerror: (reason: string) => void,
  ): void;
  /** Ends it, in the middle of whatever it does. */
  end(): void;
}

/** What may be said about a fit. */
export interface FitOptions {
  /** Aborting it ends the worker. */
  readonly signal?: AbortSignal;
  /** Told how far it has come, 0–1. */
  readonly onprogress?: (progress: number) => void;
}

/** Fits weights in a worker of its own. Never rejects. */
export function fitInWorker(
  request: FitRequest,
  { signal, onprogress }: FitOptions = {},
  start: () => FitPort = startFitWorker,
): Promise<Result<FitOutcome, FitError>> {
  if (signal?.aborted === true)
    return Promise.resolve(err({ code: "cancelled" }));
  return new Promise((resolve) => {
    const port = start();
    const settle = (outcome: Result<FitOutcome, FitError>) => {
      signal?.removeEventListener("abort", cancel);
      port.end();
      resolve(outcome);
    };
    const cancel = () => settle(err({ code: "cancelled" }));
    const fail = (reason: string) =>
      settle(err({ code: "fit-failed", reason }));
    signal?.addEventListener("abort", cancel, { once: true });
    port.listen((message) => {
      const reply = parseFitReply(message);
      if (!reply.ok) {
        const { code, field } = reply.error;
        fail(`not understood: ${code} at "${field}"`);
        return;
      }
      const said = reply.value;
      switch (said.kind) {
        case "progress":
          onprogress?.(said.progress);
          break;
        case "done":
          settle(ok(said.outcome));
          break;
        case "failed":
          fail(said.reason);
          break;
      }
    }, fail);
    port.post(request);
  });
}

function startFitWorker(): FitPort {
  const worker = new Worker(new URL("./fit-worker.ts", import.meta.url), {
    type: "module",
    name: "fit",
  });
  return {
    post: (request) => worker.postMessage(request),
    listen: (onmessage, onerror) => {
      worker.addEventListener("message", (event: MessageEvent<unknown>) =>
        onmessage(event.data),
      );
      worker.addEventListener("error", (event) =>
        onerror(event.message || "the worker could not start"),
      );
    },
    end: () => worker.terminate(),
  };
}
