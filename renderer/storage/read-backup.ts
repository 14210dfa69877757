/** Reading a file as a backup. */
import { MAX_BACKUP_BYTES } from "../../core/desktop-bridge";
import type { BackupError } from "../../core/backup/backup-error";
import {
  BACKUP_LIMITS,
  type BackupContents,
  type BackupLimits,
  backupReader,
} from "../../core/backup/backup-reader";
import type { Result } from "../../core/result";
import {
  type PackedFileError,
  type PackedFileLimits,
  readPackedLines,
} from "./packed-lines";

/** Why a file could not be read as a backup. Nothing was changed by trying. */
export type BackupFileError = BackupError | PackedFileError;

/** How large a backup may be. */
export interface BackupFileLimits extends BackupLimits, PackedFileLimits {}

/**
 * So that whatever a store of a million answers writes can be read again: 900 MB,
 * and 180 packed where everything in them is random.
 */
export const BACKUP_FILE_LIMITS: BackupFileLimits = {
  ...BACKUP_LIMITS,
  packed: MAX_BACKUP_BYTES,
  unpacked: 1_200_000_000,
};

/**
 * Reads a file as a backup, to its end or to the first thing that is wrong.
 *
 * Errors: with the line where it is known; the rest of the file is not read.
 */
export function readBackup(
  file: ReadableStream<Uint8Array<ArrayBuffer>>,
  limits: BackupFileLimits = BACKUP_FILE_LIMITS,
): Promise<Result<BackupContents, BackupFileError>> {
  return readPackedLines(file, limits, backupReader(limits));
}
