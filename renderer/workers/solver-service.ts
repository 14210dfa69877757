/**
 * What the solver's worker does with a message, apart from being a worker:
 * tests run it as it is.
 */
import { randomSource } from "../../core/random-source";
import type { Turn } from "../../core/cube/turns";
import { ok, type Result } from "../../core/result";
import {
  createSetUpFinder,
  type SetUpError,
  type SetUpFinder,
} from "../../core/solver/set-up";
import {
  createHeldCubeSolver,
  type HeldCubeSolver,
} from "../../core/solver/solve-held-cube";
import type { Steps } from "../../core/steps";
import { driveSteps, type Slicing } from "./drive-steps";
import {
  parseRequest,
  type SolverReply,
  type SolverRequest,
} from "./solver-messages";

/** Takes messages; resolves when a message is dealt with. */
export interface SolverService {
  receive(message: unknown): Promise<void>;
}

/** A service that answers by `post`. Several requests may be under way at once. */
export function createSolverService(
  post: (reply: SolverReply) => void,
  slicing: Slicing,
  finder: SetUpFinder = createSetUpFinder(),
  solver: HeldCubeSolver = createHeldCubeSolver(),
): SolverService {
  const underWay = new Map<number, AbortController>();

  /** Works one request out and posts what came of it, unless it is cancelled. */
  async function answer(
    id: number,
    steps: Steps<Result<readonly Turn[], SetUpError>>,
  ): Promise<void> {
    const controller = new AbortController();
    underWay.set(id, controller);
    try {
      const found = await driveSteps(
        steps,
        slicing,
        controller.signal,
        (progress) => post({ kind: "progress", id, progress }),
      );
      if (found === undefined) return;
      post(
        found.ok
          ? { kind: "found", id, turns: found.value }
          : { kind: "none", id, error: found.error },
      );
    } catch (error) {
      // The worker's edge: a bug of ours is told to the window, once.
      post({ kind: "failed", id, reason: String(error) });
    } finally {
      underWay.delete(id);
    }
  }

  function* setUp({
    from,
    to,
    seed,
  }: Extract<SolverRequest, { readonly kind: "set-up" }>): Steps<
    Result<readonly Turn[], SetUpError>
  > {
    const found = yield* finder.find(from, to, randomSource(seed));
    return found.ok ? ok(found.value.turns) : found;
  }

  return {
    async receive(message) {
      const request = parseRequest(message);
      if (!request.ok) {
        const { code, field } = request.error;
        const reason = `not understood: ${code} at "${field}"`;
        post({ kind: "failed", reason });
        return;
      }
      const asked = request.value;
      switch (asked.kind) {
        case "cancel":
          underWay.get(asked.id)?.abort();
          break;
        case "set-up":
          await answer(asked.id, setUp(asked));
          break;
        case "solve":
          await answer(asked.id, solver.solve(asked.cube));
          break;
      }
    },
  };
}
