/**
 * The decks that were opened or saved last, for the menu.
 *
 * A list of our own, since the systems' lists (which are told too) cannot be
 * read back. The file is outside input, as every file in the data folder is.
 */
import { readFileSync } from "node:fs";
import { isAbsolute } from "node:path";
import * as v from "valibot";
import { err, ok, type Result } from "../core/result";
import { DECK_FILE_KIND } from "./deck-files";
import { hasEndingOf } from "./file-dialogs";
import { writeWholeFile } from "./whole-files";

/** How many are kept. */
export const MOST_RECENT_DECKS = 8;

/** Why a kept list cannot be read, and the field that is wrong. */
export type RecentDecksError =
  | { readonly code: "not-json" }
  | { readonly code: "not-recent-decks"; readonly field: string };

const deckPath = v.pipe(
  v.string(),
  v.maxLength(4096),
  v.check(isAbsolute),
  v.check((path) => hasEndingOf(DECK_FILE_KIND, path)),
);

const listSchema = v.object({
  decks: v.pipe(v.array(deckPath), v.maxLength(MOST_RECENT_DECKS)),
});

/** Reads a kept list: absolute paths, the newest first. */
export function parseRecentDecks(
  text: string,
): Result<readonly string[], RecentDecksError> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return err({ code: "not-json" });
  }
  const list = v.safeParse(listSchema, value);
  if (list.success) return ok(list.output.decks);
  return err({
    code: "not-recent-decks",
    field: v.getDotPath(list.issues[0]) ?? "",
  });
}

/** Writes a list in the form that `parseRecentDecks` reads. */
export function formatRecentDecks(decks: readonly string[]): string {
  return `${JSON.stringify({ decks })}\n`;
}

/** The list with a deck at its head. */
export function withRecentDeck(
  decks: readonly string[],
  path: string,
): readonly string[] {
  const others = decks.filter((deck) => deck !== path);
  return [path, ...others].slice(0, MOST_RECENT_DECKS);
}

/** The list and its file. */
export interface RecentDecks {
  /** Absolute paths, the newest first. */
  list(): readonly string[];
  add(path: string): Promise<void>;
  clear(): Promise<void>;
}

/** The list that a file keeps; `changed` is called after every change. */
export function recentDecks(file: string, changed: () => void): RecentDecks {
  let decks = readList(file);
  let writing = Promise.resolve();
  function keep(next: readonly string[]): Promise<void> {
    decks = next;
    changed();
    // One after the other, or an older list could be the last to be written.
    writing = writing.then(() => write(next));
    return writing;
  }
  async function write(next: readonly string[]): Promise<void> {
    const text = new TextEncoder().encode(formatRecentDecks(next));
    const written = await writeWholeFile(file, text);
    // The menu has it; no more is lost than the list, at the next start.
    if (!written.ok)
      console.warn(`Recent decks were not kept (${written.error.code}).`);
  }
  return {
    list: () => decks,
    add: (path) => keep(withRecentDeck(decks, path)),
    clear: () => keep([]),
  };
}

function readList(file: string): readonly string[] {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    // The first start has no file; one that cannot be read is as good as none.
    return [];
  }
  const list = parseRecentDecks(text);
  if (list.ok) return list.value;
  console.warn(`${file} is not used (${list.error.code}).`);
  return [];
}
