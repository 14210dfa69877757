/**
 * The program behind `npm run soak`: every planted fault, then the long form
 * of the browser tests that have one (tagged `@soak`; they read
 * `TURNWISE_SOAK`).
 */
import { join } from "node:path";
import { runStep } from "../runner/step";
import { PLANTED_FAULTS } from "./fault-list";
import { makeGarden, plantingProblem } from "./plant";

// The built file is `dist/tools/soak.js`.
const ROOT = join(import.meta.dirname, "..", "..");

async function plantAll(): Promise<number> {
  const problems = PLANTED_FAULTS.flatMap((fault) => {
    const problem = plantingProblem(ROOT, fault);
    return problem === undefined ? [] : [`${fault.name}: ${problem}`];
  });
  for (const problem of problems) console.log(`✗ ${problem}`);
  if (problems.length > 0) return problems.length;

  const garden = makeGarden(ROOT);
  try {
    const tests = [...new Set(PLANTED_FAULTS.flatMap((fault) => fault.tests))];
    if ((await garden.failuresUntouched(tests)) > 0) {
      console.log("✗ the tests are red before any fault is planted");
      return 1;
    }
    let unnoticed = 0;
    for (const fault of PLANTED_FAULTS) {
      const failures = await garden.failuresWith(fault);
      if (failures === 0) unnoticed++;
      const mark = failures === 0 ? "✗ unnoticed" : `✓ ${failures} red`;
      console.log(`${mark}: ${fault.name}`);
    }
    return unnoticed;
  } finally {
    garden.remove();
  }
}

const unnoticed = await plantAll();
const browserTestsPassed = await runStep({
  name: "long browser tests",
  commands: ["npx playwright test --grep @soak --pass-with-no-tests"],
  environment: { TURNWISE_SOAK: "1" },
});
console.log(
  `${PLANTED_FAULTS.length - unnoticed} of ${PLANTED_FAULTS.length} planted faults were noticed`,
);
if (unnoticed > 0 || !browserTestsPassed) process.exitCode = 1;
