/**
 * How a deck is refused, in a file, a stored row or an edit: a code and the
 * path of the value, never the schema library's own sentences.
 */
import type { NotationError } from "../notation/parse";

/** Every cause for which a value of a deck is refused. */
export const DECK_FAULT_CODES = [
  /** A field that must be there is not. */
  "missing-field",
  /** A field that nobody knows: most often a slip of the pen. */
  "unknown-field",
  /** A text where a number belongs, a list where a text belongs. */
  "wrong-type",
  /** None of the words or numbers that may stand there. */
  "unknown-value",
  /** A number too small or too large, or a fraction where a whole number belongs. */
  "out-of-range",
  /** A text with nothing to read in it. */
  "blank-text",
  /** A text longer than its place allows. */
  "text-too-long",
  /** A control character, or a line break where the text is one line. */
  "unwanted-character",
  /** An id that is neither a UUID nor a starter deck's. */
  "malformed-id",
  /** A list that must not be empty. */
  "empty-list",
  /** More cases than a deck holds. */
  "list-too-long",
  /** The same word twice in a list. */
  "duplicate-value",
  /** The same case twice. */
  "duplicate-case",
  /** More other homes placed than the case allows. */
  "too-many-placed",
  /** A day that is not written YYYY-MM-DD, or that the calendar does not have. */
  "impossible-day",
  /** A typed way that cannot be read. */
  "way-not-notation",
  /** A typed way in which nothing turns. */
  "way-without-turns",
  /** A typed way for two corners, which no one sequence answers. */
  "no-one-way",
] as const;

export type DeckFaultCode = (typeof DECK_FAULT_CODES)[number];

/** Where a value is: keys and places in lists, counted from 0; empty for the whole. */
export type ValuePath = readonly (string | number)[];

/** What would be right. Units: a text's and a list's `most` in UTF-16 units and items. */
export type Expected =
  | { readonly kind: "text"; readonly most?: number }
  | {
      readonly kind: "number";
      readonly least?: number;
      readonly most?: number;
      readonly whole: boolean;
    }
  | { readonly kind: "one-of"; readonly options: readonly (string | number)[] }
  | { readonly kind: "list"; readonly least?: number; readonly most?: number }
  | { readonly kind: "fields"; readonly known: readonly string[] }
  | { readonly kind: "yes-or-no" };

/** Why a deck is refused, and where. */
export interface DeckFault {
  readonly code: DeckFaultCode;
  readonly path: ValuePath;
  readonly expected?: Expected;
  /** What stands there, or the character in question; cut short. */
  readonly found?: string;
  /** With `way-not-notation`: why, and where in the way. */
  readonly notation?: NotationError;
}

/** The longest piece of a bad file that an error carries. Units: UTF-16 units. */
export const FOUND_LENGTH = 40;

/** Whether a value is one that a list of words may hold. */
export function isWord(value: unknown): value is string | number {
  return typeof value === "string" || typeof value === "number";
}

/** A single value as it stands in a file, cut short; undefined for a list, for fields, and where nothing stands. */
export function shortText(value: unknown): string | undefined {
  return isWord(value) || typeof value === "boolean" || value === null
    ? `${value}`.slice(0, FOUND_LENGTH)
    : undefined;
}
