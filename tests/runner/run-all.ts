/**
 * The program behind `npm test` and `npm run check`.
 *
 * Two lanes for two cores: what reads the sources and the unit tests, which
 * compute; beside them the build and the browser tests, which mostly wait. Every
 * step runs even where another failed, so that one run tells everything. The
 * last line counts the tests alone; the exit code speaks for every step.
 */
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { installChromium } from "./chromium";
import { runStep, type Step } from "./step";
import {
  addTallies,
  EMPTY_TALLY,
  formatTally,
  tallyPlaywright,
  tallyVitest,
  type Tally,
} from "./tally";

/** The one test file that may skip: it needs a binary that may be missing. */
const MAY_SKIP = "electron.spec.ts";

const REPORTS = join("dist", "reports");
const UNIT_REPORT = join(REPORTS, "unit.json");
const BROWSER_REPORT = join(REPORTS, "end-to-end.json");

const SOURCE_STEPS: readonly Step[] = [
  { name: "format", commands: ["npx prettier --check ."] },
  { name: "lint", commands: ["npx eslint ."] },
  {
    name: "types",
    commands: [
      "npx tsc -p .",
      "npx tsc -p core",
      "npx tsc -p electron",
      "npx tsc -p tests",
      "npx svelte-check --tsconfig renderer/tsconfig.json --fail-on-warnings",
    ],
  },
];

const UNIT_STEP: Step = {
  name: "unit tests",
  commands: [
    `npx vitest run --reporter=default --reporter=json --outputFile.json=${UNIT_REPORT}`,
  ],
};

const BUILD_STEP: Step = {
  name: "build",
  commands: ["npm run --silent build", "npx size-limit"],
};

const KNIP_STEP: Step = { name: "unused code", commands: ["npx knip"] };

const BROWSER_STEP: Step = {
  name: "end-to-end tests",
  commands: ["npx playwright test --reporter=line,json"],
  environment: { PLAYWRIGHT_JSON_OUTPUT_NAME: BROWSER_REPORT },
};

const failures: string[] = [];
let tally = EMPTY_TALLY;

async function attempt(step: Step): Promise<boolean> {
  const succeeded = await runStep(step);
  if (!succeeded) failures.push(step.name);
  return succeeded;
}

async function attemptInTurn(steps: readonly Step[]): Promise<void> {
  for (const step of steps) await attempt(step);
}

async function attemptTests(
  step: Step,
  report: string,
  read: (report: unknown) => Tally,
): Promise<void> {
  await attempt(step);
  if (!existsSync(report)) {
    failures.push(`${step.name}: no report`);
    return;
  }
  const counted = read(JSON.parse(readFileSync(report, "utf8")));
  tally = addTallies(tally, counted);
  if (counted.passed + counted.failed === 0) {
    failures.push(`${step.name}: no test was run`);
  }
  for (const test of counted.skippedTests) {
    console.log(`skipped: ${test}`);
    if (!test.includes(MAY_SKIP)) failures.push(`${test} was skipped`);
  }
}

rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });
const isWhole = process.argv[2] !== "check";

async function attemptSources(): Promise<void> {
  await attemptInTurn(isWhole ? [...SOURCE_STEPS, KNIP_STEP] : SOURCE_STEPS);
  await attemptTests(UNIT_STEP, UNIT_REPORT, tallyVitest);
}

async function attemptBrowser(): Promise<void> {
  const isBuilt = await attempt(BUILD_STEP);
  if (!installChromium()) {
    failures.push("end-to-end tests: there is no Chromium");
  } else if (isBuilt) {
    await attemptTests(BROWSER_STEP, BROWSER_REPORT, tallyPlaywright);
  }
}

await Promise.all([attemptSources(), ...(isWhole ? [attemptBrowser()] : [])]);

if (failures.length > 0) {
  console.log(`\nFailed: ${failures.join("; ")}`);
  process.exitCode = 1;
}
console.log(formatTally(tally));
