/** The learners on this machine. */
import { type Learner, parseLearner } from "../../core/memory/learner";
import { ok, type Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import type { DamagedRow } from "./damaged-row";
import { practiceLockName } from "./locks";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

/** The learners that could be read, oldest first, and what could not. */
export interface Learners {
  readonly learners: readonly Learner[];
  readonly damaged: readonly DamagedRow[];
}

/**
 * All learners; on the very first start `first` is made one. Both in one
 * transaction, so that two windows that start together make one learner.
 */
export async function readLearners(
  database: TurnwiseDatabase,
  first: Learner,
): Promise<Result<Learners, StorageError>> {
  const read = await tryReading(() =>
    database.transaction("rw", database.learners, async () => {
      if ((await database.learners.count()) === 0)
        await database.learners.add({ ...first });
      return database.learners.toArray();
    }),
  );
  if (!read.ok) return read;
  const learners: Learner[] = [];
  const damaged: DamagedRow[] = [];
  for (const row of read.value) {
    const parsed = parseLearner(row);
    if (parsed.ok) learners.push(parsed.value);
    else
      damaged.push({
        table: "learners",
        key: String(row["id"]),
        field: parsed.error.field,
      });
  }
  learners.sort((a, b) => a.createdAt - b.createdAt || (a.id < b.id ? -1 : 1));
  return ok({ learners, damaged });
}

/** Adds a learner, or writes one again under another name. */
export function saveLearner(
  database: TurnwiseDatabase,
  learner: Learner,
): Promise<Result<string, StorageError>> {
  return tryWriting(() => database.learners.put({ ...learner }));
}

/** The settings' key of a learner. */
export function learnerSettingsKey(learner: string): string {
  return `learner:${learner}`;
}

/** The settings' key of the decks as a learner last saw them. */
export function decksSeenKey(learner: string): string {
  return `decks-seen:${learner}`;
}

/** The settings' key of what a learner shares from this machine. It is in no backup: another machine shares nothing by itself. */
export function sharingKey(learner: string): string {
  return `sharing:${learner}`;
}

/** The settings' key of a learner's last check, under way or over. */
export function checkKey(learner: string): string {
  return `check:${learner}`;
}

/** The keys of all settings that are one learner's: what goes with them when they go. */
export function ownSettingKeys(learner: string): readonly string[] {
  return [
    learnerSettingsKey(learner),
    decksSeenKey(learner),
    sharingKey(learner),
    checkKey(learner),
    practiceLockName(learner),
  ];
}

/**
 * Whether a learner has left anything beside their log: whole runs, readable
 * or not, or results that were shared under their id.
 */
export function hasRunsOrResults(
  { runs, heard }: TurnwiseDatabase,
  learner: string,
): Promise<Result<boolean, StorageError>> {
  return tryReading(async () => {
    // By filter, not by index: a damaged row may be missing in the index.
    for (const table of [runs, heard]) {
      const theirs = table.filter((row) => row["learner"] === learner);
      if ((await theirs.limit(1).count()) > 0) return true;
    }
    return false;
  });
}

/**
 * Deletes a learner with everything that is theirs: answers, blocks of
 * answers, rounds, whole runs, settings, and what was heard of them. What they
 * shared stays in the shared folder, unless they took it back before. The one
 * exception to the rule that history is never edited. One transaction: all of
 * it or nothing.
 */
export function deleteLearner(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<void, StorageError>> {
  const { learners, reviews, blocks, rounds, runs, settings, cache } = database;
  const { heard, classmates } = database;
  const tables = [learners, reviews, blocks, rounds, runs, settings, cache];
  return tryWriting(() =>
    database.transaction("rw", [...tables, heard, classmates], async () => {
      // By filter, not by index: a damaged row may be missing in the index.
      await reviews.filter((row) => row["learner"] === learner).delete();
      await blocks.filter((row) => row.learner === learner).delete();
      await cache.filter((row) => row["learner"] === learner).delete();
      await rounds.filter((row) => row["learner"] === learner).delete();
      await runs.filter((row) => row["learner"] === learner).delete();
      await heard.filter((row) => row["learner"] === learner).delete();
      await classmates.delete(learner);
      await settings.bulkDelete([...ownSettingKeys(learner)]);
      await learners.delete(learner);
    }),
  );
}
