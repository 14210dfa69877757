/** Set-ups for the learner's own cube, found by the solver's worker. */
import type { Position } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import {
  type RequestOptions,
  type SolverClient,
  startSolver,
} from "../../workers/solver-client";

let client: SolverClient | undefined;

/**
 * Turns that bring a cube to a position; the worker is started with the first
 * request. Undefined where there are none, or the request was cancelled.
 */
export async function findSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  seed: number,
  options?: RequestOptions,
): Promise<readonly Turn[] | undefined> {
  client ??= startSolver();
  const found = await client.setUp(from, to, seed, options);
  return found.ok ? found.value : undefined;
}
