import { describe, expect, it } from "vitest";
import { formatTally, tallyPlaywright, tallyVitest } from "./tally";

describe("the tally of a Vitest report", () => {
  const file = (status: string, ...tests: string[]): unknown => ({
    name: "a.test.ts",
    status,
    assertionResults: tests.map((test) => ({ fullName: "a b", status: test })),
  });

  it("counts each test once, whatever is no pass and no failure as skipped", () => {
    const report = {
      testResults: [
        file("passed", "passed", "pending", "todo", "skipped"),
        file("failed", "passed", "failed"),
      ],
    };
    expect(formatTally(tallyVitest(report))).toBe(
      "2 passed, 1 failed, 3 skipped",
    );
    expect(tallyVitest(report).failedTests).toEqual(["a.test.ts: a b"]);
    expect(tallyVitest(report).skippedTests[0]).toBe("a.test.ts: a b");
  });

  it("counts a file that could not be run as a failed test", () => {
    expect(tallyVitest({ testResults: [file("failed")] })).toMatchObject({
      passed: 0,
      failed: 1,
    });
  });

  it("refuses what is no report", () => {
    expect(() => tallyVitest({})).toThrow();
  });
});

describe("the tally of a Playwright report", () => {
  const spec = (...statuses: string[]): unknown => ({
    title: "a",
    file: "a.spec.ts",
    tests: statuses.map((status) => ({ status })),
  });

  it("counts nested suites, and a pass at a second try as a failure", () => {
    const report = {
      suites: [
        {
          specs: [spec("expected"), spec("skipped")],
          suites: [{ specs: [spec("unexpected"), spec("flaky")] }],
        },
      ],
      errors: [],
    };
    const tally = tallyPlaywright(report);
    expect(formatTally(tally)).toBe("1 passed, 2 failed, 1 skipped");
    expect(tally.failedTests).toEqual(["a.spec.ts: a", "a.spec.ts: a"]);
    expect(tally.skippedTests).toEqual(["a.spec.ts: a"]);
  });

  it("counts an error outside every test as a failure", () => {
    expect(
      tallyPlaywright({ suites: [], errors: [{ message: "x" }] }),
    ).toMatchObject({ failed: 1 });
  });

  it("refuses what is no report", () => {
    expect(() => tallyPlaywright({ suites: "none" })).toThrow();
  });
});
