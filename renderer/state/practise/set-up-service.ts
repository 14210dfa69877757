/** Set-ups and solutions for the learner's own cube, found by the solver's worker. */
import type { Position } from "../../../core/cases/position";
import type { Cubies, PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { Result } from "../../../core/result";
import {
  type SolverClient,
  type SolverError,
  startSolver,
} from "../../workers/solver-client";
import type { RequestOptions } from "../../workers/worker-requests";

let client: SolverClient | undefined;

/** Asks the worker; it is started with the first request, and another one with the next request after it failed. */
async function ask(
  request: (
    solver: SolverClient,
  ) => Promise<Result<readonly Turn[], SolverError>>,
): Promise<Result<readonly Turn[], SolverError>> {
  const asked = (client ??= startSolver());
  const found = await request(asked);
  if (!found.ok && found.error.code === "solver-failed" && client === asked)
    client = undefined;
  return found;
}

/**
 * Turns that bring a cube to a position.
 *
 * Errors: those of the solver, "cancelled" among them. Never rejects.
 */
export function findSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  seed: number,
  options?: RequestOptions,
): Promise<Result<readonly Turn[], SolverError>> {
  return ask((solver) => solver.setUp(from, to, seed, options));
}

/**
 * Turns that solve a cube, as its holder makes them.
 *
 * Errors: those of the solver. Never rejects.
 */
export function findSolution(
  cube: HeldCube<Cubies>,
): Promise<Result<readonly Turn[], SolverError>> {
  return ask((solver) => solver.solve(cube));
}
