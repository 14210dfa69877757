/** Reading and writing single settings, as values that their owner parses. */
import type { Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

/** What is stored under a key, or undefined; not yet parsed. */
export function readSetting(
  database: TurnwiseDatabase,
  key: string,
): Promise<Result<unknown, StorageError>> {
  return tryReading(async () => (await database.settings.get(key))?.value);
}

/** Stores a value under a key. Shape: a value the browser can clone. */
export async function saveSetting(
  database: TurnwiseDatabase,
  key: string,
  value: unknown,
): Promise<Result<void, StorageError>> {
  return tryWriting(async () => {
    await database.settings.put({ key, value });
  });
}

/**
 * Changes what is under a key: reads, changes and writes it in one
 * transaction, so that what another window stored meanwhile is built upon and
 * not written over. `change` gets what is stored, not yet parsed.
 */
export async function changeSetting(
  database: TurnwiseDatabase,
  key: string,
  change: (stored: unknown) => unknown,
): Promise<Result<void, StorageError>> {
  const { settings } = database;
  return tryWriting(() =>
    database.transaction("rw", settings, async () => {
      const stored: unknown = (await settings.get(key))?.value;
      await settings.put({ key, value: change(stored) });
    }),
  );
}

/**
 * Changes some fields of an object under a key and leaves its others as they
 * now are: another window may have changed those since they were read here.
 */
export function mergeSetting(
  database: TurnwiseDatabase,
  key: string,
  patch: Readonly<Record<string, unknown>>,
): Promise<Result<void, StorageError>> {
  return changeSetting(database, key, (stored) => {
    const fields = typeof stored === "object" ? stored : {};
    return { ...fields, ...patch };
  });
}
