/**
 * What is done for each message, once it was read. All that only Electron can
 * do stands on the desk that is handed in.
 */
import type {
  DesktopAnswer,
  DesktopFileError,
  OpenedDeckFile,
  SavedFile,
} from "../core/desktop-bridge";
import { basename } from "node:path";
import { MAX_BACKUP_BYTES } from "../core/desktop-bridge";
import { err, ok, type Result } from "../core/result";
import { BACKUP_KIND, type BackupFolder } from "./backup-folder";
import { DECK_FILE_KIND, type DeckInbox } from "./deck-files";
import {
  type FileDialogs,
  type FileKind,
  hasEndingOf,
  saveByDialog,
} from "./file-dialogs";
import type { Message, MessageKind, MessageOf, Replies } from "./messages";
import type { SharedFolder } from "./shared-folder";
import { readWholeFile } from "./whole-files";

/** What the answers are made with. */
export interface Desk {
  readonly version: string;
  /** Where this person's data lives, an absolute path. */
  readonly dataFolder: string;
  readonly dialogs: FileDialogs;
  readonly inbox: DeckInbox;
  readonly backups: BackupFolder;
  readonly shared: SharedFolder;
  /** Reads a deck file and remembers it as a recent one. */
  readonly readDeck: (
    path: string,
  ) => Promise<Result<OpenedDeckFile, DesktopFileError>>;
  /** Remembers a deck file as a recent one. */
  readonly rememberDeck: (path: string) => void;
  /** Shows a folder in the file manager; the reason where it cannot, or nothing. */
  readonly showFolder: (path: string) => Promise<string>;
  /** The page as it stands, as a PDF. */
  readonly printPage: () => Promise<Uint8Array>;
  readonly setFullScreen: (on: boolean) => void;
}

/** Printed pages, as dialogs name them. */
export const PDF_KIND: FileKind = { words: "PDF", endings: ["pdf"] };

type Answers = {
  readonly [Kind in MessageKind]: (
    desk: Desk,
    message: MessageOf<Kind>,
  ) => DesktopAnswer<Replies[Kind]>;
};

const ANSWERS: Answers = {
  info: ({ version, dataFolder }) =>
    Promise.resolve(ok({ version, dataFolder })),
  "show-data-folder": async ({ showFolder, dataFolder }) => {
    const reason = await showFolder(dataFolder);
    return reason === "" ? ok(null) : err({ code: "not-done", reason });
  },
  "open-deck-file": async ({ dialogs, readDeck }) => {
    const path = await dialogs.placeToOpen(DECK_FILE_KIND);
    return path === undefined ? ok(null) : readDeck(path);
  },
  "save-deck-file": async ({ dialogs, rememberDeck }, { title, text }) => {
    const bytes = new TextEncoder().encode(text);
    const saved = await saveByDialog(dialogs, DECK_FILE_KIND, title, bytes);
    if (saved.ok && saved.value !== null) rememberDeck(saved.value);
    return nameOf(saved);
  },
  "take-deck-file": ({ inbox }) => inbox.take(),
  "save-backup": async ({ dialogs }, { title, bytes }) =>
    nameOf(await saveByDialog(dialogs, BACKUP_KIND, title, bytes)),
  "open-backup": async ({ dialogs }) => {
    const path = await dialogs.placeToOpen(BACKUP_KIND);
    if (path === undefined) return ok(null);
    const name = basename(path);
    if (!hasEndingOf(BACKUP_KIND, path))
      return err({ code: "wrong-ending", name });
    const bytes = await readWholeFile(path, MAX_BACKUP_BYTES);
    return bytes.ok ? ok({ name, bytes: bytes.value }) : bytes;
  },
  "automatic-backup": ({ backups }, { reviews, runs, bytes }) =>
    backups.keep(reviews, bytes, runs),
  "list-backups": async ({ backups }) => ok(await backups.list()),
  "read-backup": ({ backups }, { name }) => backups.read(name),
  "last-known": async ({ backups }) => ok(await backups.lastKnown()),
  "forget-last-known": ({ backups }) => backups.forget(),
  "choose-shared-folder": async ({ dialogs, shared }) => {
    const path = await dialogs.folderToShare();
    return path === undefined ? ok(null) : shared.choose(path);
  },
  "shared-folder": async ({ shared }) => ok(await shared.chosen()),
  "leave-shared-folder": async ({ shared }) => {
    await shared.leave();
    return ok(null);
  },
  "list-shared": ({ shared }) => shared.list(),
  "read-shared": ({ shared }, { name }) => shared.read(name),
  "write-shared": ({ shared }, { name, bytes }) => shared.write(name, bytes),
  "remove-shared": ({ shared }, { name }) => shared.remove(name),
  "print-to-pdf": async ({ dialogs, printPage }, { title }) =>
    nameOf(await saveByDialog(dialogs, PDF_KIND, title, await printPage())),
  "set-full-screen": ({ setFullScreen }, { on }) => {
    setFullScreen(on);
    return Promise.resolve(ok(null));
  },
};

/** The window gets a file's name and never its path. */
function nameOf(
  saved: Result<string | null, DesktopFileError>,
): Result<SavedFile | null, DesktopFileError> {
  if (!saved.ok) return saved;
  return ok(saved.value === null ? null : { name: basename(saved.value) });
}

/**
 * Does what a message asks.
 *
 * Errors: those of what was asked; `not-done` for whatever was thrown, which
 *         is handed to `unforeseen` as well.
 */
export async function answerMessage(
  desk: Desk,
  message: Message,
  unforeseen: (error: unknown) => void,
): DesktopAnswer<Replies[MessageKind]> {
  try {
    return await answerOf(message.kind, desk, message);
  } catch (error) {
    unforeseen(error);
    return err({ code: "not-done", reason: String(error) });
  }
}

/** The row of the table and the message are of one kind; only so does the compiler see it. */
function answerOf<Kind extends MessageKind>(
  kind: Kind,
  desk: Desk,
  message: MessageOf<Kind>,
): DesktopAnswer<Replies[Kind]> {
  return ANSWERS[kind](desk, message);
}
