import { describe, expect, it } from "vitest";
import { type KeptSheet, parseKeptSheet } from "../../../core/paper/kept-sheet";
import { type CodedSheet, sheetCode } from "../../../core/paper/sheet-code";
import { ms } from "../memory/sample-review";

const CODED: CodedSheet = {
  kind: "practice",
  cases: [
    { case: "E1", target: 8, placed: 2, home: "anywhere", lining: "lined-up" },
    { case: "pairs:DFR-R.FR-F", target: 20 },
  ],
  hold: "down",
  number: 48213,
  count: 12,
  opening: "turned",
};
const KEPT: KeptSheet = {
  ...CODED,
  code: sheetCode(CODED),
  deck: "some-deck",
  deckName: "Some deck",
  printedAt: ms(1_763_000_000_000),
};

describe("a printed sheet in the store", () => {
  it("is read back as it was kept", () => {
    const row: unknown = JSON.parse(JSON.stringify(KEPT));
    expect(parseKeptSheet(row)).toEqual({ ok: true, value: KEPT });
  });

  it.each([
    ["contradiction", "code", { code: "22222223" }],
    // The code of another sheet, and this one's in other letters.
    ["contradiction", "code", { code: sheetCode({ ...CODED, number: 1 }) }],
    ["contradiction", "code", { code: KEPT.code.toLowerCase() }],
    ["contradiction", "code", { cases: [{ case: "E1", target: 8 }] }],
    ["unknown-value", "kind", { kind: "certificate" }],
    ["out-of-range", "cases", { cases: [] }],
    ["missing-field", "cases.0.target", { cases: [{ case: "E1" }] }],
    ["out-of-range", "number", { number: 0 }],
    ["out-of-range", "count", { count: 501 }],
    ["wrong-type", "printedAt", { printedAt: "today" }],
    ["missing-field", "deck", { deck: undefined }],
  ] as const)("with a %s at %s is refused", (code, field, change) => {
    expect(parseKeptSheet({ ...KEPT, ...change })).toEqual({
      ok: false,
      error: { code, field },
    });
  });
});
