// @vitest-environment node
import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { ANN } from "../../core/backup/sample-backup";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import { undoRestore } from "../../../renderer/storage/last-restore";
import { previewRestore, restore } from "../../../renderer/storage/restore";
import { acknowledgeReview, readLog } from "../../../renderer/storage/reviews";
import { saveRound } from "../../../renderer/storage/rounds";
import { saveSetting } from "../../../renderer/storage/settings";
import { writeBackup } from "../../../renderer/storage/write-backup";
import { backedUp, contentsOf, dumpOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { sampleDeckRow } from "./sample-deck-row";
import { sampleReview, sampleReviews } from "./sample-review";

const CHOICE = {
  learners: [ANN.id],
  decks: "new",
  ofClass: true,
  nameless: "",
  now: 1,
} as const;

/**
 * The disk is full from the n-th write on: the request fails, and with it its
 * transaction, as the browser does it.
 *
 * Source: Indexed Database API 3.0, "QuotaExceededError" and "abort a
 *         transaction".
 */
function fullFromWrite(n: number): { readonly writes: () => number } {
  let writes = 0;
  for (const method of ["put", "add"] as const) {
    const real = Reflect.get(IDBObjectStore.prototype, method) as (
      ...told: unknown[]
    ) => IDBRequest;
    vi.spyOn(IDBObjectStore.prototype, method).mockImplementation(function (
      this: IDBObjectStore,
      ...told
    ) {
      writes += 1;
      if (writes >= n) {
        // What fails when it is committed fails all that came before it.
        this.transaction.abort();
        throw new DOMException("no room", "QuotaExceededError");
      }
      return real.apply(this, told) as IDBRequest<IDBValidKey>;
    });
  }
  return { writes: () => writes };
}

async function storeOfAnn(reviews = 3): Promise<TurnwiseDatabase> {
  const database = await openTestDatabase();
  await database.learners.put({ ...ANN });
  await database.reviews.bulkPut(
    sampleReviews(reviews, { learner: ANN.id }).map((one) => ({ ...one })),
  );
  return database;
}

async function backupOfAnn(reviews: number) {
  const database = await storeOfAnn(reviews);
  await database.decks.put(sampleDeckRow("club"));
  const contents = await contentsOf(await backedUp(database));
  database.close();
  await forgetDatabases();
  return contents;
}

const FULL = { ok: false, error: { code: "full" } };

beforeEach(forgetDatabases);
afterEach(() => {
  vi.restoreAllMocks();
});

describe("a full disk", () => {
  it("while answering keeps neither the answer nor the round's advance, and the next try works", async () => {
    const database = await storeOfAnn();
    const round = { id: "r", learner: ANN.id, savedAt: 1, round: {}, desk: {} };
    const before = await dumpOf(database);
    const review = sampleReview({ learner: ANN.id });
    for (const write of [1, 2]) {
      fullFromWrite(write);
      expect(await acknowledgeReview(database, { review, round })).toEqual(
        FULL,
      );
      vi.restoreAllMocks();
      expect(await dumpOf(database)).toEqual(before);
    }
    expect((await acknowledgeReview(database, { review, round })).ok).toBe(
      true,
    );
  });

  it("while a round or a setting is kept says so", async () => {
    const database = await storeOfAnn();
    const round = { id: "r", learner: ANN.id, savedAt: 1, round: {}, desk: {} };
    fullFromWrite(1);
    expect(await saveRound(database, round)).toEqual(FULL);
    expect(await saveSetting(database, "a", 1)).toEqual(FULL);
  });

  it("at any moment of a restore leaves everything as it was", async () => {
    const contents = await backupOfAnn(1205);
    const database = await storeOfAnn();
    const before = await dumpOf(database);
    const { writes } = fullFromWrite(Infinity);
    await restore(database, contents, CHOICE);
    const all = writes();
    vi.restoreAllMocks();
    await undoRestore(database);
    expect(await dumpOf(database)).toEqual(before);
    // A block, 205 loose answers, a deck, the word of the restore.
    expect(all).toBe(1 + 205 + 1 + 1);
    for (const write of [1, 2, 100, all - 1, all]) {
      fullFromWrite(write);
      expect(await restore(database, contents, CHOICE)).toEqual(FULL);
      vi.restoreAllMocks();
      expect(await dumpOf(database)).toEqual(before);
    }
  });

  it("while a restore is taken back leaves the restore", async () => {
    const contents = await backupOfAnn(5);
    const database = await storeOfAnn();
    const torn = { ...sampleReview({ learner: ANN.id }), verdict: "?" };
    const [id = ""] = contents.reviews.keys();
    await database.reviews.put({ ...torn, id });
    await restore(database, contents, CHOICE);
    const before = await dumpOf(database);
    fullFromWrite(1);
    expect(await undoRestore(database)).toEqual(FULL);
    vi.restoreAllMocks();
    expect(await dumpOf(database)).toEqual(before);
  });

  it("stops nobody from reading, or from making a backup", async () => {
    const database = await storeOfAnn();
    fullFromWrite(1);
    const log = await readLog(database, ANN.id);
    expect(log.ok && log.value.reviews.length).toBe(3);
    expect((await writeBackup(database, { madeAt: 1 })).ok).toBe(true);
  });
});

describe("a store that is closed", () => {
  it("is told as such by all that has to do with backups", async () => {
    const contents = await backupOfAnn(2);
    const database = await storeOfAnn();
    database.close();
    const closed = { ok: false, error: { code: "closed" } };
    expect(await previewRestore(database, contents)).toEqual(closed);
    expect(await restore(database, contents, CHOICE)).toEqual(closed);
    expect(await undoRestore(database)).toEqual(closed);
  });
});

describe("a store damaged by hand", () => {
  it("gives out all that can be read, and the rest as it is, into a fresh store", async () => {
    const damaged = await storeOfAnn(20);
    const rows = await damaged.reviews.toArray();
    for (const [i, row] of rows.slice(0, 5).entries())
      await damaged.reviews.put({
        ...row,
        [Object.keys(row)[i + 4] ?? ""]: {},
      });
    await damaged.settings.put({ key: `learner:${ANN.id}`, value: 7 });
    await damaged.blocks.put({
      learner: ANN.id,
      number: 0,
      reviews: {} as unknown as [],
    });
    const told = await readLog(damaged, ANN.id);
    const contents = await contentsOf(await backedUp(damaged));
    const lost = (await damaged.reviews.toArray()).filter(
      ({ id }) => !contents.reviews.has(String(id)),
    );
    damaged.close();
    await forgetDatabases();
    expect(contents.reviews.size).toBe(15);
    expect(told.ok && told.value.damaged).toHaveLength(6);
    const database = await openTestDatabase();
    expect(await restore(database, contents, CHOICE)).toMatchObject({
      ok: true,
      value: { learners: 1, reviews: 15, damaged: lost.length },
    });
    for (const row of lost)
      expect(await database.reviews.get(String(row["id"]))).toEqual(row);
  });
});
