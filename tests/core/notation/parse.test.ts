import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatTurns } from "../../../core/notation/format";
import {
  MAX_DEPTH,
  MAX_REPEATS,
  MAX_TURNS,
  NOTATION_ERROR_CODES,
  type NotationErrorCode,
  parseTurns,
  readTypedTurns,
} from "../../../core/notation/parse";
import { arbitraryTurns } from "./arbitrary-turns";

/** What a text means, written back; or its error, for a readable failure. */
function rewritten(text: string): unknown {
  const result = parseTurns(text);
  return result.ok ? formatTurns(result.value) : result.error;
}

describe("reading turns", () => {
  it("reads back exactly the turns that were written out", () => {
    fc.assert(
      fc.property(arbitraryTurns(), (turns) => {
        expect(parseTurns(formatTurns(turns))).toEqual({
          ok: true,
          value: turns,
        });
      }),
    );
  });

  it("reads the same turns without any spaces", () => {
    fc.assert(
      fc.property(arbitraryTurns(), (turns) => {
        const text = formatTurns(turns).replaceAll(" ", "");
        expect(parseTurns(text)).toEqual({ ok: true, value: turns });
      }),
    );
  });

  it.each([
    // WCA Regulations 12a1: faces.
    ["F B R L U D", "F B R L U D"],
    ["F' B' R' L' U' D'", "F' B' R' L' U' D'"],
    ["F2 B2 R2 L2 U2 D2", "F2 B2 R2 L2 U2 D2"],
    // 12a2: wide turns; an omitted number means 2.
    ["Fw Bw' Rw2 Lw Uw' Dw2", "Fw Bw' Rw2 Lw Uw' Dw2"],
    ["2Rw 2Uw' 2Fw2", "Rw Uw' Fw2"],
    // 12a4: the whole cube.
    ["x y z x' y' z' x2 y2 z2", "x y z x' y' z' x2 y2 z2"],
    // Common practice from here on.
    ["M E S M' E2 S2", "M E S M' E2 S2"],
    ["r u' f2 d l b", "Rw Uw' Fw2 Dw Lw Bw"],
    ["R2' Rw2' x2' M2'", "R2 Rw2 x2 M2"],
    ["R’ U‘ F′ Dʼ L` B´", "R' U' F' D' L' B'"],
    ["RUR'U'", "R U R' U'"],
    ["R2Fw", "R2 Fw"],
    ["R'2Fw", "R' Fw"],
    ["R 2", "R2"],
    ["R 2 U Rw  2 ' F", "R2 U Rw2 F"],
    ["R ' U", "R' U"],
    ["R 2Fw", "R Fw"],
    ["R\u200B2", "R2"],
    ["  R\u00A0U\n\tR'\u200BU'  ", "R U R' U'"],
    ["", ""],
    [" \n ", ""],
    ["(R U R' U')", "R U R' U'"],
    ["(R U R' U')3", "R U R' U' R U R' U' R U R' U'"],
    ["(R U)×2", "R U R U"],
    ["(R U) × 2 F", "R U R U F"],
    ["(R U)*2", "R U R U"],
    ["(R U)x3", "R U R U R U"],
    ["(R U) x3", "R U R U R U"],
    ["(R U)x", "R U x"],
    ["(R U) x'", "R U x'"],
    ["(R U) 2Rw", "R U Rw"],
    ["(R U')'", "U R'"],
    ["(R U')2’", "U R' U R'"],
    ["((R U)2 F)2", "R U R U F R U R U F"],
    ["F(RU)2F'", "F R U R U F'"],
  ])("reads %j as %j", (text, turns) => {
    expect(rewritten(text)).toBe(turns);
  });
});

