/**
 * The review log in the store: written once, never edited.
 *
 * One row a review for the newest, blocks of a thousand for the rest: a
 * million single rows read in about 11 s, in blocks in about 3.
 */
import { Dexie } from "dexie";
import type { Review } from "../../core/memory/review";
import { parseReview } from "../../core/memory/review-schema";
import { inReplayOrder } from "../../core/memory/schedule";
import { err, ok, type Result } from "../../core/result";
import type { RawRow, TurnwiseDatabase } from "./database";
import type { DamagedRow } from "./damaged-row";
import type { RoundRow } from "./rounds";
import {
  type StorageError,
  storageErrorFrom,
  tryWriting,
} from "./storage-error";

/** An answer, and what it makes of the round it belongs to. */
export interface Acknowledgement {
  readonly review: Review;
  /** The round as it stands after the answer; absent for an answer outside a round. */
  readonly round?: RoundRow;
}

/**
 * Stores an answer and the round's advance in one strict transaction, and
 * resolves with the review's id once both are durable: that is
 * *acknowledged*, and only then may the page show the id.
 *
 * Idempotent: a review that is stored already stays as it is, so an answer
 * whose acknowledgement got lost can be sent again.
 * Errors: `learner-gone` where the learner was deleted meanwhile, so that
 *         nothing of theirs comes back.
 */
export async function acknowledgeReview(
  database: TurnwiseDatabase,
  { review, round }: Acknowledgement,
): Promise<Result<string, StorageError>> {
  const { learners, reviews, rounds } = database;
  const stored = await tryWriting(() =>
    // Resolves with the transaction's own completion, not with the last write.
    database.transaction("rw", [learners, reviews, rounds], async () => {
      if ((await learners.get(review.learner)) === undefined) return false;
      if ((await reviews.get(review.id)) === undefined)
        await reviews.add({ ...review });
      if (round !== undefined) await rounds.put({ ...round });
      return true;
    }),
  );
  if (!stored.ok) return stored;
  return stored.value ? ok(review.id) : err({ code: "learner-gone" });
}

/** A learner's log as far as it could be read. */
export interface StoredLog {
  /** In the order of replay, (at, id); each review once. */
  readonly reviews: readonly Review[];
  readonly damaged: readonly DamagedRow[];
}

/** All that belongs to a learner under an index of (learner, number). */
function ofLearner(learner: string): [[string, unknown], [string, unknown]] {
  return [
    [learner, Dexie.minKey],
    [learner, Dexie.maxKey],
  ];
}

interface RawLog {
  readonly sealed: readonly {
    readonly number: number;
    readonly reviews: unknown;
  }[];
  readonly loose: readonly RawRow[];
}

/** How a log's loose answers are found: all that may be this learner's, or those the index has. */
type LooseRows = "all" | "indexed";

async function readRawLog(
  database: TurnwiseDatabase,
  learner: string,
  looseRows: LooseRows,
): Promise<RawLog> {
  const { blocks, reviews } = database;
  return database.transaction("r", [blocks, reviews], async () => {
    const [from, to] = ofLearner(learner);
    const sealed = await blocks
      .where("[learner+number]")
      .between(from, to, true, true)
      .toArray();
    if (looseRows === "indexed") {
      const loose = await reviews
        .where("[learner+at]")
        .between(from, to, true, true)
        .toArray();
      return { sealed, loose };
    }
    // A scan, because a damaged learner or instant drops a row from the
    // indexes; sealing keeps this table short.
    const loose = await reviews
      .filter(
        (row) =>
          row["learner"] === learner || typeof row["learner"] !== "string",
      )
      .toArray();
    return { sealed, loose };
  });
}

/**
 * Reads a learner's whole log. What cannot be read is reported and left as it
 * is.
 *
 * Shape: `indexed` finds the same readable answers without looking at anybody
 *        else's, and does not report rows that the index has lost: for forty
 *        logs one after the other, where each scan would go through all the
 *        loose answers of everybody.
 */
export async function readLog(
  database: TurnwiseDatabase,
  learner: string,
  looseRows: LooseRows = "all",
): Promise<Result<StoredLog, StorageError>> {
  let raw: RawLog;
  try {
    raw = await readRawLog(database, learner, looseRows);
  } catch (thrown) {
    return err(storageErrorFrom(thrown, "read"));
  }
  const reviews: Review[] = [];
  const damaged: DamagedRow[] = [];
  const read = (row: unknown, table: DamagedRow["table"], key: string) => {
    const parsed = parseReview(row);
    if (parsed.ok) reviews.push(parsed.value);
    else damaged.push({ table, key, field: parsed.error.field });
  };
  for (const block of raw.sealed) {
    const key = String(block.number);
    if (Array.isArray(block.reviews))
      block.reviews.forEach((row, i) => read(row, "blocks", `${key}/${i}`));
    else damaged.push({ table: "blocks", key, field: "reviews" });
  }
  for (const row of raw.loose) read(row, "reviews", String(row["id"]));
  return ok({ reviews: inReplayOrder(reviews), damaged });
}
