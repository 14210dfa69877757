/** Why a backup is refused, or cannot be taken back, as sentences that say what to do. */
import { storageErrorText } from "./error-text";
import type { RestoreError } from "./state/backup-desk.svelte";
import type { BackupFileError } from "./storage/read-backup";

const UNCHANGED = "Nothing was changed.";

function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1_000_000)} MB`;
}

/** Why a file was not read as a backup, where it is wrong, and what to do about it. */
export function backupFileErrorText(error: BackupFileError): string {
  switch (error.code) {
    case "not-a-backup":
      return `This file is not a backup of Turnwise. Choose a file that was saved with “Back up”. ${UNCHANGED}`;
    case "newer-backup":
      return (
        `A newer Turnwise made this backup (its form is number ${error.version}), and this one would not understand it. ` +
        `Restore it with that newer Turnwise. ${UNCHANGED}`
      );
    case "truncated":
      return (
        `This backup stops in the middle, at line ${error.line}: the file was not copied to its end. ` +
        `Copy it again from where it came from, or take an older backup. ${UNCHANGED}`
      );
    case "lines-after-end":
      return (
        `This backup goes on after its end, at line ${error.line}: somebody added to it. ` +
        `Take away what comes after the end, or take another backup. ${UNCHANGED}`
      );
    case "unknown-line":
      return (
        `Line ${error.line} of this backup holds something that Turnwise does not know. ` +
        `Somebody changed the file: take another backup. ${UNCHANGED}`
      );
    case "too-many-lines":
    case "too-many-reviews":
      return (
        `This backup holds more than Turnwise can keep: at line ${error.line} it is too much. ` +
        `If it is really yours, back up one learner at a time and restore those files. ${UNCHANGED}`
      );
    case "wrong-counts":
      return (
        `This backup says that it holds ${error.said} ${COUNTED[error.field]}, and there are ${error.found} (see line ${error.line}). ` +
        `Lines were lost or added: take another backup. ${UNCHANGED}`
      );
    case "line-not-json":
      return `Line ${error.line} of this backup cannot be read: it was changed or damaged. Take another backup. ${UNCHANGED}`;
    case "line-too-deep":
    case "line-too-long":
      return (
        `Line ${error.line} of this backup is ${error.code === "line-too-deep" ? "nested deeper" : "longer"} than any that Turnwise writes. ` +
        `Somebody changed the file: take another backup. ${UNCHANGED}`
      );
    case "forbidden-key":
      return (
        `Line ${error.line} of this backup has a name in it that could do harm (“${error.field}”). ` +
        `Do not use this file; take another backup. ${UNCHANGED}`
      );
    case "wrong-field":
      return (
        `Line ${error.line} of this backup says something that cannot be${error.field === "" ? "" : ` (“${error.field}”)`}. ` +
        `The file was changed or damaged: take another backup. ${UNCHANGED}`
      );
    case "packed-too-large":
      return `This file is larger than ${megabytes(error.limit)}, more than a backup can be. Choose a file that was saved with “Back up”. ${UNCHANGED}`;
    case "unpacked-too-large":
      return (
        `This file unpacks to more than ${megabytes(error.limit)}, more than a backup can hold, so Turnwise stopped. ` +
        `Do not use this file; take another backup. ${UNCHANGED}`
      );
    case "bad-gzip":
      return (
        "This file cannot be unpacked: it is damaged, or was not copied to its end. " +
        `Copy it again from where it came from, or take an older backup. ${UNCHANGED}`
      );
    case "not-text":
      return `Near line ${error.line} this file holds signs that are no text: it is damaged, or no backup. Take another backup. ${UNCHANGED}`;
    case "file-not-read":
      return (
        `The file could not be read (the system says: ${error.reason}). ` +
        `Look whether it is still there, and choose it again. ${UNCHANGED}`
      );
  }
}

/** Why nothing was restored, or nothing taken back, and what to do about it. */
export function restoreErrorText(error: RestoreError): string {
  if (error.code === "practising-elsewhere")
    return `Another window is practising as one of these learners. Close it, then try again. ${UNCHANGED}`;
  if (error.code === "nothing-to-undo")
    return `There is no restore to take back. ${UNCHANGED}`;
  if (error.code === "practised-since")
    return (
      "Somebody has practised since the restore, and their answers now rest on it, so it can no longer be taken back. " +
      `To be without a learner that it brought, delete that learner in Settings. ${UNCHANGED}`
    );
  return storageErrorText(error);
}

const COUNTED = {
  learners: "learners",
  settings: "sets of settings",
  decks: "decks",
  reviews: "answers",
  damaged: "damaged rows",
  runs: "whole runs",
  sheets: "printed sheets",
  classmates: "people who shared results",
  heard: "parts of shared results",
} as const;
