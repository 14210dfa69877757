/**
 * What was computed from a learner's log and may be thrown away: one row a
 * name, with the key of what it was computed from.
 */
import * as v from "valibot";
import { err, ok, type Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import {
  type StorageError,
  storageErrorFrom,
  tryWriting,
} from "./storage-error";

const ROW = v.object({ key: v.string(), value: v.unknown() });

/** What one wants to keep, for whom, and from what it was computed. */
export interface CacheEntry {
  readonly learner: string;
  readonly name: string;
  /** Changes with everything that the value depends on. */
  readonly key: string;
}

/** The value that was kept under the same key, not yet parsed; undefined where there is none. */
export async function readCached(
  { cache }: TurnwiseDatabase,
  { learner, name, key }: CacheEntry,
): Promise<Result<unknown, StorageError>> {
  try {
    const row = v.safeParse(ROW, await cache.get([learner, name]));
    return ok(
      row.success && row.output.key === key ? row.output.value : undefined,
    );
  } catch (thrown) {
    return err(storageErrorFrom(thrown, "read"));
  }
}

/** Keeps a value in the place of the one before it; not for a learner who is gone. */
export async function saveCached(
  database: TurnwiseDatabase,
  { learner, name, key }: CacheEntry,
  value: unknown,
): Promise<Result<void, StorageError>> {
  const { learners, cache } = database;
  return tryWriting(() =>
    database.transaction("rw", [learners, cache], async () => {
      if ((await learners.get(learner)) !== undefined)
        await cache.put({ learner, name, key, value });
    }),
  );
}
