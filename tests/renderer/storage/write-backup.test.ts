// @vitest-environment node
import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { CLUB_DECK, ANN, BEN } from "../../core/backup/sample-backup";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import { writeBackup } from "../../../renderer/storage/write-backup";
import { backedUp, contentsOf, linesOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { sampleReviews } from "./sample-review";

const REVIEWS = sampleReviews(7, { learner: ANN.id });
const BENS = sampleReviews(2, { learner: BEN.id });

async function filledDatabase(): Promise<TurnwiseDatabase> {
  const database = await openTestDatabase();
  await database.learners.bulkAdd([{ ...ANN }, { ...BEN }]);
  await database.settings.bulkPut([
    { key: `learner:${ANN.id}`, value: { hold: "down" } },
    { key: `practice:${ANN.id}`, value: { since: 1 } },
    { key: "current-learner", value: ANN.id },
  ]);
  await database.decks.put(CLUB_DECK);
  await database.blocks.put({
    learner: ANN.id,
    number: 0,
    reviews: REVIEWS.slice(0, 5),
  });
  await database.reviews.bulkPut(
    [...REVIEWS.slice(5), ...BENS].map((review) => ({ ...review })),
  );
  await database.rounds.put({ id: "r", learner: ANN.id });
  return database;
}

const byId = (rows: readonly { readonly id: string }[]) =>
  new Map(rows.map((row) => [row.id, row]));

beforeEach(forgetDatabases);

describe("a backup", () => {
  it("holds everybody's answers, sealed or loose, with settings and decks", async () => {
    const read = await contentsOf(await backedUp(await filledDatabase()));
    expect(read.learners).toEqual(byId([ANN, BEN]));
    expect(read.settings).toEqual(new Map([[ANN.id, { hold: "down" }]]));
    expect(read.decks).toEqual(new Map([["club", CLUB_DECK]]));
    expect(read.reviews).toEqual(byId([...REVIEWS, ...BENS]));
    expect(read.header).toMatchObject({ madeAt: 5, learners: 2, reviews: 9 });
    expect(read.damaged).toEqual([]);
  });

  it("of one learner holds theirs alone, and all decks", async () => {
    const read = await contentsOf(
      await backedUp(await filledDatabase(), BEN.id),
    );
    expect(read.learners).toEqual(byId([BEN]));
    expect(read.settings.size).toBe(0);
    expect(read.reviews).toEqual(byId(BENS));
    expect(read.decks.size).toBe(1);
  });

  it("holds no rounds under way, and says in its first line how much it holds", async () => {
    const lines = linesOf(await backedUp(await filledDatabase()));
    expect(lines.some((line) => line.includes("round"))).toBe(false);
    expect(JSON.parse(lines[0] ?? "")).toEqual({
      turnwise: "backup",
      version: 2,
      readableFrom: 2,
      madeAt: 5,
      learners: 2,
      reviews: 9,
      decks: 1,
      runs: 0,
    });
  });

  it("of a store damaged by hand holds every row, the damaged as they are", async () => {
    const database = await filledDatabase();
    const damaged = [
      { id: "torn", learner: ANN.id, at: "noon" },
      { id: "nobody's", learner: null },
    ];
    await database.reviews.bulkPut(damaged);
    await database.learners.put({ id: "not an id", name: "X" });
    await database.blocks.bulkPut([
      { learner: ANN.id, number: 1, reviews: [7, { id: "in a block" }] },
      // A block without a list, as only a hand could leave it.
      { learner: ANN.id, number: 2, reviews: "gone" as unknown as [] },
    ]);
    await database.settings.put({ key: `learner:${BEN.id}`, value: "loud" });
    const read = await contentsOf(await backedUp(database));
    expect(read.reviews.size).toBe(9);
    expect(
      read.damaged.map(({ table, row }) => [table, JSON.parse(row) as unknown]),
    ).toEqual([
      ["learners", { id: "not an id", name: "X" }],
      ["settings", { learner: BEN.id, value: "loud" }],
      ["reviews", 7],
      ["reviews", { id: "in a block" }],
      ["blocks", { learner: ANN.id, number: 2, reviews: "gone" }],
      ["reviews", damaged[1]],
      ["reviews", damaged[0]],
    ]);
  });

  it("of an empty store can be read", async () => {
    const read = await contentsOf(await backedUp(await openTestDatabase()));
    expect(read.reviews.size).toBe(0);
  });

  it("is much smaller than what it holds", async () => {
    const database = await openTestDatabase();
    const many = sampleReviews(2000, { learner: ANN.id });
    await database.reviews.bulkPut(many.map((review) => ({ ...review })));
    const bytes = await backedUp(database);
    expect(bytes.length * 8).toBeLessThan(JSON.stringify(many).length);
    expect((await contentsOf(bytes)).reviews).toEqual(byId(many));
  });

  it("breaks off with a code where its learner is deleted meanwhile", async () => {
    const database = await filledDatabase();
    vi.spyOn(database.blocks, "get").mockResolvedValueOnce(undefined);
    expect(await writeBackup(database, { madeAt: 5 })).toEqual({
      ok: false,
      error: { code: "not-read", reason: "LearnerDeletedMeanwhile" },
    });
  });

  it("of a store that was closed is an error with its code", async () => {
    const database = await filledDatabase();
    database.close();
    expect(await writeBackup(database, { madeAt: 5 })).toEqual({
      ok: false,
      error: { code: "closed" },
    });
  });
});
