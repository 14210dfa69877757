/**
 * Why results were not shared, or not taken in, as sentences that say what to
 * do. Both switches are exhaustive: a new code without a sentence does not
 * compile.
 */
import { desktopErrorText } from "./desktop-error-text";
import { storageErrorText } from "./error-text";
import type { FolderError } from "./platform/results-folder";
import type { SharingError } from "./state/sharing/sharing-error";
import type { ResultsFileError } from "./storage/results-files";

function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1_000_000)} MB`;
}

function folderErrorText(error: FolderError): string {
  switch (error.code) {
    case "folder-gone":
      return "The shared folder is not there. Look whether it was moved or its drive is switched off, or choose another. Nothing is lost: what is new is shared once it is there.";
    case "not-allowed":
      return "The browser wants to be asked before it opens the shared folder. Go to Settings and press “Open the folder”.";
    case "folder-full":
      return "There is no room left in the shared folder. Make some room there, then share again. Nothing is lost.";
    case "folder-file-too-large":
      return "It is larger than results can be. Ask for it again.";
    case "folder-failed":
      return `The shared folder could not be used (the system says: ${error.reason}). Try again, or choose another folder. Nothing is lost.`;
    case "desktop":
      return desktopErrorText(error.error);
  }
}

/** Why nothing was shared, taken back or taken in, and what to do about it. */
export function sharingErrorText(error: SharingError): string {
  switch (error.code) {
    case "no-folder":
      return "No shared folder is open on this machine. Choose the folder first, then try again.";
    case "taken-back-elsewhere":
      return "On another machine you took back everything you shared, so this one stopped sharing too. To share from here again, choose what to share in Settings.";
    case "nothing-chosen":
      return "You chose to share nothing. Choose what to share first.";
    case "folder-gone":
    case "not-allowed":
    case "folder-full":
    case "folder-file-too-large":
    case "folder-failed":
    case "desktop":
      return folderErrorText(error);
    case "unavailable":
    case "full":
    case "newer-version":
    case "closed":
    case "not-read":
    case "not-written":
    case "learner-gone":
      return storageErrorText(error);
  }
}

const AGAIN = "Ask for it again.";

/** Why a file of results was not read, and what to do about it. */
export function resultsFileErrorText(
  error: ResultsFileError | FolderError,
): string {
  switch (error.code) {
    case "not-whole":
      return "It has not arrived whole yet, or it is damaged. It is left as it is and read again at the next look.";
    case "not-results":
      return "This is no file of results. They are made under “Share with a coach” in Settings.";
    case "newer-results":
      return `A newer Turnwise made it (its form is number ${error.version}). Bring this Turnwise up to date, then look again.`;
    case "truncated":
      return `It stops in the middle, at line ${error.line}: it was not copied to its end. ${AGAIN}`;
    case "lines-after-end":
      return `It goes on after its end, at line ${error.line}: somebody added to it. ${AGAIN}`;
    case "unknown-line":
      return `Line ${error.line} holds something that does not belong there: somebody changed it. ${AGAIN}`;
    case "too-many-answers":
      return `It holds more answers than one file may (see line ${error.line}). ${AGAIN}`;
    case "wrong-counts":
      return `It says that it holds ${error.said} answers, and there are ${error.found}: lines were lost or added. ${AGAIN}`;
    case "line-not-json":
    case "wrong-field":
      return `Line ${error.line} cannot be read: it was changed or damaged. ${AGAIN}`;
    case "line-too-deep":
    case "line-too-long":
      return `Line ${error.line} is longer or deeper than any that Turnwise writes: somebody changed it. ${AGAIN}`;
    case "forbidden-key":
      return `Line ${error.line} has a name in it that could do harm (“${error.field}”). Do not use this file. ${AGAIN}`;
    case "packed-too-large":
    case "unpacked-too-large":
      return `It holds more than ${megabytes(error.limit)}, more than results can. Do not use this file. ${AGAIN}`;
    case "bad-gzip":
      return `It cannot be unpacked: it is damaged, or was not copied to its end. ${AGAIN}`;
    case "not-text":
      return `Near line ${error.line} it holds signs that are no text: it is damaged. ${AGAIN}`;
    case "file-not-read":
      return `It could not be read (the system says: ${error.reason}). Look whether it is still there, and choose it again.`;
    case "folder-gone":
      return "It was there a moment ago and is not any more. Look again.";
    case "not-allowed":
    case "folder-full":
    case "folder-file-too-large":
    case "folder-failed":
    case "desktop":
      return folderErrorText(error);
  }
}
