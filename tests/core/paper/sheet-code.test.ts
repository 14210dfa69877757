import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { HOLDS } from "../../../core/cases/variant";
import { OPENINGS } from "../../../core/memory/variant-opening";
import { LARGEST_NUMBER } from "../../../core/paper/sheet";
import {
  CODED_KINDS,
  type CodedSheet,
  formatSheetCode,
  parseSheetCode,
  sheetCode,
} from "../../../core/paper/sheet-code";

const sheet: fc.Arbitrary<CodedSheet> = fc.record({
  kind: fc.constantFrom(...CODED_KINDS),
  cases: fc
    .subarray([...FIRST_LAYER_IDS], { minLength: 1 })
    .map((ids) => ids.map((id) => ({ case: id, target: 8 }))),
  hold: fc.constantFrom(...HOLDS),
  number: fc.integer({ min: 1, max: LARGEST_NUMBER }),
  count: fc.constantFrom(6, 12, 24),
  opening: fc.constantFrom(...OPENINGS),
});

const SHEET: CodedSheet = {
  kind: "practice",
  cases: [
    { case: "E1", target: 8 },
    { case: "E2a", target: 8 },
  ],
  hold: "up",
  number: 48213,
  count: 12,
  opening: "front",
};

const SIGNS = "234679ACDEFHJKMNPRTVWXY";

describe("a sheet's code", () => {
  it("is what it was when the first sheets were printed", () => {
    expect(sheetCode(SHEET)).toBe("N49KET9X");
    expect(sheetCode({ ...SHEET, kind: "cases" })).toBe("AWA4ANDT");
  });

  it("is read as it is printed, in small letters and with gaps too", () => {
    fc.assert(
      fc.property(sheet, (one) => {
        const code = sheetCode(one);
        expect(code).toMatch(new RegExp(`^[${SIGNS}]{8}$`));
        const read = { ok: true, value: code };
        expect(parseSheetCode(formatSheetCode(code))).toEqual(read);
        expect(parseSheetCode(code)).toEqual(read);
        expect(
          parseSheetCode(` ${code.toLowerCase().split("").join(" ")} `),
        ).toEqual(read);
      }),
    );
  });

  it("is the same for the same sheet, and for none that differs in what a child is given", () => {
    const code = sheetCode(SHEET);
    expect(sheetCode({ ...SHEET, cases: [...SHEET.cases] })).toBe(code);
    const others: readonly CodedSheet[] = [
      { ...SHEET, kind: "cases" },
      { ...SHEET, cases: SHEET.cases.toReversed() },
      { ...SHEET, cases: SHEET.cases.slice(0, 1) },
      {
        ...SHEET,
        cases: SHEET.cases.map((one) => ({ ...one, placed: 0 as const })),
      },
      { ...SHEET, hold: "down" },
      { ...SHEET, number: 48214 },
      { ...SHEET, count: 6 },
      { ...SHEET, opening: "turned" },
    ];
    const codes = others.map(sheetCode);
    expect(codes).not.toContain(code);
    expect(new Set(codes).size).toBe(codes.length);
  });

  it("says nothing of targets, nor on a case sheet of how positions would be drawn", () => {
    const cases = { ...SHEET, kind: "cases" } as const;
    expect(sheetCode({ ...cases, count: 6, opening: "anywhere" })).toBe(
      sheetCode(cases),
    );
    const slower = SHEET.cases.map((one) => ({ ...one, target: 20 }));
    expect(sheetCode({ ...SHEET, cases: slower })).toBe(sheetCode(SHEET));
  });

  it("differs from the others of a hundred thousand numbers", () => {
    const codes = new Set<string>();
    for (let number = 1; number <= LARGEST_NUMBER; number++)
      codes.add(sheetCode({ ...SHEET, number }));
    // Of so many among 23^7 about one and a half pairs are expected to agree.
    expect(codes.size).toBeGreaterThan(LARGEST_NUMBER - 10);
  });

  it("shows one wrong sign, and two that changed places", () => {
    fc.assert(
      fc.property(
        sheet,
        fc.nat({ max: 7 }),
        fc.constantFrom(...SIGNS.split("")),
        fc.nat({ max: 7 }),
        (one, at, sign, other) => {
          const text: string = sheetCode(one);
          const signs = [...text];
          const wrong = signs.with(at, sign);
          if (signs[at] !== sign)
            expect(parseSheetCode(wrong.join(""))).toEqual({
              ok: false,
              error: { code: "mistyped" },
            });
          const swapped = signs
            .with(at, signs[other] ?? "")
            .with(other, signs[at] ?? "");
          // The last sign counts by itself: it may change places with another unseen by the sum.
          if (signs[at] !== signs[other] && at < 7 && other < 7)
            expect(parseSheetCode(swapped.join("")).ok).toBe(false);
        },
      ),
    );
  });

  it("that is too short, too long or has a sign that no code has is refused, with the place", () => {
    expect(parseSheetCode("")).toEqual({
      ok: false,
      error: { code: "wrong-length", length: 0 },
    });
    expect(parseSheetCode("ACDE-FHJKM")).toEqual({
      ok: false,
      error: { code: "wrong-length", length: 9 },
    });
    expect(parseSheetCode("ACDE-FHOK")).toEqual({
      ok: false,
      error: { code: "unknown-sign", offset: 6, sign: "O" },
    });
    fc.assert(
      fc.property(fc.string(), (junk) => {
        const read = parseSheetCode(junk);
        if (read.ok) expect(formatSheetCode(read.value)).toHaveLength(9);
      }),
    );
  });
});
