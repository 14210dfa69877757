/**
 * What the window may ask of the desktop shell, and what the shell tells the
 * window, as types that both sides import, since neither may import the other.
 *
 * The window never names a path: files are chosen in the system's dialogs or
 * were given to the app by the system, and backups go by the names that
 * `listBackups` gave. In a plain browser the shell is not there and neither is
 * the bridge.
 */
import type { Result } from "./result";

/** The name under which the bridge stands on the window, where there is one. */
export const DESKTOP_BRIDGE_NAME = "turnwiseDesktop";

/** The largest backup that goes over the bridge. Units: bytes, packed. */
export const MAX_BACKUP_BYTES = 250_000_000;

/** What the shell says about itself. */
export interface DesktopInfo {
  readonly version: string;
  /** The folder that holds this person's data, as an absolute path. */
  readonly dataFolder: string;
}

/** A deck file that was opened; whether its text is a deck is not known yet. */
export interface OpenedDeckFile {
  /** The file's own name, without its folder. */
  readonly name: string;
  readonly text: string;
}

/** A backup file that was opened; whether its bytes are a backup is not known yet. */
export interface OpenedBackup {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A file that is now on the disk. */
export interface SavedFile {
  /** The file's own name, without its folder. */
  readonly name: string;
}

/** A backup of everything, to be kept without asking. */
export interface NewBackup {
  /** Answers in it. */
  readonly reviews: number;
  /** Whole runs in it; absent where there are none. */
  readonly runs?: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** An automatic backup, as its file's name tells, and of its runs the mark beside it. */
export interface KeptBackup {
  /** What `readBackup` wants. */
  readonly name: string;
  /** The day it was made on. Units: whole days since 1 January 1970. */
  readonly day: number;
  /** Answers in it. */
  readonly reviews: number;
  /** Whole runs in it; absent where there are none, or it is not known. */
  readonly runs?: number;
  /** When it was made. Units: milliseconds since 1970. */
  readonly madeAt: number;
}

/** What became of an automatic backup. */
export interface AutomaticBackupOutcome {
  /** False for an empty store, of which none is made. */
  readonly written: boolean;
  /** The newest earlier backup, where it holds more answers or runs than this one: a bad sign, to be said. */
  readonly fewerThan: KeptBackup | null;
}

/** What the store held when an automatic backup was last made. */
export interface LastKnown {
  readonly reviews: number;
  /** Absent where there were none, or it is not known. */
  readonly runs?: number;
  /** Units: milliseconds since 1970. */
  readonly at: number;
}

/** The folder that several machines see, for results; its own name, without where it is. */
export interface SharedFolderName {
  readonly name: string;
}

/** A file of results that was opened; whether its bytes are results is not known yet. */
export interface OpenedResults {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** What a menu asks of the window. */
export const MENU_COMMANDS = [
  "open-deck",
  "save-deck",
  "back-up",
  "restore",
  "print",
] as const;
/** See `MENU_COMMANDS`. */
export type MenuCommand = (typeof MENU_COMMANDS)[number];

/** What the shell tells the window without being asked. */
export type DesktopNews =
  /** The system gave the app a deck file: ask for it with `takeDeckFile`. */
  | { readonly kind: "deck-file-waiting" }
  | { readonly kind: "menu"; readonly command: MenuCommand }
  | { readonly kind: "full-screen"; readonly on: boolean };

/** Why a file was not read or written; `name` is its own name, `reason` the system's code for it. */
export type DesktopFileError =
  /** Its name has another ending than such files have. */
  | { readonly code: "wrong-ending"; readonly name: string }
  /** A folder, a device or the like. */
  | { readonly code: "not-a-file"; readonly name: string }
  | {
      readonly code: "file-too-large";
      readonly name: string;
      /** Units: bytes. */
      readonly most: number;
    }
  /** Its bytes are no UTF-8. */
  | { readonly code: "not-text"; readonly name: string }
  | {
      readonly code: "not-read";
      readonly name: string;
      readonly reason: string;
    }
  /** The disk, or this person's share of it, is full. */
  | { readonly code: "no-room"; readonly name: string }
  | {
      readonly code: "not-written";
      readonly name: string;
      readonly reason: string;
    }
  | { readonly code: "no-such-backup"; readonly name: string }
  /** No folder for results was chosen. */
  | { readonly code: "no-shared-folder"; readonly name: string }
  /** Not the name of such a file, or of another content. */
  | { readonly code: "not-results"; readonly name: string };

/**
 * Why the shell refused a message: it came from something else than our own
 * page, it is none that we know, or what was asked could not be done.
 */
export type DesktopError =
  | { readonly code: "foreign-sender" }
  | { readonly code: "unreadable-message"; readonly field: string }
  | { readonly code: "not-done"; readonly reason: string }
  | DesktopFileError;

/** The shell's answer to a question. */
export type DesktopAnswer<T> = Promise<Result<T, DesktopError>>;

/** The questions the window may ask. A dialog that was closed without a choice answers null. */
export interface DesktopBridge {
  info(): DesktopAnswer<DesktopInfo>;
  /** Shows the data folder in the system's file manager. */
  showDataFolder(): DesktopAnswer<null>;

