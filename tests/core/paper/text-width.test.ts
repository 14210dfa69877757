import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PAPER_WEIGHTS } from "../../../core/paper/glyph-widths";
import { textLines, textWidth } from "../../../core/paper/text-width";

const text = fc.oneof(
  fc.string(),
  fc.string({ unit: "grapheme" }),
  fc
    .array(fc.constantFrom("R", "U'", "D2", "white", "bottom", "Überraschung"))
    .map((words) => words.join(" ")),
);

describe("text on paper", () => {
  it("is as wide as its letters, whatever their accents", () => {
    expect(textWidth("aa", 10, 400)).toBeCloseTo(2 * textWidth("a", 10, 400));
    expect(textWidth("ä", 10, 400)).toBe(textWidth("a", 10, 400));
    expect(textWidth("MM", 5, 640)).toBeCloseTo(2 * 5 * 0.852);
  });

  it("takes numbers for as wide as their widest figure, so that columns of them stand level", () => {
    expect(textWidth("111", 4, 400)).toBe(textWidth("000", 4, 400));
  });

  it("takes a letter of another writing for as wide as it is high", () => {
    expect(textWidth("立", 4, 400)).toBe(4);
  });

  it("is broken into lines that fit, without losing a letter", () => {
    fc.assert(
      fc.property(
        text,
        fc.constantFrom(...PAPER_WEIGHTS),
        fc.double({ min: 8, max: 90, noNaN: true }),
        (said, weight, room) => {
          const lines = textLines(said, 4, weight, room);
          for (const line of lines)
            expect(textWidth(line, 4, weight)).toBeLessThanOrEqual(room);
          const letters = (one: string) => one.replace(/\s+/g, "");
          expect(letters(lines.join(""))).toBe(letters(said));
          expect(lines).not.toContain("");
        },
      ),
    );
  });

  it("is broken between words where it can be", () => {
    expect(textLines("R U R' U'", 4, 400, 11)).toEqual(["R U R'", "U'"]);
  });

  it("of no words is no line", () => {
    expect(textLines("  ", 4, 400, 10)).toEqual([]);
  });
});
