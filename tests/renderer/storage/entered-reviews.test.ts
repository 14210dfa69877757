import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import {
  enterReviews,
  takeBackReviews,
} from "../../../renderer/storage/entered-reviews";
import { acknowledgeReview, readLog } from "../../../renderer/storage/reviews";
import {
  BLOCK_SIZE,
  KEPT_LOOSE,
  sealReviews,
} from "../../../renderer/storage/sealing";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { sampleReview, sampleReviews } from "./sample-review";

beforeEach(forgetDatabases);

async function withAnn(): Promise<TurnwiseDatabase> {
  const database = await openTestDatabase();
  await database.learners.put({ id: "ann", name: "Ann", createdAt: 0 });
  return database;
}

const ids = (reviews: readonly { readonly id: string }[]) =>
  reviews.map(({ id }) => id);

async function logged(database: TurnwiseDatabase) {
  const log = await readLog(database, "ann");
  if (!log.ok) throw new Error(log.error.code);
  return log.value.reviews;
}

describe("entered answers", () => {
  it("are all stored, those that are there already left as they are", async () => {
    const database = await withAnn();
    const reviews = sampleReviews(5);
    const [first, second] = reviews;
    if (first === undefined || second === undefined) throw new Error("five");
    await acknowledgeReview(database, { review: first });
    await database.blocks.put({
      learner: "ann",
      number: 0,
      reviews: [{ ...second }],
    });
    const again = reviews.map((one) => ({
      ...one,
      verdict: "missed" as const,
    }));
    expect(await enterReviews(database, "ann", again)).toEqual({
      ok: true,
      value: ids(reviews.slice(2)),
    });
    expect(await logged(database)).toEqual([first, second, ...again.slice(2)]);
    expect(await enterReviews(database, "ann", again)).toEqual({
      ok: true,
      value: [],
    });
  });

  it("of a learner who was deleted are refused", async () => {
    const database = await openTestDatabase();
    expect(await enterReviews(database, "ann", sampleReviews(2))).toEqual({
      ok: false,
      error: { code: "learner-gone" },
    });
    expect(await database.reviews.count()).toBe(0);
  });

  it("are stored all or none, and taken back all or none", async () => {
    const database = await withAnn();
    const reviews = sampleReviews(3);
    const full = new DOMException("no room", "QuotaExceededError");
    const failing = vi
      .spyOn(IDBObjectStore.prototype, "add")
      .mockImplementationOnce(function (this: IDBObjectStore, value: unknown) {
        failing.mockRestore();
        this.add(value);
        throw full;
      });
    const entered = await enterReviews(database, "ann", reviews);
    failing.mockRestore();
    expect(entered.ok).toBe(false);
    expect(await database.reviews.count()).toBe(0);
    await enterReviews(database, "ann", reviews);
    database.close();
    expect(await takeBackReviews(database, "ann", ids(reviews))).toEqual({
      ok: false,
      error: { code: "closed" },
    });
    await database.open();
    expect(await logged(database)).toEqual(reviews);
  });
});

describe("taking an entry back", () => {
  it("leaves the log as it was, also after sealing moved the answers into a block", async () => {
    const database = await withAnn();
    const own = sampleReviews(BLOCK_SIZE + KEPT_LOOSE);
    for (const review of own.slice(0, 3))
      await acknowledgeReview(database, { review });
    await database.reviews.bulkPut(own.slice(3).map((one) => ({ ...one })));
    const early = (own[0]?.at ?? 0) - 1000;
    const entered = sampleReviews(4).map((one, i) => ({
      ...one,
      at: (early - i) as typeof one.at,
    }));
    await enterReviews(database, "ann", entered);
    expect(await sealReviews(database, "ann")).toEqual({ ok: true, value: 1 });
    expect(await database.reviews.bulkGet(ids(entered))).toEqual(
      entered.map(() => undefined),
    );
    expect(await takeBackReviews(database, "ann", ids(entered))).toEqual({
      ok: true,
      value: undefined,
    });
    expect(await logged(database)).toEqual(own);
  });

  it("touches nobody else's, and leaves no empty block", async () => {
    const database = await withAnn();
    const entered = sampleReviews(2);
    const bens = sampleReview({ learner: "ben" });
    await database.blocks.bulkPut([
      {
        learner: "ann",
        number: 0,
        reviews: entered.map((one) => ({ ...one })),
      },
      { learner: "ben", number: 0, reviews: [{ ...bens }] },
    ]);
    await takeBackReviews(database, "ann", ids(entered));
    expect(await database.blocks.toArray()).toEqual([
      { learner: "ben", number: 0, reviews: [bens] },
    ]);
  });
});
