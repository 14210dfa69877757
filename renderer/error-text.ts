/**
 * Error codes as sentences that say what to do next. Core and storage hold
 * codes only; every switch is exhaustive, so a new code without a sentence
 * does not compile.
 */
import type { DeleteLearnerError } from "./state/app-state.svelte";
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
