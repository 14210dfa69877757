/**
 * The folder that several machines see, as the app uses it: through the
 * desktop app's shell, or in a browser through the File System Access
 * interface, whose handle is kept and whose permission is asked for again by a
 * press. Only files of results are seen in it.
 */
import type { DesktopError } from "../../core/desktop-bridge";
import { err, ok, type Result } from "../../core/result";
import {
  isResultsFileName,
  MAX_RESULTS_BYTES,
} from "../../core/sharing/results-file-name";
import { desktopBridge } from "./desktop";

/** Why the folder did not do what was asked. */
export type FolderError =
  /** It was moved, deleted, or its drive is not there. */
  | { readonly code: "folder-gone" }
  /** The browser wants to be asked again, by a press. */
  | { readonly code: "not-allowed" }
  | { readonly code: "folder-full" }
  | { readonly code: "folder-file-too-large"; readonly name: string }
  /** Anything else; `reason` is the system's word for it. */
  | { readonly code: "folder-failed"; readonly reason: string }
  | { readonly code: "desktop"; readonly error: DesktopError };

type Bytes = Uint8Array<ArrayBuffer>;

/** A folder that was chosen. */
export interface ResultsFolder {
  /** Its own name. */
  readonly name: string;
  /** The names of the files of results in it. */
  list(): Promise<Result<readonly string[], FolderError>>;
  read(name: string): Promise<Result<Bytes, FolderError>>;
  /** Writes a file whole. */
  write(name: string, bytes: Bytes): Promise<Result<void, FolderError>>;
  /** Removes a file; one that is gone already is no error. */
  remove(name: string): Promise<Result<void, FolderError>>;
}

function nameOf(thrown: unknown): string {
  return typeof thrown === "object" && thrown !== null && "name" in thrown
    ? String(thrown.name)
    : "unknown";
}

/** Source: the exceptions that the File System standard lets these functions throw. */
function folderErrorFrom(thrown: unknown): FolderError {
  const reason = nameOf(thrown);
  if (reason === "NotFoundError") return { code: "folder-gone" };
  if (reason === "NotAllowedError") return { code: "not-allowed" };
  if (reason === "QuotaExceededError") return { code: "folder-full" };
  return { code: "folder-failed", reason };
}

async function trying<T>(
  run: () => Promise<Result<T, FolderError>>,
): Promise<Result<T, FolderError>> {
  try {
    return await run();
  } catch (thrown) {
    return err(folderErrorFrom(thrown));
  }
}

/** A folder in a browser. */
export function browserFolder(
  handle: FileSystemDirectoryHandle,
): ResultsFolder {
  return {
    name: handle.name,
    list: () =>
      trying(async () => {
        const names: string[] = [];
        for await (const [name, entry] of handle.entries())
          if (entry.kind === "file" && isResultsFileName(name))
            names.push(name);
        return ok(names);
      }),
    read: (name) =>
      trying(async () => {
        const file = await (await handle.getFileHandle(name)).getFile();
        return file.size > MAX_RESULTS_BYTES
          ? err({ code: "folder-file-too-large", name })
          : ok(new Uint8Array(await file.arrayBuffer()));
      }),
    write: (name, bytes) =>
      trying(async () => {
        const file = await handle.getFileHandle(name, { create: true });
        // Written beside its place and moved into it by `close`.
        const writable = await file.createWritable();
        try {
          await writable.write(bytes);
          await writable.close();
        } catch (thrown) {
          // An empty file under the name would stand for a whole one; that it
          // cannot be removed either is what the error says.
          await handle.removeEntry(name).catch(() => undefined);
          throw thrown;
        }
        return ok(undefined);
      }),
    remove: (name) =>
      trying(async () => {
        try {
          await handle.removeEntry(name);
        } catch (thrown) {
          if (nameOf(thrown) !== "NotFoundError") throw thrown;
        }
        return ok(undefined);
      }),
  };
}

/** What the desktop's shell says, as of any folder. */
function fromDesktop<T, U>(
  answer: Result<T, DesktopError>,
  read: (value: T) => U,
): Result<U, FolderError> {
  if (answer.ok) return ok(read(answer.value));
  const { error } = answer;
  if (error.code === "no-room") return err({ code: "folder-full" });
  const isGone =
    (error.code === "not-read" || error.code === "not-written") &&
    error.reason === "ENOENT";
  return err(isGone ? { code: "folder-gone" } : { code: "desktop", error });
}

