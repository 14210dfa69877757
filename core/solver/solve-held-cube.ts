/** Solves a cube as somebody holds it, in few turns that teach nothing. */
import { type Cubies, isSameState, SOLVED } from "../cube/cubies";
import { applyTurns, type HeldCube, viewFace } from "../cube/held-cube";
import { isFaceTurn, type Turn } from "../cube/turns";
import { validateCubies } from "../cube/validity";
import { invariant } from "../invariant";
import { err, ok, type Result } from "../result";
import { partOf, type Steps } from "../steps";
import { createTwoPhaseSolver, type TwoPhaseSolver } from "./two-phase";

/** Solves cubes; keeps its tables once they have been needed. */
export interface HeldCubeSolver {
  /**
   * The turns that solve a cube, as its holder makes them: at most 23, and
   * none of the whole cube.
   *
   * Errors: `impossible-cube` where no turns solve it.
   */
  solve(
    cube: HeldCube<Cubies>,
  ): Steps<
    Result<readonly Turn[], { readonly code: "impossible-cube"; which: "from" }>
  >;
}

/** A solver with nothing prepared yet. */
export function createHeldCubeSolver(): HeldCubeSolver {
  let solver: TwoPhaseSolver | undefined;
  return {
    *solve(cube) {
      if (!validateCubies(cube.cubies).ok)
        return err({ code: "impossible-cube", which: "from" });
      solver ??= yield* partOf(createTwoPhaseSolver(), 0, 0.9);
      const own = yield* partOf(solver.solveInSteps(cube.cubies), 0.9, 1);
      const turns = own.map((turn) => {
        invariant(isFaceTurn(turn), "the solver turns faces");
        return { ...turn, layer: viewFace(cube.hold, turn.layer) };
      });
      invariant(
        isSameState(applyTurns(cube, turns).cubies, SOLVED),
        "a solution solves",
      );
      return ok(turns);
    },
  };
}
