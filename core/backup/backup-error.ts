import type { BackupCounts, LineError } from "./backup-line";

/** Why a backup was refused, and in which line, counted from 1. */
export type BackupError =
  /** The first line is no backup's: another kind of file. */
  | { readonly code: "not-a-backup" }
  /** Written by a version whose files this one cannot read. */
  | { readonly code: "newer-backup"; readonly version: number }
  /** The line that says how many there were is missing: the file was cut off. */
  | { readonly code: "truncated"; readonly line: number }
  | { readonly code: "lines-after-end"; readonly line: number }
  | { readonly code: "unknown-line"; readonly line: number }
  | { readonly code: "too-many-lines"; readonly line: number }
  | { readonly code: "too-many-reviews"; readonly line: number }
  /** There are not as many of a kind as the file says there are. */
  | {
      readonly code: "wrong-counts";
      readonly line: number;
      readonly field: keyof BackupCounts;
      readonly said: number;
      readonly found: number;
    }
  | (LineError & { readonly line: number });
