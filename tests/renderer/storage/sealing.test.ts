import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Review } from "../../../core/memory/review";
import { readLog } from "../../../renderer/storage/reviews";
import {
  BLOCK_SIZE,
  KEPT_LOOSE,
  sealReviews,
} from "../../../renderer/storage/sealing";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { sampleReviews } from "./sample-review";

const rows = (reviews: readonly Review[]) =>
  reviews.map((review) => ({ ...review }));

beforeEach(forgetDatabases);

describe("sealing", () => {
  it("moves the oldest thousands into blocks and loses, doubles and reorders nothing", async () => {
    const database = await openTestDatabase();
    const reviews = sampleReviews(2 * BLOCK_SIZE + KEPT_LOOSE + 7);
    const others = sampleReviews(50, { learner: "ben" });
    await database.reviews.bulkPut(rows([...reviews.toReversed(), ...others]));
    expect(await sealReviews(database, "ann")).toEqual({ ok: true, value: 2 });
    const blocks = await database.blocks.toArray();
    expect(blocks.map((block) => block.reviews)).toEqual([
      reviews.slice(0, BLOCK_SIZE),
      reviews.slice(BLOCK_SIZE, 2 * BLOCK_SIZE),
    ]);
    expect(await database.reviews.count()).toBe(KEPT_LOOSE + 7 + 50);
    expect(await readLog(database, "ann")).toEqual({
      ok: true,
      value: { reviews, damaged: [] },
    });
  });

  it("waits until a whole block can be sealed and the newest stay loose", async () => {
    const database = await openTestDatabase();
    await database.reviews.bulkPut(
      rows(sampleReviews(BLOCK_SIZE + KEPT_LOOSE - 1)),
    );
    expect(await sealReviews(database, "ann")).toEqual({ ok: true, value: 0 });
    expect(await database.blocks.count()).toBe(0);
  });

  it("goes on numbering where it stopped", async () => {
    const database = await openTestDatabase();
    await database.blocks.put({ learner: "ann", number: 4, reviews: [] });
    await database.reviews.bulkPut(
      rows(sampleReviews(BLOCK_SIZE + KEPT_LOOSE)),
    );
    await sealReviews(database, "ann");
    const numbers = await database.blocks.toCollection().primaryKeys();
    expect(numbers).toEqual([
      ["ann", 4],
      ["ann", 5],
    ]);
  });

  it("that fails half way leaves every review where it was", async () => {
    const database = await openTestDatabase();
    const reviews = sampleReviews(BLOCK_SIZE + KEPT_LOOSE);
    await database.reviews.bulkPut(rows(reviews));
    const broken = vi
      .spyOn(database.reviews, "bulkDelete")
      .mockRejectedValueOnce(new DOMException("…", "QuotaExceededError"));
    expect(await sealReviews(database, "ann")).toEqual({
      ok: false,
      error: { code: "full" },
    });
    broken.mockRestore();
    expect(await database.blocks.count()).toBe(0);
    expect(await readLog(database, "ann")).toEqual({
      ok: true,
      value: { reviews, damaged: [] },
    });
  });
});
