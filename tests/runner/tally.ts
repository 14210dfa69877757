/**
 * Counts tests from the reports that Vitest and Playwright write as JSON, and
 * never from what they print for people.
 */
import * as v from "valibot";

/** How many tests ended how. */
export interface Tally {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  /** The failed tests by file and title. */
  readonly failedTests: readonly string[];
  /** The skipped tests by file and title. */
  readonly skippedTests: readonly string[];
}

/** Nothing counted. */
export const EMPTY_TALLY: Tally = {
  passed: 0,
  failed: 0,
  skipped: 0,
  failedTests: [],
  skippedTests: [],
};

/** Two tallies as one. */
export function addTallies(a: Tally, b: Tally): Tally {
  return {
    passed: a.passed + b.passed,
    failed: a.failed + b.failed,
    skipped: a.skipped + b.skipped,
    failedTests: [...a.failedTests, ...b.failedTests],
    skippedTests: [...a.skippedTests, ...b.skippedTests],
  };
}

/** The runner's last line. */
export function formatTally({ passed, failed, skipped }: Tally): string {
  return `${passed} passed, ${failed} failed, ${skipped} skipped`;
}

const vitestSchema = v.object({
  testResults: v.array(
    v.object({
      name: v.string(),
      status: v.string(),
      assertionResults: v.array(
        v.object({ fullName: v.string(), status: v.string() }),
      ),
    }),
  ),
});

/**
 * The tally of a Vitest report. A file that could not be run counts as one
 * failed test; whatever neither passed nor failed was skipped.
 */
export function tallyVitest(report: unknown): Tally {
  const { testResults } = v.parse(vitestSchema, report);
  return testResults
    .flatMap(({ name, status, assertionResults }) => {
      const tests = assertionResults.map((test) =>
        tallyOf(test.status, `${name}: ${test.fullName}`),
      );
      const couldNotRun =
        status === "failed" && tests.every(({ failed }) => failed === 0);
      return couldNotRun ? [...tests, tallyOf("failed", name)] : tests;
    })
    .reduce(addTallies, EMPTY_TALLY);
}

function tallyOf(status: string, test: string): Tally {
  if (status === "passed") return { ...EMPTY_TALLY, passed: 1 };
  if (status === "failed") {
    return { ...EMPTY_TALLY, failed: 1, failedTests: [test] };
  }
  return { ...EMPTY_TALLY, skipped: 1, skippedTests: [test] };
}

interface Suite {
  readonly suites?: readonly Suite[] | undefined;
  readonly specs: readonly {
    readonly title: string;
    readonly file: string;
    readonly tests: readonly { readonly status: string }[];
  }[];
}

const suiteSchema: v.GenericSchema<Suite> = v.object({
  suites: v.optional(v.array(v.lazy(() => suiteSchema))),
  specs: v.array(
    v.object({
      title: v.string(),
      file: v.string(),
      tests: v.array(v.object({ status: v.string() })),
    }),
  ),
});

const playwrightSchema = v.object({
  suites: v.array(suiteSchema),
  errors: v.array(v.unknown()),
});

/**
 * The tally of a Playwright report. An error outside every test counts as one
 * failed test, and so does a test that passed only when it was tried again.
 */
export function tallyPlaywright(report: unknown): Tally {
  const { suites, errors } = v.parse(playwrightSchema, report);
  return [
    ...suites.flatMap(talliesOfSuite),
    ...errors.map(() => tallyOf("failed", "outside every test")),
  ].reduce(addTallies, EMPTY_TALLY);
}

function talliesOfSuite({ suites, specs }: Suite): Tally[] {
  const own = specs.flatMap(({ title, file, tests }) =>
    tests.map(({ status }) => {
      const test = `${file}: ${title}`;
      if (status === "expected") return tallyOf("passed", test);
      return tallyOf(status === "skipped" ? "skipped" : "failed", test);
    }),
  );
  return [...own, ...(suites ?? []).flatMap(talliesOfSuite)];
}
