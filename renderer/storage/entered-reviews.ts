/**
 * Answers entered for somebody else, many at once, and taken back again.
 *
 * The log is written once and never edited. What was just typed in under the
 * wrong name is no history yet, though: like a restore, an entry may be taken
 * out whole, by the ids that it added, as long as whoever made it has the list
 * of them in hand. Nothing that was answered in the app can be on that list.
 */
import { Dexie } from "dexie";
import type { Learner } from "../../core/memory/learner";
import type { Review } from "../../core/memory/review";
import { err, ok, type Result } from "../../core/result";
import { reviewsInBlock } from "./backup-survey";
import { forgetComputed } from "./cache";
import type { BlockRow, TurnwiseDatabase } from "./database";
import { ownSettingKeys } from "./learners";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

function blocksOf(
  { blocks }: TurnwiseDatabase,
  learner: string,
): Promise<BlockRow[]> {
  return blocks
    .where("[learner+number]")
    .between([learner, Dexie.minKey], [learner, Dexie.maxKey], true, true)
    .toArray();
}

function idOf(row: unknown): unknown {
  return typeof row === "object" && row !== null && "id" in row
    ? row.id
    : undefined;
}

/**
 * Stores answers of one learner in one strict transaction: all of them, or
 * none. Those whose id is there already stay as they are. `newcomer` is the
 * learner, where they are to be added if they are not here yet.
 *
 * Resolves with the ids that were added.
 * Errors: `learner-gone` where the learner was deleted meanwhile.
 */
export async function enterReviews(
  database: TurnwiseDatabase,
  learner: string,
  entered: readonly Review[],
  newcomer?: Learner,
): Promise<Result<readonly string[], StorageError>> {
  const { learners, reviews, blocks } = database;
  const stored = await tryWriting(() =>
    database.transaction("rw", [learners, reviews, blocks], async () => {
      if ((await learners.get(learner)) === undefined) {
        if (newcomer === undefined) return undefined;
        await learners.add({ ...newcomer });
      }
      const ids = entered.map(({ id }) => id);
      const loose = await reviews.bulkGet(ids);
      const known = new Set<unknown>(loose.map(idOf));
      for (const block of await blocksOf(database, learner))
        for (const row of reviewsInBlock(block) ?? []) known.add(idOf(row));
      const fresh = entered.filter(({ id }) => !known.has(id));
      await reviews.bulkAdd(fresh.map((review) => ({ ...review })));
      return fresh.map(({ id }) => id);
    }),
  );
  if (!stored.ok) return stored;
  return stored.value === undefined
    ? err({ code: "learner-gone" })
    : ok(stored.value);
}

/** Whether nothing of a learner's own is here: no answer, round, run or choice. */
async function hasNothing(
  database: TurnwiseDatabase,
  learner: string,
): Promise<boolean> {
  const { reviews, blocks, rounds, runs, settings } = database;
  // By filter, not by index: a damaged row may be missing in the index.
  const own = await Promise.all([
    reviews.filter((row) => row["learner"] === learner).count(),
    blocks.filter((row) => row.learner === learner).count(),
    rounds.filter((row) => row["learner"] === learner).count(),
    runs.filter((row) => row["learner"] === learner).count(),
    settings
      .where("key")
      .anyOf([...ownSettingKeys(learner)])
      .count(),
  ]);
  return own.every((count) => count === 0);
}

/**
 * Which of some answers are stored. Those that were sealed are not found: the
 * newest 200 of each learner never are.
 */
export function storedAmong(
  { reviews }: TurnwiseDatabase,
  ids: readonly string[],
): Promise<Result<ReadonlySet<string>, StorageError>> {
  return tryReading(
    async () => new Set(await reviews.where("id").anyOf(ids).primaryKeys()),
  );
}

/**
 * Takes entered answers out again, all in one transaction, also where sealing
 * has moved them into a block since. A newcomer whom the entry added goes with
 * it, unless something else of theirs is here by now; what was heard of them
 * stays.
 *
 * Shape: `ids` as `enterReviews` resolved with.
 */
export function takeBackReviews(
  database: TurnwiseDatabase,
  learner: string,
  ids: readonly string[],
  wasNewcomer = false,
): Promise<Result<void, StorageError>> {
  const { learners, reviews, blocks, rounds, runs, settings, cache } = database;
  const tables = [learners, reviews, blocks, rounds, runs, settings, cache];
  const gone = new Set<unknown>(ids);
  return tryWriting(() =>
    database.transaction("rw", tables, async () => {
      await reviews.bulkDelete([...ids]);
      for (const block of await blocksOf(database, learner)) {
        const rows = reviewsInBlock(block) ?? [];
        const rest = rows.filter((row) => !gone.has(idOf(row)));
        if (rest.length === rows.length) continue;
        if (rest.length === 0) await blocks.delete([learner, block.number]);
        else await blocks.put({ ...block, reviews: rest });
      }
      if (wasNewcomer && (await hasNothing(database, learner)))
        await learners.delete(learner);
      await forgetComputed(database, [learner]);
    }),
  );
}
