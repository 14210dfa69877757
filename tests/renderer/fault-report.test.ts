import { expect, it } from "vitest";
import { faultReport } from "../../renderer/state/fault-report";

it("a report names each error with where it came from, and when", () => {
  const report = faultReport([new RangeError("too far"), "only a word"], {
    at: Date.parse("2030-03-05T20:00:00Z"),
    browser: "a browser",
  });
  expect(report).toContain("When: 2030-03-05T20:00:00.000Z");
  expect(report).toContain("Error 1\nRangeError: too far");
  expect(report).toContain("fault-report.test");
  expect(report).toContain("Error 2\nonly a word");
});

it("an error without end is cut", () => {
  const report = faultReport(["x".repeat(1e6)], { at: 0, browser: "" });
  expect(report.length).toBeLessThan(10_000);
});
