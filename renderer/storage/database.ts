/**
 * The database: its tables, its versions, and how it is opened.
 *
 * Dexie over IndexedDB. Every write is *strict*: Chromium's default lets a
 * commit sit in the operating system's buffer for seconds, and an answer that
 * was acknowledged must survive a power cut.
 */
import { Dexie, type EntityTable, type Table } from "dexie";
import { err, ok, type Result } from "../../core/result";
import { type Locks, webLocks } from "../platform/web-locks";
import { type StorageError, storageErrorFrom } from "./storage-error";

/** Rows as they lie in the store: nothing in them is believed before it is parsed. */
export type RawRow = Readonly<Record<string, unknown>>;

/** A learner's oldest reviews, moved out of `reviews` and never touched again. */
export interface BlockRow extends RawRow {
  readonly learner: string;
  /** 0, 1, 2 … in the order of sealing. */
  readonly number: number;
  readonly reviews: readonly unknown[];
}

/** One entry of the settings table. */
export interface SettingsRow extends RawRow {
  readonly key: string;
  readonly value: unknown;
}

/** The name under which the browser keeps the database. */
export const DATABASE_NAME = "turnwise";

/**
 * Every published shape of the database, oldest first. A published one is
 * never edited: a change is a new version with its upgrade, and a test that
 * opens the shape before it.
 */
const VERSIONS = [
  {
    version: 1,
    stores: {
      learners: "id",
      decks: "id",
      reviews: "id, [learner+at], [learner+case+at]",
      blocks: "[learner+number]",
      rounds: "id, learner",
      settings: "key",
      cache: "[learner+name]",
    },
  },
  {
    version: 2,
    stores: {
      runs: "id, [learner+at]",
      sheets: "code",
      classmates: "id",
      heard: "id, learner",
    },
  },
] as const;

/** The newest version this program knows. */
export const DATABASE_VERSION = Math.max(
  ...VERSIONS.map(({ version }) => version),
);

/** The open database. Nothing outside this folder touches its tables. */
export class TurnwiseDatabase extends Dexie {
  declare readonly learners: Table<RawRow, string>;
  declare readonly decks: Table<RawRow, string>;
  declare readonly reviews: Table<RawRow, string>;
  declare readonly blocks: Table<BlockRow, [string, number]>;
  declare readonly rounds: Table<RawRow, string>;
  declare readonly settings: EntityTable<SettingsRow, "key">;
  declare readonly cache: Table<RawRow, [string, string]>;
  /** Whole runs: written once, never edited. */
  declare readonly runs: Table<RawRow, string>;
  /** Sheets that were printed here, by the code that stands on them. */
  declare readonly sheets: Table<RawRow, string>;
  /** Who shared results with this machine, by the learner's id. */
  declare readonly classmates: Table<RawRow, string>;
  /** Blocks of results that others shared, by the digest of what is in them. */
  declare readonly heard: Table<RawRow, string>;

  constructor(name: string) {
    super(name, { chromeTransactionDurability: "strict", autoOpen: false });
    for (const { version, stores } of VERSIONS)
      this.version(version).stores(stores);
  }
}

/** What an open database tells its window. */
export interface DatabaseEvents {
  /**
   * Another window still has an older shape open, or waits itself for one that
   * has; opening waits for it.
   */
  readonly onBlocked?: () => void;
  /** The database was closed under us: ask for a reload. */
  readonly onClosed?: () => void;
}

/** So long a window waits for another that opens the store before it says so. Units: milliseconds. */
const PATIENCE = 1500;

/** Dexie multiplies versions by ten in the browser's own numbering. */
const NATIVE_FACTOR = 10;

async function storedVersion(name: string): Promise<number> {
  const stored = await indexedDB.databases();
  const version = stored.find((database) => database.name === name)?.version;
  return version === undefined ? 0 : Math.floor(version / NATIVE_FACTOR);
}

async function openUnderLock(
  name: string,
  events: DatabaseEvents,
): Promise<Result<TurnwiseDatabase, StorageError>> {
  try {
    // Asked before opening: the library would open a newer shape and add to it.
    const version = await storedVersion(name);
    if (version > DATABASE_VERSION)
      return err({ code: "newer-version", version });
    const database = new TurnwiseDatabase(name);
    database.on("blocked", () => events.onBlocked?.());
    database.on("versionchange", () => {
      database.close();
      events.onClosed?.();
      // Ends the library's own handling, which would open again by itself.
      return false;
    });
    database.on("close", () => events.onClosed?.());
    await database.open();
    return ok(database);
  } catch (thrown) {
    return err(storageErrorFrom(thrown, "read"));
  }
}

/**
 * Opens the database, bringing an older shape up to date.
 *
 * The exclusive lock `data` is held meanwhile: only one window migrates, and
 * no other reads half of it. A browser without Web Locks has one window's
 * word for it.
 */
export async function openDatabase(
  events: DatabaseEvents = {},
  locks: Locks | undefined = webLocks(),
  name: string = DATABASE_NAME,
): Promise<Result<TurnwiseDatabase, StorageError>> {
  if (typeof indexedDB === "undefined")
    return err({ code: "unavailable", reason: "no IndexedDB" });
  const open = () => openUnderLock(name, events);
  if (locks === undefined) return open();
  // Of several windows that come while an old one holds on, the first alone is
  // told so by the browser: the others would wait for it on an empty page.
  const waiting = setTimeout(() => events.onBlocked?.(), PATIENCE);
  return locks.request("data", { mode: "exclusive" }, () => {
    clearTimeout(waiting);
    return open();
  });
}