  /** Lets the person choose a deck file, and reads it. */
  openDeckFile(): DesktopAnswer<OpenedDeckFile | null>;
  /** Lets the person choose where to write a deck's file; `title` proposes its name. */
  saveDeckFile(title: string, text: string): DesktopAnswer<SavedFile | null>;
  /** The next deck file that the system gave the app; null where none is waiting. */
  takeDeckFile(): DesktopAnswer<OpenedDeckFile | null>;

  /** Lets the person choose where to write a backup; `title` proposes its name. */
  saveBackup(
    title: string,
    bytes: Uint8Array<ArrayBuffer>,
  ): DesktopAnswer<SavedFile | null>;
  /** Lets the person choose a backup, and reads it. */
  openBackup(): DesktopAnswer<OpenedBackup | null>;
  /** Keeps a backup of everything in the data folder, beside those of the last days. */
  automaticBackup(backup: NewBackup): DesktopAnswer<AutomaticBackupOutcome>;
  /** The automatic backups there are, the newest first. */
  listBackups(): DesktopAnswer<readonly KeptBackup[]>;
  /** Reads one of them. */
  readBackup(name: string): DesktopAnswer<OpenedBackup>;
  /** What the store held last; null where it is not known to have held anything. */
  lastKnown(): DesktopAnswer<LastKnown | null>;
  /** The store is rightly empty: `lastKnown` answers null until the next backup. */
  forgetLastKnown(): DesktopAnswer<null>;

  /** Lets the person choose the folder for results, in the place of the one before. */
  chooseSharedFolder(): DesktopAnswer<SharedFolderName | null>;
  /** The folder that was chosen; null where there is none. */
  sharedFolder(): DesktopAnswer<SharedFolderName | null>;
  /** Forgets the folder; what is in it stays. */
  leaveSharedFolder(): DesktopAnswer<null>;
  /** The names of the files of results in it. */
  listShared(): DesktopAnswer<readonly string[]>;
  readShared(name: string): DesktopAnswer<OpenedResults>;
  /** Writes one, whole; its name is the digest of its bytes. */
  writeShared(
    name: string,
    bytes: Uint8Array<ArrayBuffer>,
  ): DesktopAnswer<SavedFile>;
  removeShared(name: string): DesktopAnswer<null>;

  /** Lets the person choose where to write the page as it stands, for paper. */
  printToPdf(title: string): DesktopAnswer<SavedFile | null>;
  setFullScreen(on: boolean): DesktopAnswer<null>;

  /** Hears what the shell tells, until the function that comes back is called. */
  onNews(listener: (news: DesktopNews) => void): () => void;
}
