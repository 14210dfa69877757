import type { LineError } from "../backup/backup-line";

/** Why a block of results was refused, and in which line, counted from 1. */
export type ResultsError =
  /** The first line is no block's: another kind of file. */
  | { readonly code: "not-results" }
  /** Written by a version whose files this one cannot read. */
  | { readonly code: "newer-results"; readonly version: number }
  /** The line that says how many answers there were is missing: the file was cut off. */
  | { readonly code: "truncated"; readonly line: number }
  | { readonly code: "lines-after-end"; readonly line: number }
  | { readonly code: "unknown-line"; readonly line: number }
  | { readonly code: "too-many-answers"; readonly line: number }
  /** There are not as many answers as the file says there are. */
  | {
      readonly code: "wrong-counts";
      readonly line: number;
      readonly said: number;
      readonly found: number;
    }
  | (LineError & { readonly line: number });
