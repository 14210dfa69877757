import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Milliseconds, Review } from "../../../core/memory/review";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import { deleteLearner } from "../../../renderer/storage/learners";
import { acknowledgeReview, readLog } from "../../../renderer/storage/reviews";
import { openRoundsOf, type RoundRow } from "../../../renderer/storage/rounds";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { sampleReview, TUESDAY_NINE } from "./sample-review";

const round: RoundRow = {
  id: crypto.randomUUID(),
  learner: "ann",
  savedAt: 1,
  round: { done: 0 },
  desk: {},
};

async function reviewsOf(
  database: TurnwiseDatabase,
  learner = "ann",
): Promise<readonly Review[]> {
  const log = await readLog(database, learner);
  if (!log.ok) throw new Error(log.error.code);
  return log.value.reviews;
}

/** A database that knows the learners of the samples. */
async function openWithLearners(): Promise<TurnwiseDatabase> {
  const database = await openTestDatabase();
  await database.learners.bulkAdd([{ id: "ann" }, { id: "ben" }]);
  return database;
}

beforeEach(forgetDatabases);

describe("an acknowledged answer", () => {
  it("is stored together with the round's advance, in one strict transaction", async () => {
    const transaction = vi.spyOn(IDBDatabase.prototype, "transaction");
    const database = await openWithLearners();
    transaction.mockClear();
    const review = sampleReview();
    const advanced = { ...round, savedAt: 2, round: { done: 1 } };
    expect(
      await acknowledgeReview(database, { review, round: advanced }),
    ).toEqual({ ok: true, value: review.id });
    const writing = transaction.mock.calls.filter(
      ([, mode]) => mode === "readwrite",
    );
    expect(writing).toEqual([
      [
        ["learners", "reviews", "rounds"],
        "readwrite",
        { durability: "strict" },
      ],
    ]);
    transaction.mockRestore();
    expect(await reviewsOf(database)).toEqual([review]);
    expect(await openRoundsOf(database, "ann")).toEqual({
      ok: true,
      value: { rows: [advanced], damaged: [] },
    });
  });

  it("is told only after its transaction has completed", async () => {
    const transaction = vi.spyOn(IDBDatabase.prototype, "transaction");
    const database = await openWithLearners();
    transaction.mockClear();
    await acknowledgeReview(database, { review: sampleReview() });
    const [written] = transaction.mock.results;
    transaction.mockRestore();
    if (written?.type !== "return") throw new Error("nothing was written");
    // Source: Indexed Database API 3.0, `objectStore()`: InvalidStateError
    // once the transaction has finished, and only then.
    expect(() => written.value.objectStore("reviews")).toThrow(
      expect.objectContaining({ name: "InvalidStateError" }),
    );
  });

  it("leaves neither review nor advance where the round cannot be written", async () => {
    const database = await openWithLearners();
    const unclonable = { ...round, desk: () => 0 };
    const outcome = await acknowledgeReview(database, {
      review: sampleReview(),
      round: unclonable,
    });
    expect(outcome).toEqual({
      ok: false,
      error: { code: "not-written", reason: "DataCloneError" },
    });
    expect(await reviewsOf(database)).toEqual([]);
    expect(await database.rounds.count()).toBe(0);
  });

  it("is refused once its learner is deleted, with nothing of theirs left behind", async () => {
    const database = await openWithLearners();
    await deleteLearner(database, "ann");
    expect(
      await acknowledgeReview(database, { review: sampleReview(), round }),
    ).toEqual({ ok: false, error: { code: "learner-gone" } });
    expect(await database.reviews.count()).toBe(0);
    expect(await database.rounds.count()).toBe(0);
  });

  it("that is sent again is stored once, as it was first", async () => {
    const database = await openWithLearners();
    const review = sampleReview();
    await acknowledgeReview(database, { review });
    const again = await acknowledgeReview(database, {
      review: { ...review, verdict: "missed" },
    });
    expect(again).toEqual({ ok: true, value: review.id });
    expect(await reviewsOf(database)).toEqual([review]);
  });
});

describe("the log", () => {
  it("is read in the order of replay, (at, id), and is one learner's", async () => {
    const database = await openWithLearners();
    const later = sampleReview({ at: (TUESDAY_NINE + 1) as Milliseconds });
    const b = sampleReview({ id: "b" });
    const a = sampleReview({ id: "a" });
    for (const review of [later, b, a, sampleReview({ learner: "ben" })])
      await acknowledgeReview(database, { review });
    expect(await reviewsOf(database)).toEqual([a, b, later]);
  });

  it("reports a damaged row with its place, keeps it, and reads all others", async () => {
    const database = await openWithLearners();
    const good = sampleReview();
    await acknowledgeReview(database, { review: good });
    const damaged = [
      { ...sampleReview({ id: "wrong case" }), case: "E99" },
      { ...sampleReview({ id: "no learner" }), learner: null },
      { ...sampleReview({ id: "wrong time" }), at: "yesterday" },
    ];
    for (const row of damaged) await database.reviews.put(row);
    const sealed = { ...sampleReview({ id: "sealed" }), verdict: "perhaps" };
    const alsoGood = sampleReview({ at: (TUESDAY_NINE - 1) as Milliseconds });
    await database.blocks.put({
      learner: "ann",
      number: 0,
      reviews: [alsoGood, sealed],
    });
    await database.blocks.bulkPut([{ learner: "ann", number: 1, reviews: [] }]);
    const log = await readLog(database, "ann");
    expect(log).toEqual({
      ok: true,
      value: {
        reviews: [alsoGood, good],
        damaged: [
          { table: "blocks", key: "0/1", field: "verdict" },
          // The table's own order: by id.
          { table: "reviews", key: "no learner", field: "learner" },
          { table: "reviews", key: "wrong case", field: "case" },
          { table: "reviews", key: "wrong time", field: "at" },
        ],
      },
    });
    // By the index the same answers, without the rows that it has lost.
    expect(await readLog(database, "ann", "indexed")).toMatchObject({
      value: {
        reviews: [alsoGood, good],
        damaged: [{ field: "verdict" }, { field: "case" }, { field: "at" }],
      },
    });
    for (const row of damaged)
      expect(await database.reviews.get(row.id)).toEqual(row);
  });

  it("reads a review that stands in a block and in the table once", async () => {
    const database = await openWithLearners();
    const review = sampleReview();
    await acknowledgeReview(database, { review });
    await database.blocks.put({
      learner: "ann",
      number: 0,
      reviews: [review],
    });
    expect(await reviewsOf(database)).toEqual([review]);
  });

  it("that the store no longer gives is an error with its code", async () => {
    const database = await openWithLearners();
    database.close();
    expect(await readLog(database, "ann")).toEqual({
      ok: false,
      error: { code: "closed" },
    });
  });
});
