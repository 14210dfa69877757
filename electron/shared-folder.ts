/**
 * The folder that several machines see, into which each lays its results.
 *
 * The person chooses it in the system's dialog; it is remembered in the data
 * folder, and the window learns only its name. Whatever else lies in it is
 * none of ours: only names of results' files are listed, read and removed, no
 * link is followed, and a file is written under the digest of its content
 * alone, so that nothing of anybody's is ever written over by something else.
 */
import { createHash } from "node:crypto";
import { lstat, readdir, rm } from "node:fs/promises";
import { basename, isAbsolute, join } from "node:path";
import * as v from "valibot";
import type {
  DesktopFileError,
  OpenedResults,
  SavedFile,
  SharedFolderName,
} from "../core/desktop-bridge";
import { err, ok, type Result } from "../core/result";
import {
  idInFileName,
  isOwnResultsFileName,
  isResultsFileName,
  MAX_RESULTS_BYTES,
} from "../core/sharing/results-file-name";
import {
  readWholeFile,
  removeIfThere,
  systemCode,
  writeWholeFile,
} from "./whole-files";

/** The shared folder of this person. */
export interface SharedFolder {
  /** What it is called; null where none was chosen. */
  chosen(): Promise<SharedFolderName | null>;
  /** Remembers a folder. Errors: those of `writeWholeFile`. */
  choose(path: string): Promise<Result<SharedFolderName, DesktopFileError>>;
  /** Forgets it; what is in it stays. */
  leave(): Promise<void>;
  /** The names of the results' files in it. Errors: `no-shared-folder`, `not-read`. */
  list(): Promise<Result<readonly string[], DesktopFileError>>;
  /** Errors: `no-shared-folder`, `not-results`; those of `readWholeFile`. */
  read(name: string): Promise<Result<OpenedResults, DesktopFileError>>;
  /**
   * Errors: `no-shared-folder`; `not-results` where the name is not the
   *         digest of the bytes; those of `writeWholeFile`.
   */
  write(
    name: string,
    bytes: Uint8Array,
  ): Promise<Result<SavedFile, DesktopFileError>>;
  /** Removes a file; one that is gone already is no error. Errors: `no-shared-folder`, `not-results`, `not-written`. */
  remove(name: string): Promise<Result<null, DesktopFileError>>;
}

const keptSchema = v.object({
  path: v.pipe(v.string(), v.maxLength(4096), v.check(isAbsolute)),
});

const MOST_KEPT_BYTES = 10_000;

/** The path that a kept file names; undefined where it cannot be read: the person chooses again. */
export function parseKeptFolder(text: string): string | undefined {
  try {
    const kept = v.safeParse(keptSchema, JSON.parse(text));
    return kept.success ? kept.output.path : undefined;
  } catch {
    return undefined;
  }
}

/** The shared folder, remembered as `shared-folder.json` in the app's own folder. */
export function sharedFolder(ownFolder: string): SharedFolder {
  const kept = join(ownFolder, "shared-folder.json");

  async function chosenPath(): Promise<string | undefined> {
    const bytes = await readWholeFile(kept, MOST_KEPT_BYTES);
    return bytes.ok
      ? parseKeptFolder(new TextDecoder().decode(bytes.value))
      : undefined;
  }

  /** Does something with the path of a file in the folder. */
  async function withFile<T>(
    name: string,
    isAllowed: boolean,
    act: (path: string) => Promise<Result<T, DesktopFileError>>,
  ): Promise<Result<T, DesktopFileError>> {
    if (!isAllowed) return err({ code: "not-results", name });
    const folder = await chosenPath();
    return folder === undefined
      ? err({ code: "no-shared-folder", name })
      : act(join(folder, name));
  }

  return {
    async chosen() {
      const path = await chosenPath();
      return path === undefined ? null : nameOf(path);
    },
    async choose(path) {
      const text = `${JSON.stringify({ path })}\n`;
      const bytes = new TextEncoder().encode(text);
      const written = await writeWholeFile(kept, bytes);
      return written.ok ? ok(nameOf(path)) : written;
    },
    leave: () => removeIfThere(kept),
    async list() {
      const folder = await chosenPath();
      if (folder === undefined)
        return err({ code: "no-shared-folder", name: "" });
      try {
        const entries = await readdir(folder, { withFileTypes: true });
        return ok(
          entries
            .filter((entry) => entry.isFile() && isResultsFileName(entry.name))
            .map(({ name }) => name),
        );
      } catch (error) {
        const { name } = nameOf(folder);
        return err({ code: "not-read", name, reason: systemCode(error) });
      }
    },
    read: (name) =>
      withFile(name, isResultsFileName(name), async (path) => {
        const isLink = await isLinkAt(path);
        if (isLink) return err({ code: "not-a-file", name });
        const bytes = await readWholeFile(path, MAX_RESULTS_BYTES);
        return bytes.ok ? ok({ name, bytes: bytes.value }) : bytes;
      }),
    write: (name, bytes) =>
      withFile(name, isNameFor(name, bytes), async (path) => {
        const written = await writeWholeFile(path, bytes);
        return written.ok ? ok({ name }) : written;
      }),
    remove: (name) =>
      withFile(name, isOwnResultsFileName(name), async (path) => {
        try {
          await rm(path, { force: true });
          return ok(null);
        } catch (error) {
          const reason = systemCode(error);
          return err({ code: "not-written", name, reason });
        }
      }),
  };
}

function nameOf(path: string): SharedFolderName {
  return { name: basename(path) || path };
}

function isNameFor(name: string, bytes: Uint8Array): boolean {
  const digest = createHash("sha256").update(bytes).digest("hex");
  return isOwnResultsFileName(name) && idInFileName(name) === digest;
}

/** A file that is gone is none: reading it says so. */
async function isLinkAt(path: string): Promise<boolean> {
  try {
    return (await lstat(path)).isSymbolicLink();
  } catch {
    return false;
  }
}
