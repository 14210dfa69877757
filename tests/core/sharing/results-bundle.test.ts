import { describe, expect, it } from "vitest";
import {
  formatBundleHeader,
  MOST_PARTS,
  parseBundleHeader,
} from "../../../core/sharing/results-bundle";

describe("a bundle's first line", () => {
  it("says how long its parts are", () => {
    const lengths = [3, 1, 200_000];
    expect(parseBundleHeader(formatBundleHeader(lengths).trimEnd())).toEqual({
      ok: true,
      value: lengths,
    });
  });

  it("of a newer version that this one cannot read is told apart", () => {
    const newer = formatBundleHeader([1])
      .replace('"version":1', '"version":3')
      .replace('"readableFrom":1', '"readableFrom":2');
    expect(parseBundleHeader(newer.trimEnd())).toEqual({
      ok: false,
      error: { code: "newer-results", version: 3 },
    });
  });

  it.each([
    "",
    "{",
    "[]",
    '{"turnwise":"results","version":1,"readableFrom":1,"parts":[1]}',
    formatBundleHeader([]).trimEnd(),
    formatBundleHeader([0]).trimEnd(),
    formatBundleHeader([-1]).trimEnd(),
    formatBundleHeader([1.5]).trimEnd(),
    formatBundleHeader(Array.from({ length: MOST_PARTS + 1 }, () => 1)),
  ])("is not %j", (line) => {
    expect(parseBundleHeader(line)).toEqual({
      ok: false,
      error: { code: "not-results" },
    });
  });
});
