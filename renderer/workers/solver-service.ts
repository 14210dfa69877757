/**
 * What the solver's worker does with a message, apart from being a worker:
 * tests run it as it is.
 */
import { randomSource } from "../../core/random-source";
import { createSetUpFinder, type SetUpFinder } from "../../core/solver/set-up";
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
): SolverService {
  const underWay = new Map<number, AbortController>();

  async function setUp(
    request: Extract<SolverRequest, { readonly kind: "set-up" }>,
  ): Promise<void> {
    const { id, from, to, seed } = request;
    const controller = new AbortController();
    underWay.set(id, controller);
    try {
      const found = await driveSteps(
        finder.find(from, to, randomSource(seed)),
        slicing,
        controller.signal,
        (progress) => post({ kind: "progress", id, progress }),
      );
      if (found === undefined) return;
      post(
        found.ok
          ? { kind: "found", id, turns: found.value.turns }
          : { kind: "none", id, error: found.error },
      );
    } catch (error) {
      // The worker's edge: a bug of ours is told to the window, once.
      post({ kind: "failed", id, reason: String(error) });
    } finally {
      underWay.delete(id);
    }
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
      if (request.value.kind === "cancel")
        underWay.get(request.value.id)?.abort();
      else await setUp(request.value);
    },
  };
}
