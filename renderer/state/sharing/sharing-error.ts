import type { FolderError } from "../../platform/results-folder";
import type { StorageError } from "../../storage/storage-error";

/** Why nothing was shared, taken back or taken in. */
export type SharingError =
  | FolderError
  | StorageError
  /** No shared folder was chosen here. */
  | { readonly code: "no-folder" }
  /** On another machine the learner took everything back: nothing is shared from here until they choose again. */
  | { readonly code: "taken-back-elsewhere" }
  /** The learner chose to share nothing. */
  | { readonly code: "nothing-chosen" };
