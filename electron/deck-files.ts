/**
 * Deck files on their way to the window: from a dialog, from the list of
 * recent ones, or from the system's "open with", which reaches the app as
 * words of the command line, as the words of a second start, or (macOS) as an
 * event that may come before there is a window.
 *
 * The window is told that one waits and asks for its text, so that none is
 * lost while the page loads. What the text says is the window's to judge: it
 * alone knows decks.
 */
import { basename, isAbsolute, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { MAX_DECK_FILE_LENGTH } from "../core/deck/deck-file";
import type { DesktopFileError, OpenedDeckFile } from "../core/desktop-bridge";
import { err, ok, type Result } from "../core/result";
import { type FileKind, hasEndingOf } from "./file-dialogs";
import { readWholeFile } from "./whole-files";

/** Deck files, and JSON written by hand. */
export const DECK_FILE_KIND: FileKind = {
  words: "Decks",
  endings: ["turnwise-deck", "json"],
};

/** The largest deck file. Units: bytes; a UTF-16 unit of its text is at most three of them, and a mark at the beginning makes up the rest. */
export const MAX_DECK_FILE_BYTES = MAX_DECK_FILE_LENGTH * 4;

/** How many files may wait at a time: more were hardly meant. */
export const MOST_WAITING = 20;

/**
 * Reads a deck file's text.
 *
 * Errors: `wrong-ending`, `not-a-file`, `file-too-large`, `not-read`,
 *         `not-text`.
 */
export async function readDeckFile(
  path: string,
): Promise<Result<OpenedDeckFile, DesktopFileError>> {
  const name = basename(path);
  if (!hasEndingOf(DECK_FILE_KIND, path))
    return err({ code: "wrong-ending", name });
  const bytes = await readWholeFile(path, MAX_DECK_FILE_BYTES);
  if (!bytes.ok) return bytes;
  const text = textOf(bytes.value);
  return text === undefined
    ? err({ code: "not-text", name })
    : ok({ name, text });
}

/** A mark at the beginning stays: the deck's reader takes it. */
function textOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(
      bytes,
    );
  } catch {
    return undefined;
  }
}

/**
 * The deck files among the words of a command line, as absolute paths.
 *
 * Shape: `folder` is where the command was given. Options are left out, and
 *        so is the program itself, which has no deck's ending. Some Linux
 *        desktops give addresses of files in place of paths.
 */
export function deckFilesIn(
  words: readonly string[],
  folder: string,
): readonly string[] {
  return words
    .filter((word) => !word.startsWith("-"))
    .map((word) => pathOfWord(word, folder))
    .filter((path) => path !== undefined)
    .filter((path) => hasEndingOf(DECK_FILE_KIND, path));
}

function pathOfWord(word: string, folder: string): string | undefined {
  // Three slashes: a file of this machine.
  if (/^file:\/\/\//i.test(word)) {
    try {
      return fileURLToPath(word);
    } catch {
      return undefined;
    }
  }
  return isAbsolute(word) ? word : resolve(folder, word);
}

/** The deck files that wait for the window. */
export interface DeckInbox {
  add(paths: readonly string[]): void;
  /** The next one, read; null where none waits. */
  take(): Promise<Result<OpenedDeckFile | null, DesktopFileError>>;
}

/** An empty inbox; `told` is called when something was put in. */
export function deckInbox(
  told: () => void,
  read: typeof readDeckFile = readDeckFile,
): DeckInbox {
  const paths: string[] = [];
  return {
    add(given) {
      if (given.length === 0) return;
      paths.push(...given.slice(0, MOST_WAITING - paths.length));
      told();
    },
    async take() {
      const next = paths.shift();
      return next === undefined ? ok(null) : read(next);
    },
  };
}
