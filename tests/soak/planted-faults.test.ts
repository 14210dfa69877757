import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { PLANTED_FAULTS } from "./fault-list";
import { makeGarden, plantingProblem } from "./plant";
import type { PlantedFault } from "./planted-fault";

const ROOT = join(import.meta.dirname, "..", "..");

const POLICY_FAULT: PlantedFault = {
  name: "the content policy lets pages evaluate text",
  file: "electron/content-policy.ts",
  find: `"'self' 'wasm-unsafe-eval'"`,
  replace: `"'self' 'unsafe-eval'"`,
  tests: ["tests/electron/content-policy.test.ts"],
};

describe("the list of planted faults", () => {
  it("has no name twice", () => {
    const names = PLANTED_FAULTS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(PLANTED_FAULTS.map((fault) => [fault.name, fault] as const))(
    "can still be planted: %s",
    (_name, fault) => {
      expect(plantingProblem(ROOT, fault)).toBeUndefined();
    },
  );

  it.each([
    ["is not there", { file: "core/nowhere.ts" }],
    ["stands 0 times", { find: "no such text" }],
    ["times in", { find: "'none'" }],
    ["changes nothing", { replace: POLICY_FAULT.find }],
    ["names no tests", { tests: [] }],
    ["is not there", { tests: ["tests/nowhere.test.ts"] }],
    ["no longer parses", { replace: "(" }],
  ])("refuses a fault that %s", (problem, change) => {
    expect(plantingProblem(ROOT, { ...POLICY_FAULT, ...change })).toContain(
      problem,
    );
  });
});

describe("planting, in its short form", () => {
  const garden = makeGarden(ROOT);
  afterAll(() => garden.remove());

  it("finds the tests green without a fault and red with one", async () => {
    const [signFault] = PLANTED_FAULTS;
    const storeFault = PLANTED_FAULTS.find(({ file }) =>
      file.startsWith("renderer/storage/"),
    );
    // One for each of the two kinds of tests, plain and with a page.
    const faults = [POLICY_FAULT, signFault, storeFault].filter(
      (fault) => fault !== undefined,
    );
    expect(faults).toHaveLength(3);
    const tests = faults.flatMap((fault) => fault.tests);
    expect(await garden.redUntouched(tests)).toEqual([]);
    for (const fault of faults) {
      expect(await garden.redWith(fault), fault.name).not.toEqual([]);
    }
  }, 120_000);
});
