/**
 * The program behind `npm run soak`: every planted fault, then the long form
 * of the tests that have one. They read `TURNWISE_SOAK`; in the browser they
 * are tagged `@soak`.
 */
import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { runStep } from "../runner/step";
import { PLANTED_FAULTS } from "./fault-list";
import { makeGarden, plantingProblem } from "./plant";

// The built file is `dist/tools/soak.js`.
const ROOT = join(import.meta.dirname, "..", "..");

/** Tests that try ten times as much here, or what takes minutes. */
const LONG_TESTS = [
  "tests/core/deck/mutated-deck-files.test.ts",
  "tests/renderer/storage/mutated-backups.test.ts",
  "tests/renderer/storage/merging.test.ts",
  "tests/core/cases/computed-ways.test.ts",
  "tests/core/solver/case-search-last-layer.test.ts",
  "tests/core/solver/keeping-sequences.test.ts",
  "tests/core/answer/simulated-mistakes.test.ts",
];

/** Plants every fault; answers how many were noticed. */
async function plantAll(): Promise<number> {
  const problems = PLANTED_FAULTS.flatMap((fault) => {
    const problem = plantingProblem(ROOT, fault);
    return problem === undefined ? [] : [`${fault.name}: ${problem}`];
  });
  for (const problem of problems) console.log(`✗ ${problem}`);
  if (problems.length > 0) return 0;

  const garden = makeGarden(ROOT);
  try {
    const tests = [...new Set(PLANTED_FAULTS.flatMap((fault) => fault.tests))];
    const red = await garden.redUntouched(tests);
    for (const test of red) console.log(`✗ red without a fault: ${test}`);
    if (red.length > 0) return 0;
    let noticed = 0;
    for (const fault of PLANTED_FAULTS) {
      const { length } = await garden.redWith(fault);
      if (length > 0) noticed++;
      const mark = length === 0 ? "✗ unnoticed" : `✓ ${length} red`;
      console.log(`${mark}: ${fault.name}`);
    }
    return noticed;
  } finally {
    garden.remove();
  }
}

const noticed = await plantAll();
const TOLD = join(ROOT, "dist", "soak-told.txt");
rmSync(TOLD, { force: true });
const environment = { TURNWISE_SOAK: "1", TURNWISE_SOAK_TOLD: TOLD };
const longTestsPassed = await runStep({
  name: "long unit tests",
  commands: [`npx vitest run ${LONG_TESTS.join(" ")}`],
  environment,
});
const browserTestsPassed = await runStep({
  name: "long browser tests",
  commands: ["npx playwright test --grep @soak --pass-with-no-tests"],
  environment,
});
if (existsSync(TOLD)) console.log(readFileSync(TOLD, "utf8").trimEnd());
console.log(
  `${noticed} of ${PLANTED_FAULTS.length} planted faults were noticed`,
);
const areAllNoticed = noticed === PLANTED_FAULTS.length;
if (!areAllNoticed || !longTestsPassed || !browserTestsPassed) {
  process.exitCode = 1;
}