type Desktop = NonNullable<ReturnType<typeof desktopBridge>>;

/** The folder that the desktop app's shell remembers. */
function desktopFolder(desktop: Desktop, name: string): ResultsFolder {
  return {
    name,
    list: async () => fromDesktop(await desktop.listShared(), (names) => names),
    read: async (file) =>
      fromDesktop(await desktop.readShared(file), ({ bytes }) => bytes),
    write: async (file, bytes) =>
      fromDesktop(await desktop.writeShared(file, bytes), () => undefined),
    remove: async (file) =>
      fromDesktop(await desktop.removeShared(file), () => undefined),
  };
}

/** Whether this window can have a shared folder at all. */
export function canShareFolder(): boolean {
  return (
    desktopBridge() !== undefined || window.showDirectoryPicker !== undefined
  );
}

/** How the folder that was chosen before stands now. */
export type KnownFolder =
  | { readonly kind: "none" }
  | { readonly kind: "ready"; readonly folder: ResultsFolder }
  /** The browser gives it after a press: see `allowFolder`. */
  | {
      readonly kind: "asks";
      readonly name: string;
      readonly handle: FileSystemDirectoryHandle;
    };

const NONE: KnownFolder = { kind: "none" };

const READ_WRITE = { mode: "readwrite" } as const;

/** Whether something from the store is a folder's handle. */
function isHandle(value: unknown): value is FileSystemDirectoryHandle {
  return (
    typeof FileSystemDirectoryHandle !== "undefined" &&
    value instanceof FileSystemDirectoryHandle
  );
}

/**
 * The folder that was chosen before.
 *
 * Shape: `kept` is what the store has of it, in a browser its handle.
 */
export async function knownFolder(
  kept: unknown,
): Promise<Result<KnownFolder, FolderError>> {
  const desktop = desktopBridge();
  if (desktop !== undefined)
    return fromDesktop(await desktop.sharedFolder(), (chosen) =>
      chosen === null
        ? NONE
        : { kind: "ready", folder: desktopFolder(desktop, chosen.name) },
    );
  if (!isHandle(kept)) return ok(NONE);
  return trying(async () => {
    const state = await kept.queryPermission(READ_WRITE);
    return ok<KnownFolder>(
      state === "granted"
        ? { kind: "ready", folder: browserFolder(kept) }
        : { kind: "asks", name: kept.name, handle: kept },
    );
  });
}

/** Asks the browser for the folder once more. Only after a press. */
export function allowFolder(
  handle: FileSystemDirectoryHandle,
): Promise<Result<ResultsFolder, FolderError>> {
  return trying(async () =>
    (await handle.requestPermission(READ_WRITE)) === "granted"
      ? ok(browserFolder(handle))
      : err({ code: "not-allowed" }),
  );
}

/** A folder just chosen, and what the store keeps of it: undefined where the shell does. */
export interface ChosenFolder {
  readonly folder: ResultsFolder;
  readonly kept: FileSystemDirectoryHandle | undefined;
}

/** Lets the person choose a folder; undefined where they chose none. */
export async function chooseFolder(): Promise<
  Result<ChosenFolder | undefined, FolderError>
> {
  const desktop = desktopBridge();
  if (desktop !== undefined)
    return fromDesktop(await desktop.chooseSharedFolder(), (chosen) =>
      chosen === null
        ? undefined
        : { folder: desktopFolder(desktop, chosen.name), kept: undefined },
    );
  const { showDirectoryPicker } = window;
  if (showDirectoryPicker === undefined)
    return err({ code: "folder-failed", reason: "no folders" });
  return trying(async () => {
    try {
      const kept = await showDirectoryPicker.call(window, {
        id: "results",
        ...READ_WRITE,
      });
      return ok({ folder: browserFolder(kept), kept });
    } catch (thrown) {
      // What the dialog throws where it is closed without a choice.
      if (nameOf(thrown) === "AbortError") return ok(undefined);
      throw thrown;
    }
  });
}

/** Forgets the folder on the shell's side; the store's side is the caller's. */
export async function leaveFolder(): Promise<Result<void, FolderError>> {
  const desktop = desktopBridge();
  return desktop === undefined
    ? ok(undefined)
    : fromDesktop(await desktop.leaveSharedFolder(), () => undefined);
}
