/**
 * The program behind `npm run bench`: runs the benchmarks, prints a line for
 * each result and adds it to `tests/bench/results.jsonl`.
 *
 * `npm run bench -- bundle` runs those whose name holds "bundle". A missed
 * target is only said; a wrong answer ends with 1. To add one, write a file
 * that exports a `Benchmark` and enter it below.
 */
import { appendFileSync } from "node:fs";
import { join } from "node:path";
import { bundleSizes } from "./bundle-sizes";
import { caseSearch } from "./case-search";
import { classTimes } from "./class";
import { diagnosis } from "./diagnosis";
import { federation } from "./federation";
import { plan } from "./plan";
import { positions } from "./positions";
import { progress } from "./progress";
import { formatResult, WrongAnswer, type Benchmark } from "./result";
import { replay } from "./replay";
import { ROOT } from "./root";
import { setUps } from "./set-ups";
import { sheetTimes } from "./sheets";
import { solver } from "./solver";
import { runSolverProcess, SOLVER_ARGUMENT } from "./solver-process";
import { windowTimes } from "./window";

const BENCHMARKS: Readonly<Record<string, Benchmark>> = {
  "bundle-sizes": bundleSizes,
  "case-search": caseSearch,
  class: classTimes,
  diagnosis,
  federation,
  plan,
  positions,
  progress,
  replay,
  "set-ups": setUps,
  sheets: sheetTimes,
  solver,
  window: windowTimes,
};

const RESULTS = join(ROOT, "tests", "bench", "results.jsonl");

async function run(name: string, benchmark: Benchmark): Promise<void> {
  try {
    for (const result of await benchmark()) {
      console.log(formatResult(result));
      appendFileSync(RESULTS, `${JSON.stringify(result)}\n`);
    }
  } catch (error) {
    if (!(error instanceof WrongAnswer)) throw error;
    console.error(`${name} gave a wrong answer: ${error.message}`);
    process.exitCode = 1;
  }
}

async function runChosen(wanted: string): Promise<void> {
  const chosen = Object.entries(BENCHMARKS).filter(([name]) =>
    name.includes(wanted),
  );
  if (chosen.length === 0) {
    console.error(
      `No benchmark is called "${wanted}". There are: ${Object.keys(BENCHMARKS).join(", ")}.`,
    );
    process.exitCode = 2;
  }
  for (const [name, benchmark] of chosen) await run(name, benchmark);
}

const [wanted = "", solverName = ""] = process.argv.slice(2);
if (wanted === SOLVER_ARGUMENT) runSolverProcess(solverName);
else await runChosen(wanted);
