import Cube from "cubejs";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { cubiesFrom, isSameState, SOLVED } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { applyTurns } from "../../../core/cube/held-cube";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { formatTurns } from "../../../core/notation/format";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { simplifyTurns } from "../../../core/notation/simplify";
import { randomSource } from "../../../core/random-source";
import { runToEnd } from "../../../core/steps";
import {
  createTwoPhaseSolver,
  type TwoPhaseSolver,
} from "../../../core/solver/two-phase";

const SEED = 20_251_126;

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let solver: TwoPhaseSolver;

beforeAll(() => {
  solver = runToEnd(createTwoPhaseSolver());
});

function isSolvedBy(
  cubies: Parameters<TwoPhaseSolver["solve"]>[0],
  turns: ReturnType<TwoPhaseSolver["solve"]>,
): boolean {
  const after = applyTurns({ cubies, hold: NO_ROTATION }, turns);
  return isSameState(after.cubies, SOLVED);
}

describe("the two-phase solver", () => {
  it("solves 300 random states in at most 23 turns, played here and in cubejs", () => {
    const random = randomSource(SEED);
    for (let i = 0; i < 300; i++) {
      const cubies = sampleState(random, ANY_STATE);
      const turns = solver.solve(cubies);
      const theirs = Cube.fromString(
        formatFacelets({ cubies, hold: NO_ROTATION }),
      ).move(formatTurns(turns));
      expect(
        [isSolvedBy(cubies, turns), theirs.isSolved(), turns.length <= 23],
        `state ${i} of seed ${SEED}`,
      ).toEqual([true, true, true]);
      expect(simplifyTurns(turns)).toEqual(turns);
    }
  });

  it("keeps to 21 turns where that is asked", () => {
    const random = randomSource(SEED + 1);
    for (let i = 0; i < 20; i++) {
      const cubies = sampleState(random, ANY_STATE);
      const turns = solver.solve(cubies, 21);
      expect(isSolvedBy(cubies, turns)).toBe(true);
      expect(outerBlockTurns(turns)).toBeLessThanOrEqual(21);
    }
  });

  it("solves the superflip, which no fewer than 20 turns solve (Reid, 1995)", () => {
    const superflip = cubiesFrom(
      [0, 1, 2, 3, 4, 5, 6, 7],
      [0, 0, 0, 0, 0, 0, 0, 0],
      [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11],
      [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1],
    );
    const turns = solver.solve(superflip);
    expect(isSolvedBy(superflip, turns)).toBe(true);
    expect(turns.length).toBeGreaterThanOrEqual(20);
    expect(turns.length).toBeLessThanOrEqual(23);
  });

  it("solves states that are already in the group of phase 2", () => {
    const random = randomSource(SEED + 2);
    for (let i = 0; i < 30; i++) {
      let cubies = SOLVED;
      // Half turns of four faces between turns of two: a walk of that group.
      for (let n = 0; n < 30; n++) {
        const quarters = [1, 2, 3] as const;
        const half = (["R", "L", "F", "B"] as const)[random.below(4)] ?? "R";
        const free = random.below(2) === 0 ? "U" : "D";
        cubies = applyTurns({ cubies, hold: NO_ROTATION }, [
          { layer: half, quarters: 2 },
          { layer: free, quarters: quarters[random.below(3)] ?? 1 },
        ]).cubies;
      }
      const turns = solver.solve(cubies);
      expect(isSolvedBy(cubies, turns)).toBe(true);
      expect(turns.length).toBeLessThanOrEqual(23);
    }
  });

  it("has nothing to do on a solved cube, and one turn after one turn", () => {
    expect(solver.solve(SOLVED)).toEqual([]);
    const turned = applyTurns({ cubies: SOLVED, hold: NO_ROTATION }, [
      { layer: "L", quarters: 1 },
    ]);
    expect(formatTurns(solver.solve(turned.cubies))).toBe("L'");
  });

  it("refuses a cube that cannot be: that is its caller's mistake", () => {
    const twisted = { ...SOLVED, cornerOrientation: new Uint8Array(8).fill(1) };
    expect(() => solver.solve(twisted)).toThrow("only possible cubes");
  });

  it("can be stopped between steps and asked something else", () => {
    const random = randomSource(SEED + 3);
    const hard = sampleState(random, ANY_STATE);
    const steps = solver.solveInSteps(hard, 20);
    const first = steps.next();
    expect(first.done).toBe(false);
    expect(first.value).toBeGreaterThanOrEqual(0);
    expect(first.value).toBeLessThan(1);
    const other = sampleState(random, ANY_STATE);
    expect(isSolvedBy(other, solver.solve(other))).toBe(true);
  });
});
