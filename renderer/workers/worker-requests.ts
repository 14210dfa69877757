/**
 * The window's end of a worker that answers numbered requests: which are under
 * way, how each is given up, and what becomes of all where the worker fails.
 * What the two say to each other is the business of each worker's own client.
 */
import { err, type Result } from "../../core/result";
import type { MessageError } from "./message-schemas";

/** How to follow a request and give it up. */
export interface RequestOptions {
  /** Aborting it cancels the search. */
  readonly signal?: AbortSignal;
  /** Told how far the work has come, 0–1, where it takes longer than a moment. */
  readonly onprogress?: (progress: number) => void;
}

/** Where a request was given up. */
export interface Cancelled {
  readonly code: "cancelled";
}

/** The way to a worker and back. */
export interface WorkerPort<Request> {
  post(request: Request | CancelRequest): void;
  listen(
    onmessage: (message: unknown) => void,
    onerror: (reason: string) => void,
  ): void;
}

interface CancelRequest {
  readonly kind: "cancel";
  readonly id: number;
}

/** The requests under way, for a reply to reach. An id of none changes nothing. */
export interface RequestsUnderWay<Value, Failure, Options> {
  /** What was asked for with a request. */
  optionsOf(id: number): Options | undefined;
  settle(id: number, outcome: Result<Value, Failure | Cancelled>): void;
  /** Fails a request; all of them where nobody knows whose failure it is. */
  fail(reason: string, id: number | undefined): void;
}

/** How one worker's replies are understood. */
export interface WorkerReplies<Reply, Value, Failure, Options> {
  readonly parse: (message: unknown) => Result<Reply, MessageError>;
  /** What a request comes to where the worker fails. */
  readonly failure: (reason: string) => Failure;
  readonly hear: (
    reply: Reply,
    underWay: RequestsUnderWay<Value, Failure, Options>,
  ) => void;
}

/** Asks the worker, with a new number each time. Never rejects. */
export type AskWorker<Request, Value, Failure, Options> = (
  requestFor: (id: number) => Request,
  options: Options,
) => Promise<Result<Value, Failure | Cancelled>>;

/** Asks a worker that is running, or something that behaves like one. */
export function createAskWorker<
  Request,
  Reply,
  Value,
  Failure,
  Options extends RequestOptions,
>(
  port: WorkerPort<Request>,
  replies: WorkerReplies<Reply, Value, Failure, Options>,
): AskWorker<Request, Value, Failure, Options> {
  type Outcome = Result<Value, Failure | Cancelled>;
  const pending = new Map<
    number,
    { readonly options: Options; readonly settle: (outcome: Outcome) => void }
  >();
  let lastId = 0;

  const settle = (id: number, outcome: Outcome): void => {
    const waiting = pending.get(id);
    pending.delete(id);
    waiting?.settle(outcome);
  };
  const fail = (reason: string, id: number | undefined): void => {
    for (const failed of id === undefined ? [...pending.keys()] : [id])
      settle(failed, err(replies.failure(reason)));
  };
  const underWay = {
    optionsOf: (id: number) => pending.get(id)?.options,
    settle,
    fail,
  };

  port.listen(
    (message) => {
      const reply = replies.parse(message);
      if (reply.ok) replies.hear(reply.value, underWay);
      else {
        const { code, field } = reply.error;
        fail(`not understood: ${code} at "${field}"`, undefined);
      }
    },
    (reason) => fail(reason, undefined),
  );

  return (requestFor, options) => {
    const { signal } = options;
    if (signal?.aborted === true)
      return Promise.resolve(err({ code: "cancelled" }));
    const id = ++lastId;
    return new Promise((resolve) => {
      const cancel = () => {
        port.post({ kind: "cancel", id });
        settle(id, err({ code: "cancelled" }));
      };
      signal?.addEventListener("abort", cancel, { once: true });
      pending.set(id, {
        options,
        settle: (outcome) => {
          signal?.removeEventListener("abort", cancel);
          resolve(outcome);
        },
      });
      port.post(requestFor(id));
    });
  };
}

/** The way to a worker that was just started. */
export function workerPort<Request>(worker: Worker): WorkerPort<Request> {
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
  };
}
