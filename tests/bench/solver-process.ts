/**
 * A solver in a process of its own: neither warms up, nor fills the caches,
 * nor collects the garbage of the other. Says when its tables are ready, then
 * answers each block of states with how long each took and its solution.
 */
import Cube from "cubejs";
import { fork } from "node:child_process";
import { once } from "node:events";
import { parseFacelets } from "../../core/cube/validity";
import { formatTurns } from "../../core/notation/format";
import { runToEnd } from "../../core/steps";
import { createTwoPhaseSolver } from "../../core/solver/two-phase";
import { WrongAnswer } from "./result";

/** The argument that makes the benchmark program one of these processes. */
export const SOLVER_ARGUMENT = "--solver";

/** The solvers there are. */
export const SOLVERS = ["turnwise", "cubejs"] as const;

export type SolverName = (typeof SOLVERS)[number];

/** Both are asked for this. */
export const MAX_TURNS = 22;

/** How one state was solved. */
export interface Solved {
  /** Units: milliseconds. */
  readonly time: number;
  readonly turns: string;
}

/** A solver's process, from outside. */
export interface SolverProcess {
  /** Units: milliseconds. */
  readonly readyTime: number;
  solve(facelets: readonly string[]): Promise<readonly Solved[]>;
  stop(): void;
}

/** Builds a solver's tables and returns what solves a 54-letter string. */
function prepare(name: SolverName): (facelets: string) => Solved {
  if (name === "cubejs") {
    Cube.initSolver();
    return (facelets) => {
      const cube = Cube.fromString(facelets);
      const start = performance.now();
      const turns = cube.solve(MAX_TURNS);
      return { time: performance.now() - start, turns };
    };
  }
  const solver = runToEnd(createTwoPhaseSolver());
  return (facelets) => {
    const cube = parseFacelets(facelets);
    if (!cube.ok) throw new WrongAnswer(cube.error.code);
    const start = performance.now();
    const turns = solver.solve(cube.value.cubies, MAX_TURNS);
    const time = performance.now() - start;
    return { time, turns: formatTurns(turns) };
  };
}

/** What such a process does. */
export function runSolverProcess(name: string): void {
  const solver = SOLVERS.find((known) => known === name);
  if (solver === undefined) throw new Error(`no solver is called "${name}"`);
  const start = performance.now();
  const solve = prepare(solver);
  process.on("message", (block: readonly string[]) => {
    process.send?.(block.map(solve));
  });
  process.send?.(performance.now() - start);
}

/** Starts a solver's process and waits until it is ready. */
export async function startSolverProcess(
  name: SolverName,
): Promise<SolverProcess> {
  const program = process.argv[1];
  if (program === undefined) throw new Error("the program has a file");
  const child = fork(program, [SOLVER_ARGUMENT, name]);
  const said = async (): Promise<unknown> => {
    const [message] = (await once(child, "message")) as unknown[];
    return message;
  };
  return {
    readyTime: Number(await said()),
    async solve(facelets) {
      const answer = said();
      child.send([...facelets]);
      return (await answer) as readonly Solved[];
    },
    stop: () => child.kill(),
  };
}
