/**
 * Error codes as sentences that say what to do next. Core and storage hold
 * codes only; every switch is exhaustive, so a new code without a sentence
 * does not compile.
 */
import type { DeckFault, Expected } from "../core/deck/deck-fault";
import type { DeckFileError } from "../core/deck/deck-file";
import { notationErrorText } from "./notation-error-text";
import type { DeleteLearnerError } from "./state/app-state.svelte";
import type { UndoRestoreError } from "./storage/last-restore";
import type { BackupFileError } from "./storage/read-backup";
import type { StorageError } from "./storage/storage-error";
import type { SolverError } from "./workers/solver-client";

/** What happened to the store, and what to do about it. */
export function storageErrorText(error: StorageError): string {
  switch (error.code) {
    case "unavailable":
      return (
        "This browser gives Turnwise no place to keep your answers. " +
        "A private window or a setting that blocks site data does that: open Turnwise in an ordinary window, then reload."
      );
    case "full":
      return (
        "There is no room left to keep your answers: the disk, or the browser’s share of it, is full. " +
        "Make some room, then try again. Nothing that was kept before is lost."
      );
    case "newer-version":
      return (
        `A newer Turnwise has kept answers here (their form is number ${error.version}). ` +
        "Open that newer Turnwise: this one would not understand them, and leaves them as they are."
      );
    case "closed":
      return (
        "The place where your answers are kept was closed, because a newer Turnwise took over or the browser cleared its data. " +
        "Reload this window."
      );
    case "not-read":
      return (
        `What you have answered could not be read (the browser says: ${error.reason}). ` +
        "Reload this window; if it stays so, restart Turnwise. Nothing was changed."
      );
    case "learner-gone":
      return (
        "This learner was deleted in another window, so the answer was not kept. " +
        "Reload this window to go on as somebody else."
      );
    case "not-written":
      return (
        `This could not be kept (the browser says: ${error.reason}). ` +
        "Try again; if it stays so, reload this window. Everything kept before is still there."
      );
  }
}

/** Why a learner was not deleted, and what to do about it. */
export function deleteLearnerErrorText(error: DeleteLearnerError): string {
  return error.code === "practising-elsewhere"
    ? "Another window is practising as this learner. Close it, then delete them."
    : storageErrorText(error);
}

/** Why no set-up was found, and what to do about it. */
export function setUpErrorText(error: SolverError): string {
  switch (error.code) {
    case "piece-not-known":
      return "A piece of the case is not known on your cube. Say again what your cube has now.";
    case "impossible-cube":
      return error.which === "from"
        ? "No cube can look as yours was told: a piece was seen in the wrong place, or your cube was put together wrongly. Say again what it has now."
        : "This case was kept in a form that no cube can show. Skip it; the next one comes.";
    case "cancelled":
      return "The search was broken off. Try again.";
    case "solver-failed":
      return `The search stopped by a fault of ours (${error.reason}). Try again; if it stays so, reload this window. Your answers are kept.`;
  }
}

/** What would be right in a place of a deck, after "must be". */
function expectedText(expected: Expected | undefined): string {
  switch (expected?.kind) {
    case undefined:
      return "something else";
    case "text":
      return "a text in quotation marks";
    case "number": {
      const { least, most, whole } = expected;
      const what = whole ? "a whole number" : "a number";
      if (least === undefined) return what;
      return most === undefined
        ? `${what}, at least ${least}`
        : `${what} from ${least} to ${most}`;
    }
    case "one-of": {
      const options = expected.options.map((option) =>
        typeof option === "number" ? `${option}` : `“${option}”`,
      );
      return options.length === 1
        ? (options[0] ?? "")
        : `${options.slice(0, -1).join(", ")} or ${options.at(-1) ?? ""}`;
    }
    case "list":
      return "a list in square brackets";
    case "fields":
      return "fields in curly brackets";
    case "yes-or-no":
      return "true or false";
  }
}

/** A character that cannot be seen, by its number in Unicode. */
function hiddenCharacterText(character: string): string {
  if (character === "\n") return "a line break";
  const number = (character.codePointAt(0) ?? 0).toString(16).toUpperCase();
  return `a hidden character (U+${number.padStart(4, "0")})`;
}

