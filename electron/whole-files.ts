/**
 * Files that are written whole or not at all, and read whole or not at all.
 *
 * A file is written beside its place, brought to the disk, and only then moved
 * into it: whatever happens meanwhile, its place holds the old file or the new
 * one. The folder is brought to the disk as well, without which the move may
 * be lost with the power (a rename is kept in the folder, not in the file).
 */
import { randomUUID } from "node:crypto";
import { mkdir, open, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { DesktopFileError } from "../core/desktop-bridge";
import { err, ok, type Result } from "../core/result";

/** As much of an open file as writing needs. */
interface WritableFile {
  writeFile(bytes: Uint8Array): Promise<void>;
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** As much of the file system as writing needs, so that a full disk can be tested. */
export interface Disk {
  open(path: string, flags: string): Promise<WritableFile>;
  rename(from: string, to: string): Promise<void>;
  rm(path: string, options: { readonly force: true }): Promise<void>;
}

const SYSTEM_DISK: Disk = { open, rename, rm };

/** What systems say where a folder cannot be opened or synced: Windows, and some network drives. */
const NO_FOLDER_SYNC = ["EPERM", "EISDIR", "EACCES", "EINVAL", "ENOTSUP"];

/** Is this the name of a file that was still being written, which a crash may leave behind? */
export function isUnfinishedFile(name: string): boolean {
  return /^\.turnwise-[0-9a-f-]{36}\.part$/.test(name);
}

/**
 * Writes a file, over the one that is there.
 *
 * Errors: `no-room`; `not-written` with the system's code. The old file is
 *         then as it was, but for the rare case that the folder alone could
 *         not be brought to the disk.
 */
export async function writeWholeFile(
  path: string,
  bytes: Uint8Array,
  disk: Disk = SYSTEM_DISK,
): Promise<Result<null, DesktopFileError>> {
  const folder = dirname(path);
  // Not made from the file's name, which may be as long as names may be.
  const unfinished = join(folder, `.turnwise-${randomUUID()}.part`);
  try {
    await writeToDisk(unfinished, bytes, disk);
    await disk.rename(unfinished, path);
    await bringFolderToDisk(folder, disk);
    return ok(null);
  } catch (error) {
    await removeIfThere(unfinished, disk);
    return err(writingError(basename(path), error));
  }
}

async function writeToDisk(
  path: string,
  bytes: Uint8Array,
  disk: Disk,
): Promise<void> {
  const file = await disk.open(path, "wx");
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function bringFolderToDisk(folder: string, disk: Disk): Promise<void> {
  try {
    const opened = await disk.open(folder, "r");
    try {
      await opened.sync();
    } finally {
      await opened.close();
    }
  } catch (error) {
    if (!NO_FOLDER_SYNC.includes(systemCode(error))) throw error;
  }
}

/** Removes a file; where that fails, it is said on the console and no more, since nothing is lost. */
export async function removeIfThere(
  path: string,
  disk: Pick<Disk, "rm"> = SYSTEM_DISK,
): Promise<void> {
  try {
    await disk.rm(path, { force: true });
  } catch (error) {
    console.warn(`A file was left behind (${systemCode(error)}).`);
  }
}

/**
 * Makes a folder where there is none.
 *
 * Errors: as of `writeWholeFile`.
 */
export async function makeFolder(
  path: string,
): Promise<Result<null, DesktopFileError>> {
  try {
    await mkdir(path, { recursive: true });
    return ok(null);
  } catch (error) {
    return err(writingError(basename(path), error));
  }
}

function writingError(name: string, error: unknown): DesktopFileError {
  const reason = systemCode(error);
  return reason === "ENOSPC" || reason === "EDQUOT"
    ? { code: "no-room", name }
    : { code: "not-written", name, reason };
}

/**
 * Reads a file of at most so many bytes. Its size is looked at first, and no
 * more than that is read, should it grow meanwhile.
 *
 * Errors: `not-a-file`, `file-too-large`; `not-read` with the system's code.
 */
export async function readWholeFile(
  path: string,
  most: number,
): Promise<Result<Uint8Array<ArrayBuffer>, DesktopFileError>> {
  const name = basename(path);
  try {
    const facts = await stat(path);
    // Opening a pipe would wait for somebody to write to it.
    if (!facts.isFile()) return err({ code: "not-a-file", name });
    if (facts.size > most) return err({ code: "file-too-large", name, most });
    const bytes = await readAtMost(path, most + 1);
    return bytes.length > most
      ? err({ code: "file-too-large", name, most })
      : ok(bytes);
  } catch (error) {
    return err({ code: "not-read", name, reason: systemCode(error) });
  }
}

async function readAtMost(
  path: string,
  most: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const file = await open(path, "r");
  const parts: Uint8Array[] = [];
  let length = 0;
  // `end` is the last byte that is read, not the one after it.
  for await (const part of file.createReadStream({ end: most - 1 })) {
    parts.push(part as Uint8Array);
    length += (part as Uint8Array).length;
  }
  // Joined by hand: a buffer of Node's own would have to be copied once more.
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/** The system's short code for what went wrong, such as ENOENT. */
export function systemCode(error: unknown): string {
  return error instanceof Error &&
    "code" in error &&
    typeof error.code === "string"
    ? error.code
    : "unknown";
}
