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
import {
  type AskWorker,
  type Cancelled,
  createAskWorker,
  type RequestOptions,
  type WorkerPort,
  workerPort,
} from "./worker-requests";

/** Why the solver gave no turns. */
export type SolverError =
  | SetUpError
  | Cancelled
  /** A bug of ours, or a worker that could not start. */
  | { readonly code: "solver-failed"; readonly reason: string };

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

/** A client of a worker that is running, or something that behaves like one. */
export function createSolverClient(
  port: WorkerPort<SolverRequest>,
): SolverClient {
  const ask: AskWorker<
    SolverRequest,
    readonly Turn[],
    SolverError,
    RequestOptions
  > = createAskWorker(port, {
    parse: parseReply,
    failure: (reason): SolverError => ({ code: "solver-failed", reason }),
    hear: (said, underWay) => {
      switch (said.kind) {
        case "progress":
          underWay.optionsOf(said.id)?.onprogress?.(said.progress);
          break;
        case "found":
          underWay.settle(said.id, ok(said.turns));
          break;
        case "none":
          underWay.settle(said.id, err(said.error));
          break;
        case "failed":
          underWay.fail(said.reason, said.id);
          break;
      }
    },
  });

  return {
    setUp: (from, to, seed, options = {}) =>
      ask((id) => setUpRequest(id, from, to, seed), options),
    solve: (cube, options = {}) => ask((id) => solveRequest(id, cube), options),
  };
}

/** Starts the worker and returns its client. */
export function startSolver(): SolverClient {
  const worker = new Worker(new URL("./solver-worker.ts", import.meta.url), {
    type: "module",
    name: "solver",
  });
  return createSolverClient(workerPort(worker));
}
