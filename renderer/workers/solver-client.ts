/**
 * The window's end of the solver's worker.
 */
import type { Position } from "../../core/cases/position";
import type { Cubies, PartlyKnownCubies } from "../../core/cube/cubies";
import type { HeldCube } from "../../core/cube/held-cube";
import type { Turn } from "../../core/cube/turns";
import { err, ok, type Result } from "../../core/result";
import type { SetUpError } from "../../core/solver/set-up";
import {
  parseReply,
  setUpRequest,
  solveRequest,
  type SolverRequest,
} from "./solver-messages";

/** Why the solver gave no turns. */
export type SolverError =
  | SetUpError
  | { readonly code: "cancelled" }
  /** A bug of ours, or a worker that could not start. */
  | { readonly code: "solver-failed"; readonly reason: string };

/** What may be said about a request. */
export interface RequestOptions {
  /** Aborting it cancels the search. */
  readonly signal?: AbortSignal;
  /** Told how far the work has come, 0–1, where it takes longer than a moment. */
  readonly onprogress?: (progress: number) => void;
}

/** Asks the solver. */
export interface SolverClient {
  /** Turns that bring a cube to a position; the same for the same seed. Never rejects. */
  setUp(
    from: HeldCube<PartlyKnownCubies>,
    to: Position,
    seed: number,
    options?: RequestOptions,
  ): Promise<Result<readonly Turn[], SolverError>>;
  /** Turns that solve a cube, as its holder makes them. Never rejects. */
  solve(
    cube: HeldCube<Cubies>,
    options?: RequestOptions,
  ): Promise<Result<readonly Turn[], SolverError>>;
}

/** The way to a worker and back. */
export interface SolverPort {
  post(request: SolverRequest): void;
  listen(
    onmessage: (message: unknown) => void,
    onerror: (reason: string) => void,
  ): void;
}

interface Pending {
  readonly settle: (outcome: Result<readonly Turn[], SolverError>) => void;
  readonly onprogress: ((progress: number) => void) | undefined;
}

/** A client of a worker that is running, or something that behaves like one. */
export function createSolverClient(port: SolverPort): SolverClient {
  const pending = new Map<number, Pending>();
  let lastId = 0;

  const settle = (
    id: number,
    outcome: Result<readonly Turn[], SolverError>,
  ): void => {
    const waiting = pending.get(id);
    pending.delete(id);
    waiting?.settle(outcome);
  };
  const fail = (ids: Iterable<number>, reason: string): void => {
    for (const id of [...ids])
      settle(id, err({ code: "solver-failed", reason }));
  };

  const hear = (message: unknown): void => {
    const reply = parseReply(message);
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
      case "found":
        settle(said.id, ok(said.turns));
        break;
      case "none":
        settle(said.id, err(said.error));
        break;
      case "failed":
        fail(said.id === undefined ? pending.keys() : [said.id], said.reason);
        break;
    }
  };
  port.listen(hear, (reason) => fail(pending.keys(), reason));

  const ask = (
    requestFor: (id: number) => SolverRequest,
    { signal, onprogress }: RequestOptions = {},
  ): Promise<Result<readonly Turn[], SolverError>> => {
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
        settle: (outcome) => {
          signal?.removeEventListener("abort", cancel);
          resolve(outcome);
        },
        onprogress,
      });
      port.post(requestFor(id));
    });
  };

  return {
    setUp: (from, to, seed, options) =>
      ask((id) => setUpRequest(id, from, to, seed), options),
    solve: (cube, options) => ask((id) => solveRequest(id, cube), options),
  };
}

/** Starts the worker and returns its client. */
export function startSolver(): SolverClient {
  const worker = new Worker(new URL("./solver-worker.ts", import.meta.url), {
    type: "module",
    name: "solver",
  });
  return createSolverClient({
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
