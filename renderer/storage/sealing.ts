/**
 * Sealing: a learner's oldest loose reviews become one block, which is never
 * touched again. What a block holds is what the rows held, damage included.
 */
import { Dexie } from "dexie";
import type { Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import { type StorageError, tryWriting } from "./storage-error";

/** Reviews in a sealed block. */
export const BLOCK_SIZE = 1000;

/**
 * Reviews that stay loose behind a block: an answer that is sent again after
 * its acknowledgement got lost must still find itself in the table.
 */
export const KEPT_LOOSE = 200;

/** The number of the next block of a learner. Call it inside the transaction that adds the block. */
export async function nextBlockNumber(
  blocks: TurnwiseDatabase["blocks"],
  learner: string,
): Promise<number> {
  const last = await blocks
    .where("[learner+number]")
    .between([learner, Dexie.minKey], [learner, Dexie.maxKey], true, true)
    .last();
  return last === undefined ? 0 : last.number + 1;
}

/**
 * Seals as many whole blocks as a learner's loose reviews make, each in one
 * transaction of its own: a review is in exactly one of the two places at any
 * moment, whenever the machine stops. Resolves with the number of blocks made.
 */
export async function sealReviews(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<number, StorageError>> {
  const { blocks, reviews } = database;
  const sealOne = () =>
    database.transaction("rw", [blocks, reviews], async () => {
      const loose = reviews
        .where("[learner+at]")
        .between([learner, Dexie.minKey], [learner, Dexie.maxKey], true, true);
      if ((await loose.count()) < BLOCK_SIZE + KEPT_LOOSE) return false;
      // The index's order is that of replay: by instant, then by primary key.
      const oldest = await loose.limit(BLOCK_SIZE).toArray();
      const number = await nextBlockNumber(blocks, learner);
      await blocks.add({ learner, number, reviews: oldest });
      await reviews.bulkDelete(oldest.map((row) => String(row["id"])));
      return true;
    });
  return tryWriting(async () => {
    let made = 0;
    while (await sealOne()) made += 1;
    return made;
  });
}
