/** Set-ups for the learner's own cube, found by the solver's worker. */
import type { Position } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { Result } from "../../../core/result";
import {
  type RequestOptions,
  type SolverClient,
  type SolverError,
  startSolver,
} from "../../workers/solver-client";

let client: SolverClient | undefined;

/**
 * Turns that bring a cube to a position; the worker is started with the first
 * request, and another one with the next request after it failed.
 *
 * Errors: those of the solver, "cancelled" among them. Never rejects.
 */
export async function findSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  seed: number,
  options?: RequestOptions,
): Promise<Result<readonly Turn[], SolverError>> {
  const asked = (client ??= startSolver());
  const found = await asked.setUp(from, to, seed, options);
  if (!found.ok && found.error.code === "solver-failed" && client === asked)
    client = undefined;
  return found;
}
