/**
 * What a learner's log is told by without reading it: how many blocks, how
 * many loose answers, and the id of the newest of these.
 *
 * That is enough because a log only grows. An answer adds a loose row; sealing
 * turns a thousand of them into a block more; a restored backup adds loose
 * rows or blocks, wherever in the order of replay its answers belong, and so
 * changes a count though nothing is newer. What changes a log without changing
 * a count is a restore that mends a damaged answer, and a restore or an entry
 * of ticks that is taken back: they throw away what was computed
 * (`forgetComputed` in `cache.ts`).
 * The whole digest of `core/progress/packed-log.ts` would need the log: with
 * 8,000 answers of each of 40 learners the class page opens in 8.6 s where it
 * reads them, in 1 to 2 where it does not (bench `class`, on a busy machine).
 */
import { Dexie } from "dexie";
import type { Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import { type StorageError, tryReading } from "./storage-error";

/** The digests of learners' logs, in the order of the learners. */
export function readLogDigests(
  database: TurnwiseDatabase,
  learners: readonly string[],
): Promise<Result<readonly string[], StorageError>> {
  const { blocks, reviews } = database;
  return tryReading(() =>
    database.transaction("r", [blocks, reviews], () =>
      Promise.all(
        learners.map(async (learner) => {
          const from = [learner, Dexie.minKey];
          const to = [learner, Dexie.maxKey];
          const loose = () =>
            reviews.where("[learner+at]").between(from, to, true, true);
          const [sealed, count, [newest = ""]] = await Promise.all([
            blocks
              .where("[learner+number]")
              .between(from, to, true, true)
              .count(),
            loose().count(),
            loose().reverse().limit(1).primaryKeys(),
          ]);
          return `${sealed} ${count} ${newest}`;
        }),
      ),
    ),
  );
}
