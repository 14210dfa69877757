/**
 * The code on a sheet, by which its ticks find back to it: a digest of what
 * the sheet holds, so that the same sheet made again has the same code,
 * whatever it looks like.
 *
 * Twenty-three signs, none like another and none to be taken for one that is
 * missing: 0 and O, 1 and I and L, 2 and Z, 5 and S, 8 and B, U and V, D and
 * O, G and 6. Twenty-three is a prime, so a weighted sum of the first seven
 * signs as the eighth finds every wrong sign and every two that changed
 * places. Seven signs are 3.4 thousand million codes: among a thousand sheets
 * of one coach two have the same with a chance of one in 7,000.
 */
import type { Hold } from "../cases/variant";
import type { DeckCase } from "../deck/deck";
import { Digest } from "../digest";
import { present } from "../invariant";
import type { Opening } from "../memory/variant-opening";
import { err, ok, type Result } from "../result";

declare const sheetCodeBrand: unique symbol;

/** Eight signs without a gap. Stored with sheets: the alphabet never changes. */
export type SheetCode = string & { readonly [sheetCodeBrand]: true };

/** The kinds of sheets that children write on, and that have a code. */
export const CODED_KINDS = ["cases", "practice"] as const;

/** One of these kinds. */
export type CodedKind = (typeof CODED_KINDS)[number];

/** What of a deck's case is on such a sheet, and what its answers are to take. */
export type CaseOnSheet = Pick<
  DeckCase,
  "case" | "target" | "placed" | "home" | "lining"
>;

/** What such a sheet holds: its positions can be drawn again from it. */
export interface CodedSheet {
  readonly kind: CodedKind;
  /** In the order in which they stand on it, or are drawn from. */
  readonly cases: readonly CaseOnSheet[];
  readonly hold: Hold;
  /** The sheet's number. */
  readonly number: number;
  /** How many positions, and how far they are opened up: of a practice sheet only. */
  readonly count: number;
  readonly opening: Opening;
}

/** Why a text is no code. */
export type SheetCodeError =
  /** It has not eight signs. */
  | { readonly code: "wrong-length"; readonly length: number }
  /** A sign that no code has, counted from 0 without gaps. */
  | {
      readonly code: "unknown-sign";
      readonly offset: number;
      readonly sign: string;
    }
  /** Its last sign does not follow from the others: one is wrong, or two changed places. */
  | { readonly code: "mistyped" };

const SIGNS = "234679ACDEFHJKMNPRTVWXY";
const BASE = SIGNS.length;
const LENGTH = 8;

function signOf(value: number): string {
  return present(SIGNS[value], "a remainder has a sign");
}

/** Source: house-made, as ISO 7064 but with a weight for each place; exact because 23 is prime and the weights are 1 to 7. */
function checkSign(values: readonly number[]): string {
  const sum = values.reduce((all, value, i) => all + (i + 1) * value, 0);
  return signOf(sum % BASE);
}

/** A digest of a text. Units: an integer below 2^53. */
function digestOf(text: string): number {
  const digest = new Digest();
  digest.takeText(text);
  // The last letters have hardly reached the low bits yet.
  let mixed = digest.mixed;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed ^= mixed >>> 13;
  return (mixed >>> 11) * 2 ** 32 + (digest.forward >>> 0);
}

/** All that decides what a child was given; not what an answer may take, and not how it looks. */
function contentOf(sheet: CodedSheet): unknown {
  const { kind, cases, hold, number, count, opening } = sheet;
  switch (kind) {
    case "cases":
      return [kind, hold, number, cases.map((one) => one.case)];
    case "practice":
      return [
        kind,
        hold,
        number,
        cases.map((one) => [
          one.case,
          one.placed ?? "",
          one.home ?? "",
          one.lining ?? "",
        ]),
        count,
        opening,
      ];
  }
}

/** The code of a sheet. */
export function sheetCode(sheet: CodedSheet): SheetCode {
  let left = digestOf(JSON.stringify(contentOf(sheet)));
  const values = Array.from({ length: LENGTH - 1 }, () => {
    const value = left % BASE;
    left = Math.floor(left / BASE);
    return value;
  });
  const code = values.map(signOf).join("") + checkSign(values);
  return code as SheetCode;
}

/** A code as it is printed: "4A7C-2KMX". */
export function formatSheetCode(code: SheetCode): string {
  return `${code.slice(0, LENGTH / 2)}-${code.slice(LENGTH / 2)}`;
}

/** The code that somebody read off a sheet: small letters, gaps and hyphens do not matter. */
export function parseSheetCode(
  text: string,
): Result<SheetCode, SheetCodeError> {
  const signs = text.replaceAll(/[\s\-–—_.]/g, "").toUpperCase();
  const values = [...signs].map((sign) => SIGNS.indexOf(sign));
  const offset = values.indexOf(-1);
  if (values.length !== LENGTH)
    return err({ code: "wrong-length", length: values.length });
  if (offset !== -1)
    return err({
      code: "unknown-sign",
      offset,
      sign: present([...signs][offset], "it was looked at"),
    });
  return checkSign(values.slice(0, -1)) === signs.at(-1)
    ? ok(signs as SheetCode)
    : err({ code: "mistyped" });
}
