import type { FolderError } from "../../platform/results-folder";
import type { StorageError } from "../../storage/storage-error";

/** Why nothing was shared, taken back or taken in. */
export type SharingError =
  | FolderError
  | StorageError
  /** No shared folder was chosen here. */
  | { readonly code: "no-folder" }
  /** The learner chose to share nothing. */
  | { readonly code: "nothing-chosen" };
