/** The window's end of the way finder's worker. */
import type { CaseId } from "../../core/cases/case-ids";
import type { Turn } from "../../core/cube/turns";
import { err, ok, type Result } from "../../core/result";
import type { WaysOnDemand } from "../../core/solver/ways-on-demand";
import type { RequestOptions } from "./solver-client";
import {
  parseWayReply,
  WAY_FINDER,
  type WayRequest,
} from "./way-finder-messages";

/** Why no ways came back. */
export type WayFinderError =
  | { readonly code: "cancelled" }
  /** A bug of ours, or a worker that could not start. */
  | { readonly code: "way-finder-failed"; readonly reason: string };

/** What a search comes to. */
export type WaySearchOutcome = Result<WaysOnDemand, WayFinderError>;

/** How to follow a search and give it up. */
export interface WayRequestOptions extends RequestOptions {
  /** Hears of a way that is there before the shortest are looked for. */
  readonly onatonce?: (way: readonly Turn[]) => void;
}

/** Asks the way finder. */
export interface WayFinderClient {
  /**
   * The shortest ways of a case, of at most so many turns; before that a way
   * that is not proved to be shortest is told. Never rejects.
   */
  find(
    id: CaseId,
    mostTurns: number,
    options?: WayRequestOptions,
  ): Promise<WaySearchOutcome>;
}

/** The way to a worker and back. */
export interface WayFinderPort {
  post(request: WayRequest): void;
  listen(
    onmessage: (message: unknown) => void,
    onerror: (reason: string) => void,
  ): void;
}

interface Pending {
  readonly settle: (outcome: WaySearchOutcome) => void;
  readonly onprogress: RequestOptions["onprogress"] | undefined;
  readonly onatonce: WayRequestOptions["onatonce"] | undefined;
}

/** A client of a worker that is running, or something that behaves like one. */
export function createWayFinderClient(port: WayFinderPort): WayFinderClient {
  const pending = new Map<number, Pending>();
  let lastId = 0;

  const settle = (id: number, outcome: WaySearchOutcome): void => {
    const waiting = pending.get(id);
    pending.delete(id);
    waiting?.settle(outcome);
  };
  const fail = (ids: Iterable<number>, reason: string): void => {
    for (const id of [...ids])
      settle(id, err({ code: "way-finder-failed", reason }));
  };

  port.listen(
    (message) => {
      const reply = parseWayReply(message);
      if (!reply.ok) {
        const { code, field } = reply.error;
        fail(pending.keys(), `not understood: ${code} at "${field}"`);
        return;
      }
      const said = reply.value;
      switch (said.kind) {
        case "progress":
          pending.get(said.id)?.onprogress?.(said.progress);
          break;
        case "at-once":
          pending.get(said.id)?.onatonce?.(said.way);
          break;
        case "found":
          settle(said.id, ok({ ways: said.ways, mostTurns: said.mostTurns }));
          break;
        case "failed":
          fail(said.id === undefined ? pending.keys() : [said.id], said.reason);
          break;
      }
    },
    (reason) => fail(pending.keys(), reason),
  );

  return {
    find(id, mostTurns, options = {}) {
      const { signal, onprogress, onatonce } = options;
      if (signal?.aborted === true)
        return Promise.resolve(err({ code: "cancelled" }));
      const request = ++lastId;
      return new Promise((resolve) => {
        const cancel = () => {
          port.post({ kind: "cancel", id: request });
          settle(request, err({ code: "cancelled" }));
        };
        signal?.addEventListener("abort", cancel, { once: true });
        pending.set(request, {
          settle: (outcome) => {
            signal?.removeEventListener("abort", cancel);
            resolve(outcome);
          },
          onprogress,
          onatonce,
        });
        port.post({ kind: "find-ways", id: request, case: id, mostTurns });
      });
    },
  };
}

/** Starts the worker and returns its client. */
export function startWayFinder(): WayFinderClient {
  const worker = new Worker(new URL("./solver-worker.ts", import.meta.url), {
    type: "module",
    name: WAY_FINDER,
  });
  return createWayFinderClient({
    post: (request) => worker.postMessage(request),
    listen: (onmessage, onerror) => {
      worker.addEventListener("message", (event: MessageEvent<unknown>) =>
        onmessage(event.data),
      );
      worker.addEventListener("error", (event) =>
        onerror(event.message || "the worker could not start"),
      );
    },
  });
}