/** What is wrong with a value of a deck, and what to do about it. */
export function deckFaultText(fault: DeckFault): string {
  const { expected, found = "", notation, path } = fault;
  const field = path.findLast((step) => typeof step === "string") ?? "deck";
  const most =
    expected !== undefined && "most" in expected
      ? `${expected.most}`
      : "so many";
  switch (fault.code) {
    case "missing-field":
      return `“${field}” is missing. Add it.`;
    case "unknown-field":
      return `Turnwise knows no “${field}”. Check how it is spelt, or leave it out.`;
    case "wrong-type":
      return `“${field}” must be ${expectedText(expected)}${expected?.kind === "number" ? ", without quotation marks" : ""}.`;
    case "unknown-value":
    case "out-of-range":
      return `“${field}” must be ${expectedText(expected)}${found === "" ? "" : `, not “${found}”`}.`;
    case "blank-text":
      return `“${field}” has nothing in it. Write something.`;
    case "text-too-long":
      return `“${field}” is too long. Keep it to ${most} letters.`;
    case "unwanted-character":
      return `“${field}” has ${hiddenCharacterText(found)} in it. Take it out.`;
    case "malformed-id":
      return `“${found}” is no id that Turnwise made. Leave the id out, and the deck gets a new one.`;
    case "empty-list":
      return `“${field}” is empty. Name at least one, or leave the whole field out.`;
    case "list-too-long":
      return `“${field}” holds too many. A deck has room for ${most}.`;
    case "duplicate-value":
      return `“${field}” says the same thing twice. Take one out.`;
    case "duplicate-case":
      return `The case ${found} is in the deck twice. Take one out.`;
    case "too-many-placed":
      return `This case has room for at most ${most} other pieces at home, not ${found}.`;
    case "impossible-day":
      return `“${found}” is no day of the calendar. Write it as 2027-02-01: year, month, day.`;
    case "way-not-notation":
      return notation === undefined
        ? "This way cannot be read. Check how its turns are written."
        : `This way cannot be read at letter ${notation.offset + 1}. ${notationErrorText(notation)}`;
    case "way-without-turns":
      return "Nothing turns in this way. Write its turns, or leave it out.";
    case "no-one-way":
      return "Two corners in each other’s homes have no one way: they can lie in nine ways. Leave the way out.";
  }
}

/** Why a deck file was not read, where, and what to do about it. Nothing was changed by it. */
export function deckFileErrorText(error: DeckFileError): string {
  const place =
    "line" in error ? `Line ${error.line}, letter ${error.column}: ` : "";
  if ("field" in error) return place + deckFaultText(error);
  switch (error.code) {
    case "too-large":
      return "This file is too large for a deck: a deck has less than a megabyte. Choose another file.";
    case "empty":
      return "This file is empty. Ask for it again, or choose another one.";
    case "ends-early":
      return `${place}the file ends in the middle. It may have been cut short on its way: ask for it again.`;
    case "text-not-closed":
      return `${place}a quotation mark opens here and is not closed on its line. Close it; for a new line within a text write \\n.`;
    case "not-json":
      return `${place}this is not written as a deck file is${error.found === "" ? "" : ` (it says ${error.found})`}. Look for a comma, a bracket or a quotation mark too many or too few.`;
    case "nested-too-deep":
      return `${place}too many brackets lie within one another for a deck. Choose another file.`;
    case "duplicate-key":
      return `${place}this field is there twice. Take one out.`;
    case "reserved-key":
      return `${place}a field cannot have this name. Take it out.`;
    case "number-too-large":
      return `${place}this number is too large. Write a smaller one.`;
    case "not-turnwise":
      return "This file is not from Turnwise. Choose a deck file.";
    case "other-kind":
      return `This file is from Turnwise, but holds no deck${error.kind === "" ? "" : ` (it says “${error.kind}”)`}. Choose a deck file.`;
    case "newer-version":
      return "A newer Turnwise wrote this deck, in a form that this one cannot read. Get the newer Turnwise, or ask for the deck in the older form.";
  }
}

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

/** Why a restore was not taken back, and what to do about it. */
export function undoRestoreErrorText(error: UndoRestoreError): string {
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
} as const;
