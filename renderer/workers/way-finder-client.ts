/** The window's end of the way finder's worker. */
import type { CaseId } from "../../core/cases/case-ids";
import type { Turn } from "../../core/cube/turns";
import { ok, type Result } from "../../core/result";
import type { WaysOnDemand } from "../../core/solver/ways-on-demand";
import {
  parseWayReply,
  WAY_FINDER,
  type WayRequest,
} from "./way-finder-messages";
import {
  type AskWorker,
  type Cancelled,
  createAskWorker,
  type RequestOptions,
  type WorkerPort,
  workerPort,
} from "./worker-requests";

/** Why no ways came back. */
export type WayFinderError =
  | Cancelled
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

/** A client of a worker that is running, or something that behaves like one. */
export function createWayFinderClient(
  port: WorkerPort<WayRequest>,
): WayFinderClient {
  const ask: AskWorker<
    WayRequest,
    WaysOnDemand,
    WayFinderError,
    WayRequestOptions
  > = createAskWorker(port, {
    parse: parseWayReply,
    failure: (reason): WayFinderError => ({
      code: "way-finder-failed",
      reason,
    }),
    hear: (said, underWay) => {
      switch (said.kind) {
        case "progress":
          underWay.optionsOf(said.id)?.onprogress?.(said.progress);
          break;
        case "at-once":
          underWay.optionsOf(said.id)?.onatonce?.(said.way);
          break;
        case "found":
          underWay.settle(
            said.id,
            ok({ ways: said.ways, mostTurns: said.mostTurns }),
          );
          break;
        case "failed":
          underWay.fail(said.reason, said.id);
          break;
      }
    },
  });

  return {
    find: (id, mostTurns, options = {}) =>
      ask(
        (request) => ({ kind: "find-ways", id: request, case: id, mostTurns }),
        options,
      ),
  };
}

/** Starts the worker and returns its client. */
export function startWayFinder(): WayFinderClient {
  const worker = new Worker(new URL("./solver-worker.ts", import.meta.url), {
    type: "module",
    name: WAY_FINDER,
  });
  return createWayFinderClient(workerPort(worker));
}
