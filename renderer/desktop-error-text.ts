/**
 * Why the desktop shell did not do what was asked, as sentences that say what
 * to do next. The switch is exhaustive: a new code without a sentence does not
 * compile.
 */
import type { DesktopError } from "../core/desktop-bridge";

/** What the shell did not do, and what to do about it. */
export function desktopErrorText(error: DesktopError): string {
  switch (error.code) {
    case "wrong-ending":
      return `“${error.name}” is not a kind of file that is read here. Deck files end in .turnwise-deck or .json, backups in .turnwise-backup.`;
    case "not-a-file":
      return `“${error.name}” is not a file. Choose a file, not a folder.`;
    case "file-too-large":
      return error.name === ""
        ? `This is larger than ${sizeInWords(error.most)}, which is the most for one file.`
        : `“${error.name}” is larger than ${sizeInWords(error.most)}, which is the most for one file. Nothing was changed.`;
    case "not-text":
      return `“${error.name}” is not a text file, so it is no deck. Ask for the file again: it may have been damaged on its way.`;
    case "not-read":
      return error.reason === "ENOENT"
        ? `“${error.name}” is not there any more. Look for where it was moved to.`
        : `“${error.name}” could not be read (the system says: ${error.reason}). Copy it to another folder and try that copy.`;
    case "no-room":
      return `There is no room left on the disk for “${error.name}”. Make some room, then try again. Nothing that was kept before is lost.`;
    case "not-written":
      return `“${error.name}” could not be written (the system says: ${error.reason}). Try another folder. What was there before is still there.`;
    case "no-such-backup":
      return "This backup is not there any more: a newer one has taken its place. Look at the list again.";
    case "no-shared-folder":
      return "No shared folder has been chosen on this machine yet. Choose one first.";
    case "not-results":
      return `“${error.name}” is not a file of results. Choose a file that ends in .turnwise-results.`;
    case "not-done":
      return `This could not be done (the system says: ${error.reason}). Try again; if it stays so, restart Turnwise.`;
    case "foreign-sender":
    case "unreadable-message":
      return "This could not be done by a fault of ours. Load the page again and try once more. Your answers are kept.";
  }
}

function sizeInWords(bytes: number): string {
  return `${Math.round(bytes / 1_000_000).toLocaleString("en")} MB`;
}
