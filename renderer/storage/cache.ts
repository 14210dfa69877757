/**
 * What was computed from a learner's log and may be thrown away: one row a
 * name, with the key of what it was computed from.
 */
import { Dexie } from "dexie";
import * as v from "valibot";
import { err, ok, type Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import {
  type StorageError,
  storageErrorFrom,
  tryReading,
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

/** The values that were kept under their keys, one for each entry, read at once; undefined as in `readCached`. */
export function readAllCached(
  { cache }: TurnwiseDatabase,
  entries: readonly CacheEntry[],
): Promise<Result<readonly unknown[], StorageError>> {
  return tryReading(async () => {
    const rows = await cache.bulkGet(
      entries.map(({ learner, name }): [string, string] => [learner, name]),
    );
    return entries.map(({ key }, i) => {
      const row = v.safeParse(ROW, rows[i]);
      return row.success && row.output.key === key
        ? row.output.value
        : undefined;
    });
  });
}

/** Throws away what was computed for learners whose logs were changed otherwise than by an answer. Call it inside a transaction over the cache. */
export async function forgetComputed(
  { cache }: Pick<TurnwiseDatabase, "cache">,
  learners: readonly string[],
): Promise<void> {
  for (const learner of learners)
    await cache
      .where("[learner+name]")
      .between([learner, Dexie.minKey], [learner, Dexie.maxKey], true, true)
      .delete();
}

/** Keeps a value in the place of the one before it; not for a learner who is neither here nor has shared anything. */
export async function saveCached(
  database: TurnwiseDatabase,
  { learner, name, key }: CacheEntry,
  value: unknown,
): Promise<Result<void, StorageError>> {
  const { learners, classmates, cache } = database;
  return tryWriting(() =>
    database.transaction("rw", [learners, classmates, cache], async () => {
      const heard = await classmates.get(learner);
      const isKnown =
        (await learners.get(learner)) !== undefined ||
        // Who was deleted here leaves a row that says so.
        (heard !== undefined && heard["leftOut"] !== true);
      if (isKnown) await cache.put({ learner, name, key, value });
    }),
  );
}
