/** Stores to restore into, and what is restored. */
import { expect } from "vitest";
import { ANN, BEN } from "../../core/backup/sample-backup";
import type { Review } from "../../../core/memory/review";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import {
  previewRestore,
  type RestoreChoice,
} from "../../../renderer/storage/restore";
import type { RestorePlan } from "../../../renderer/storage/restore-plan";
import { readLog } from "../../../renderer/storage/reviews";
import { backedUp, contentsOf, dumpOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { sampleDeckRow } from "./sample-deck-row";
import { sampleReviews } from "./sample-review";

/** Everything of a file, but decks that are here. */
export const CHOICE: RestoreChoice = {
  learners: [ANN.id, BEN.id],
  decks: "new",
  ofClass: true,
  nameless: "From a backup",
  now: 9,
};

/** Six answers of Ann's. */
export const REVIEWS = sampleReviews(6, { learner: ANN.id });

/** Puts answers into a store as they are. */
export async function addRows(
  database: TurnwiseDatabase,
  reviews: readonly Review[],
): Promise<void> {
  await database.reviews.bulkPut(reviews.map((review) => ({ ...review })));
}

/** A store with Ann, her settings and some answers. */
export async function storeOfAnn(
  reviews: readonly Review[] = REVIEWS,
): Promise<TurnwiseDatabase> {
  const database = await openTestDatabase();
  await database.learners.put({ ...ANN });
  await database.settings.put({
    key: `learner:${ANN.id}`,
    value: { hold: "down" },
  });
  await addRows(database, reviews);
  return database;
}

/** What a store holds, as a backup; the store is forgotten. */
export async function asBackup(fill: () => Promise<TurnwiseDatabase>) {
  const database = await fill();
  const contents = await contentsOf(await backedUp(database));
  database.close();
  await forgetDatabases();
  return contents;
}

/** What a restore would bring, which changes nothing. */
export async function planOf(
  database: TurnwiseDatabase,
  contents: Parameters<typeof previewRestore>[1],
): Promise<RestorePlan> {
  const before = await dumpOf(database);
  const preview = await previewRestore(database, contents);
  if (!preview.ok) throw new Error(preview.error.code);
  expect(await dumpOf(database)).toEqual(before);
  return preview.value;
}

/** A learner's answers as they are read. */
export async function logOf(database: TurnwiseDatabase, learner = ANN.id) {
  const log = await readLog(database, learner);
  if (!log.ok) throw new Error(log.error.code);
  return log.value;
}

/** A coach's own deck. */
export const CLUB_ID = "5c0de1f0-96b4-4a3e-8a0b-2f6f0d9b7e55";
/** Its row. */
export const CLUB_DECK = sampleDeckRow("Tuesday club", CLUB_ID);

/** What a restore that brought nothing says. */
export const NOTHING = {
  learners: 0,
  reviews: 0,
  shown: 0,
  repaired: 0,
  damaged: 0,
  runs: 0,
  decksAdded: 0,
  decksReplaced: 0,
  sheets: 0,
  people: 0,
};
