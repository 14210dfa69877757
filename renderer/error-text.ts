/**
 * Error codes as sentences that say what to do next. Core and storage hold
 * codes only; every switch is exhaustive, so a new code without a sentence
 * does not compile.
 */
import type { DeleteLearnerError } from "./state/app-state.svelte";
import type { StorageError } from "./storage/storage-error";

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
    case "failed":
      return (
        `Your answer could not be kept (the browser says: ${error.reason}). ` +
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
