/**
 * Answers entered for somebody else, many at once, and taken back again.
 *
 * The log is written once and never edited. What was just typed in under the
 * wrong name is no history yet, though: like a restore, an entry may be taken
 * out whole, by the ids that it added, as long as whoever made it has the list
 * of them in hand. Nothing that was answered in the app can be on that list.
 */
import { Dexie } from "dexie";
import type { Review } from "../../core/memory/review";
import { err, ok, type Result } from "../../core/result";
import { reviewsInBlock } from "./backup-survey";
import { forgetComputed } from "./cache";
import type { BlockRow, TurnwiseDatabase } from "./database";
import { type StorageError, tryWriting } from "./storage-error";

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
 * none. Those whose id is there already stay as they are.
 *
 * Resolves with the ids that were added.
 * Errors: `learner-gone` where the learner was deleted meanwhile.
 */
export async function enterReviews(
  database: TurnwiseDatabase,
  learner: string,
  entered: readonly Review[],
): Promise<Result<readonly string[], StorageError>> {
  const { learners, reviews, blocks } = database;
  const stored = await tryWriting(() =>
    database.transaction("rw", [learners, reviews, blocks], async () => {
      if ((await learners.get(learner)) === undefined) return undefined;
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

/** Takes entered answers out again, all in one transaction, also where sealing has moved them into a block since. Shape: `ids` as `enterReviews` resolved with. */
export function takeBackReviews(
  database: TurnwiseDatabase,
  learner: string,
  ids: readonly string[],
): Promise<Result<void, StorageError>> {
  const { reviews, blocks, cache } = database;
  const gone = new Set<unknown>(ids);
  return tryWriting(() =>
    database.transaction("rw", [reviews, blocks, cache], async () => {
      await reviews.bulkDelete([...ids]);
      for (const block of await blocksOf(database, learner)) {
        const rows = reviewsInBlock(block) ?? [];
        const rest = rows.filter((row) => !gone.has(idOf(row)));
        if (rest.length === rows.length) continue;
        if (rest.length === 0) await blocks.delete([learner, block.number]);
        else await blocks.put({ ...block, reviews: rest });
      }
      await forgetComputed(database, [learner]);
    }),
  );
}
