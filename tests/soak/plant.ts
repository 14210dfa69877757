/**
 * Plants faults and runs the tests that must notice them.
 *
 * It works on copies of the sources under `dist/`, never on the checkout, so
 * nothing has to be put back, whatever happens. The copies find the installed
 * packages by walking up.
 */
import { spawn } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { tallyVitest } from "../runner/tally";
import type { PlantedFault } from "./planted-fault";

const COPIED = [
  "core",
  "electron",
  "renderer",
  "tests",
  "package.json",
  "tsconfig.json",
  "svelte.config.js",
  "vitest.config.ts",
];

/** Why a fault cannot be planted; `undefined` where it can. */
export function plantingProblem(
  root: string,
  { file, find, replace, tests }: PlantedFault,
): string | undefined {
  const path = join(root, file);
  if (!existsSync(path)) return `${file} is not there`;
  const text = readFileSync(path, "utf8");
  const count = text.split(find).length - 1;
  if (count !== 1) return `its text stands ${count} times in ${file}`;
  if (find === replace) return "it changes nothing";
  if (tests.length === 0) return "it names no tests";
  const missing = tests.find((test) => !existsSync(join(root, test)));
  if (missing !== undefined) return `${missing} is not there`;
  // A test that is red because the file cannot be read has noticed nothing.
  const { diagnostics } = ts.transpileModule(planted(text, find, replace), {
    reportDiagnostics: true,
  });
  return diagnostics?.length === 0 ? undefined : `${file} no longer parses`;
}

/** A dollar sign in the replacement is only a dollar sign. */
function planted(text: string, find: string, replace: string): string {
  return text.replace(find, () => replace);
}

/** A copy of the sources to plant faults in. */
export interface Garden {
  /** Runs test files on the sources as they are; names what failed. */
  redUntouched(tests: readonly string[]): Promise<readonly string[]>;
  /** Plants a fault, runs its tests, takes the fault out again, and names what failed. */
  redWith(fault: PlantedFault): Promise<readonly string[]>;
  remove(): void;
}

/** Copies the sources of a checkout. */
export function makeGarden(root: string): Garden {
  const parent = join(root, "dist", "soak");
  mkdirSync(parent, { recursive: true });
  const copy = mkdtempSync(join(parent, "copy-"));
  for (const name of COPIED) {
    cpSync(join(root, name), join(copy, name), { recursive: true });
  }
  return {
    redUntouched: (tests) => redTests(root, copy, tests),
    redWith: async ({ file, find, replace, tests }) => {
      const path = join(copy, file);
      const text = readFileSync(path, "utf8");
      writeFileSync(path, planted(text, find, replace));
      const red = await redTests(root, copy, tests);
      writeFileSync(path, text);
      return red;
    },
    remove: () => rmSync(copy, { recursive: true, force: true }),
  };
}

async function redTests(
  root: string,
  copy: string,
  tests: readonly string[],
): Promise<readonly string[]> {
  const report = join(copy, "report.json");
  rmSync(report, { force: true });
  const output = await runVitest(root, copy, [
    "run",
    "--reporter=json",
    `--outputFile=${report}`,
    ...tests,
  ]);
  if (!existsSync(report)) throw new Error(`no report was written\n${output}`);
  const tally = tallyVitest(JSON.parse(readFileSync(report, "utf8")));
  if (tally.passed + tally.failed === 0) throw new Error("no test was run");
  return tally.failedTests;
}

function runVitest(
  root: string,
  copy: string,
  words: readonly string[],
): Promise<string> {
  // Started inside a test run too, which must not look like its own.
  const environment = Object.entries(process.env).filter(
    ([name]) => !name.startsWith("VITEST"),
  );
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      [join(root, "node_modules/vitest/vitest.mjs"), ...words],
      {
        cwd: copy,
        env: Object.fromEntries(environment),
        stdio: ["ignore", "pipe", "pipe"],
      },
    );
    let output = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (chunk: string) => {
        output += chunk;
      });
    }
    child.once("error", reject);
    child.once("close", () => resolve(output));
  });
}