const REFUSED: readonly (readonly [
  text: string,
  code: NotationErrorCode,
  offset: number,
  found: string,
])[] = [
  ["R Q", "unknown-character", 2, "Q"],
  ["R U blah", "unknown-character", 4, "blah"],
  ["R Uwbq", "unknown-character", 4, "bq"],
  ["R Uwq", "unknown-character", 4, "q"],
  ["R 🙂", "unknown-character", 2, "🙂"],
  ["[R U]", "unknown-character", 0, "["],
  ["R m'", "lower-case-slice", 2, "m"],
  ["X", "upper-case-rotation", 0, "X"],
  ["R w", "misplaced-w", 2, "w"],
  ["R Mw", "misplaced-w", 3, "w"],
  ["rw", "misplaced-w", 1, "w"],
  ["xw", "misplaced-w", 1, "w"],
  ["Rww", "misplaced-w", 2, "w"],
  ["1Rw", "layer-number", 0, "1Rw"],
  ["R 3Rw'", "layer-number", 2, "3Rw'"],
  ["2R U", "number-without-wide", 0, "2R"],
  ["2r", "number-without-wide", 0, "2r"],
  ["2 R", "stray-number", 0, "2"],
  // R2 Rw, or R 2Rw written apart?
  ["R 2 Rw", "stray-number", 2, "2"],
  ["R U 17", "stray-number", 4, "17"],
  ["U R3", "turn-count", 3, "3"],
  ["R0", "turn-count", 1, "0"],
  ["Rw22", "turn-count", 2, "22"],
  ["R'2", "count-after-prime", 2, "2"],
  ["(R)'3", "count-after-prime", 4, "3"],
  ["R ' ' U", "stray-prime", 4, "'"],
  ["R''", "stray-prime", 2, "'"],
  ["R2’’", "stray-prime", 3, "’"],
  ["R×3", "stray-times", 1, "×"],
  ["* R", "stray-times", 0, "*"],
  ["(R U)× F", "missing-repeat-count", 5, "×"],
  ["(R U) *", "missing-repeat-count", 6, "*"],
  ["(R)0", "repeat-count", 3, "0"],
  [`(R)${MAX_REPEATS + 1}`, "repeat-count", 3, "101"],
  [`(R)x${"9".repeat(400)}`, "repeat-count", 4, "9".repeat(400)],
  ["(R U)x2", "ambiguous-repeat", 5, "x2"],
  ["(R U) x2", "ambiguous-repeat", 6, "x2"],
  ["R ()3", "empty-group", 2, "()"],
  ["(U ( ) )", "empty-group", 3, "( )"],
  ["R (U (F)", "unclosed-group", 2, "(U (F)"],
  ["R)", "unopened-group", 1, ")"],
  [`R ${"(".repeat(MAX_DEPTH + 1)}`, "nested-too-deep", 2 + MAX_DEPTH, "("],
  ["R".repeat(MAX_TURNS + 1), "too-long", MAX_TURNS, "R"],
  ["((R U)100)100", "too-long", 9, ")100"],
];

describe("refusing what cannot be read", () => {
  it.each(REFUSED)("refuses %j: %s at %i", (text, code, offset, found) => {
    expect(parseTurns(text)).toEqual({
      ok: false,
      error: { code, offset, text: found },
    });
  });

  it("has an example of every cause", () => {
    const shown = new Set(REFUSED.map(([, code]) => code));
    expect([...shown].sort()).toEqual([...NOTATION_ERROR_CODES].sort());
  });

  it("takes as many turns and repeats as it says, and no more", () => {
    expect(parseTurns("R".repeat(MAX_TURNS)).ok).toBe(true);
    expect(parseTurns(`(R)${MAX_REPEATS}`).ok).toBe(true);
    expect(
      parseTurns(`${"(".repeat(MAX_DEPTH)}R${")".repeat(MAX_DEPTH)}`).ok,
    ).toBe(true);
  });

  it("answers every text with turns or with a place inside the text", () => {
    const text = fc.oneof(
      // Any UTF-16 units at all, half a surrogate pair among them.
      fc
        .array(fc.nat(0xffff), { maxLength: 10 })
        .map((units) => String.fromCharCode(...units)),
      fc
        .array(fc.constantFrom(...Array.from("URFrwMxX()2'3×* 'm")), {
          maxLength: 30,
        })
        .map((letters) => letters.join("")),
    );
    fc.assert(
      fc.property(text, (written) => {
        const result = parseTurns(written);
        if (result.ok) {
          const text = formatTurns(result.value);
          expect(rewritten(text)).toBe(text);
          return;
        }
        const { offset, text: found } = result.error;
        expect(found).not.toBe("");
        expect(written.slice(offset, offset + found.length)).toBe(found);
      }),
    );
  });
});

describe("reading while somebody writes", () => {
  it("gives the turns before the error and its place", () => {
    const typed = readTypedTurns("R U q F");
    expect(formatTurns(typed.turns)).toBe("R U");
    // Nor are its letters that could be wide turns.
    expect(formatTurns(readTypedTurns("R (Uw blah)").turns)).toBe("R Uw");
    expect(formatTurns(readTypedTurns("R Uwbq").turns)).toBe("R Uw");
    expect(typed.error).toEqual({
      code: "unknown-character",
      offset: 4,
      text: "q",
    });
    expect(typed.unfinished).toBe(false);
  });

  it.each(["(", "R (U F'", "(R U)×", "2", "R'2", "2R", "R ((U)2"])(
    "waits while %j can still become right",
    (text) => {
      const typed = readTypedTurns(text);
      expect(typed.error).toBeDefined();
      expect(typed.unfinished).toBe(true);
    },
  );

  it.each(["R)", "2R U", "R 3", "(R q", "R''", "2M"])(
    "does not wait where %j stays wrong whatever follows",
    (text) => {
      const typed = readTypedTurns(text);
      expect(typed.error).toBeDefined();
      expect(typed.unfinished).toBe(false);
    },
  );

  it("never calls the beginning of a right text wrong", () => {
    const right = fc.constantFrom(
      "R U2' 2Rw (R U R' U')3 M' x",
      "(R (U F)2')×4 r2 y'",
      "R'2Fw((U)*3)x3",
    );
    fc.assert(
      fc.property(right, fc.nat(40), (text, length) => {
        const typed = readTypedTurns(text.slice(0, length));
        expect(typed.error === undefined || typed.unfinished).toBe(true);
      }),
    );
  });

  it("counts a group that is still open once", () => {
    expect(formatTurns(readTypedTurns("F (R U").turns)).toBe("F R U");
  });
});
