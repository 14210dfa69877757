/**
 * The two-phase solver beside cubejs's: the same 1,000 states, at most 22
 * turns each, in ten blocks of 100 that take turns, each solver in a process
 * of its own and warmed up. Every solution is played.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { isSameState, SOLVED } from "../../core/cube/cubies";
import { formatFacelets } from "../../core/cube/facelets";
import { applyTurns } from "../../core/cube/held-cube";
import { ANY_STATE, sampleState } from "../../core/cube/sample-state";
import { NO_ROTATION } from "../../core/cube/symmetries";
import { parseFacelets } from "../../core/cube/validity";
import { outerBlockTurns } from "../../core/notation/metrics";
import { parseTurns } from "../../core/notation/parse";
import { randomSource } from "../../core/random-source";
import { type BenchResult, quantile, resultFrom, WrongAnswer } from "./result";
import { ROOT } from "./root";
import {
  MAX_TURNS,
  type Solved,
  type SolverName,
  type SolverProcess,
  startSolverProcess,
} from "./solver-process";

const SEED = 22;
const BLOCKS = 10;
const IN_A_BLOCK = 100;
const WARM_UP = 100;

/** At the median so many times as fast as the reference, and ready so many times sooner; the times in ms are for a slow machine. */
const TARGET = { ready: 1500, solve: 50, ratio: 25, readyRatio: 5 };

interface Measured {
  readonly process: SolverProcess;
  /** Times of each block. */
  readonly blocks: number[][];
  readonly lengths: number[];
}

/** Measures both solvers. */
export async function solver(): Promise<BenchResult[]> {
  const random = randomSource(SEED);
  const states = (count: number) =>
    Array.from({ length: count }, () =>
      formatFacelets({
        cubies: sampleState(random, ANY_STATE),
        hold: NO_ROTATION,
      }),
    );
  const ours = await started("turnwise");
  const theirs = await started("cubejs");
  try {
    const warmUp = states(WARM_UP);
    for (const { process } of [ours, theirs]) await process.solve(warmUp);
    for (let block = 0; block < BLOCKS; block++) {
      const asked = states(IN_A_BLOCK);
      const order = block % 2 === 0 ? [ours, theirs] : [theirs, ours];
      for (const measured of order) {
        const solved = await measured.process.solve(asked);
        measured.blocks.push(solved.map(({ time }) => time));
        measured.lengths.push(...lengths(asked, solved));
      }
    }
  } finally {
    ours.process.stop();
    theirs.process.stop();
  }
  return results(ours, theirs);
}

async function started(name: SolverName): Promise<Measured> {
  return { process: await startSolverProcess(name), blocks: [], lengths: [] };
}

/** How long each solution is. Errors: one that does not solve its state. */
function lengths(
  asked: readonly string[],
  solved: readonly Solved[],
): number[] {
  return asked.map((facelets, i) => {
    const cube = parseFacelets(facelets);
    const turns = parseTurns(solved[i]?.turns.trim() ?? "?");
    const isSolved =
      cube.ok &&
      turns.ok &&
      isSameState(applyTurns(cube.value, turns.value).cubies, SOLVED);
    if (!isSolved) throw new WrongAnswer(`${facelets} was not solved`);
    return outerBlockTurns(turns.value);
  });
}

function results(ours: Measured, theirs: Measured): BenchResult[] {
  const version = cubejsVersion();
  const reference = (samples: readonly number[]) => ({
    reference: { name: "cubejs", version, samples },
  });
  const time = { unit: "ms", better: "lower" } as const;
  const ratios = ours.blocks.map(
    (times, block) =>
      quantile(theirs.blocks[block] ?? [], 0.5) / quantile(times, 0.5),
  );
  const ratio = { unit: "times as fast", better: "higher" } as const;
  const tooLong = ({ lengths }: Measured) => [
    lengths.filter((length) => length > MAX_TURNS).length,
  ];
  const above = { unit: "of 1,000", better: "lower" } as const;
  return [
    resultFrom({
      ...time,
      name: "two-phase solver: tables ready",
      samples: [ours.process.readyTime],
      target: TARGET.ready,
      ...reference([theirs.process.readyTime]),
    }),
    resultFrom({
      ...ratio,
      name: "two-phase solver: tables ready sooner",
      samples: [theirs.process.readyTime / ours.process.readyTime],
      target: TARGET.readyRatio,
    }),
    resultFrom({
      ...time,
      name: "two-phase solver: at most 22 turns",
      samples: ours.blocks.flat(),
      target: TARGET.solve,
      ...reference(theirs.blocks.flat()),
    }),
    resultFrom({
      ...ratio,
      name: "two-phase solver: ratio of medians over ten blocks",
      samples: ratios,
      target: TARGET.ratio,
    }),
    resultFrom({
      ...ratio,
      name: "two-phase solver: ratio of medians, lowest block",
      samples: [Math.min(...ratios)],
    }),
    resultFrom({
      ...ratio,
      name: "two-phase solver: ratio of medians, highest block",
      samples: [Math.max(...ratios)],
    }),
    resultFrom({
      ...above,
      name: "two-phase solver: solutions above 22 turns",
      samples: tooLong(ours),
      target: 0,
    }),
    resultFrom({
      ...above,
      name: "cubejs: solutions above 22 turns",
      samples: tooLong(theirs),
    }),
  ];
}

function cubejsVersion(): string {
  const path = join(ROOT, "node_modules", "cubejs", "package.json");
  const { version } = JSON.parse(readFileSync(path, "utf8")) as {
    readonly version: string;
  };
  return version;
}
