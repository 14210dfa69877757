// @vitest-environment node
import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { ANN, BEN } from "../../core/backup/sample-backup";
import type { Milliseconds, Review } from "../../../core/memory/review";
import {
  learnersToRestore,
  restoredInWords,
} from "../../../renderer/state/restore-words";
import {
  undoableRestore,
  undoRestore,
} from "../../../renderer/storage/last-restore";
import { isRestorable, restore } from "../../../renderer/storage/restore";
import { BLOCK_SIZE, KEPT_LOOSE } from "../../../renderer/storage/sealing";
import { sampleRun } from "../../core/runs/sample-run";
import { dumpOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { DECK_ID, sampleDeckRow } from "./sample-deck-row";
import { sampleReview, sampleReviews, TUESDAY_NINE } from "./sample-review";
import {
  addRows,
  asBackup,
  CHOICE,
  CLUB_DECK,
  CLUB_ID,
  logOf,
  NOTHING,
  planOf,
  REVIEWS,
  storeOfAnn,
} from "./restore-room";

beforeEach(forgetDatabases);

describe("restoring", () => {
  it("says of showings that they are no answers, and brings them all the same", async () => {
    const [first, ...others] = sampleReviews(3, { learner: ANN.id });
    if (first === undefined) throw new Error("there are three");
    const contents = await asBackup(() =>
      storeOfAnn([{ ...first, asking: "shown" }, ...others]),
    );
    const database = await openTestDatabase();
    const plan = await planOf(database, contents);
    expect(learnersToRestore(plan)).toMatchObject([
      { what: "not here yet, 2 new answers, 1 time shown the way." },
    ]);
    const done = await restore(database, contents, CHOICE);
    if (!done.ok) throw new Error(done.error.code);
    expect(done.value).toMatchObject({ reviews: 3, shown: 1 });
    expect(restoredInWords(done.value)).toBe(
      "Restored: 1 learner, 2 answers and 1 time shown the way.",
    );
    expect((await logOf(database)).reviews).toHaveLength(3);
  });

  it("into another store brings over learners, settings, decks and all answers", async () => {
    const contents = await asBackup(async () => {
      const database = await storeOfAnn();
      await database.decks.put(CLUB_DECK);
      return database;
    });
    const database = await openTestDatabase();
    expect(await restore(database, contents, CHOICE)).toEqual({
      ok: true,
      value: { ...NOTHING, learners: 1, reviews: 6, decksAdded: 1 },
    });
    expect(await logOf(database)).toEqual({ reviews: REVIEWS, damaged: [] });
    expect(await database.learners.toArray()).toEqual([ANN]);
    expect(await database.decks.toArray()).toEqual([CLUB_DECK]);
    expect((await database.settings.get(`learner:${ANN.id}`))?.value).toEqual({
      hold: "down",
    });
  });

  it("lists learners as they came to the machine, whatever their ids, and who has only answers last", async () => {
    // Ann came first, and Ben's id is the lower one.
    const contents = await asBackup(async () => {
      const database = await openTestDatabase();
      await database.learners.bulkPut([{ ...BEN }, { ...ANN }]);
      await addRows(database, [sampleReview({ learner: "nameless" })]);
      return database;
    });
    const plan = await planOf(await openTestDatabase(), contents);
    expect(plan.learners.map(({ id }) => id)).toEqual([
      ANN.id,
      BEN.id,
      "nameless",
    ]);
  });

  it("adds what is not there, and leaves what is, sealed or loose", async () => {
    const changed = { ...REVIEWS[0], verdict: "missed" } as Review;
    const contents = await asBackup(() =>
      storeOfAnn([changed, ...REVIEWS.slice(1, 5)]),
    );
    const database = await storeOfAnn(REVIEWS.slice(2, 4));
    await database.settings.put({ key: `learner:${ANN.id}`, value: { a: 1 } });
    await database.blocks.put({
      learner: ANN.id,
      number: 3,
      reviews: [REVIEWS[0], REVIEWS[5]],
    });
    const plan = await planOf(database, contents);
    expect(plan.learners).toMatchObject([
      { id: ANN.id, inFile: 5, alreadyHere: 2, conflicts: 1, repairs: [] },
    ]);
    // In the order of the file, which is that of random ids.
    expect(new Set(plan.learners[0]?.fresh)).toEqual(
      new Set([REVIEWS[1], REVIEWS[4]]),
    );
    expect(await restore(database, contents, CHOICE)).toEqual({
      ok: true,
      value: { ...NOTHING, reviews: 2 },
    });
    expect((await logOf(database)).reviews).toEqual(REVIEWS);
    expect((await database.settings.get(`learner:${ANN.id}`))?.value).toEqual({
      a: 1,
    });
  });

  it("the same backup twice changes nothing the second time, and leaves the first to be taken back", async () => {
    const contents = await asBackup(storeOfAnn);
    const database = await openTestDatabase();
    await restore(database, contents, CHOICE);
    const before = await dumpOf(database);
    expect(await restore(database, contents, CHOICE)).toEqual({
      ok: true,
      value: NOTHING,
    });
    expect(await dumpOf(database)).toEqual(before);
    expect(await undoableRestore(database)).toMatchObject({
      ok: true,
      value: { at: 9, madeAt: 5 },
    });
  });

  it("keeps two learners of one name apart", async () => {
    const contents = await asBackup(storeOfAnn);
    const database = await openTestDatabase();
    await database.learners.put({ ...BEN, name: ANN.name });
    await addRows(database, sampleReviews(1, { learner: BEN.id }));
    await restore(database, contents, CHOICE);
    const rows = await database.learners.toArray();
    expect(rows.map((row) => row["name"]).toSorted()).toEqual([
      ANN.name,
      `${ANN.name}, restored`,
    ]);
  });

  it("leaves a name as it is where nobody has answered under it yet", async () => {
    const contents = await asBackup(storeOfAnn);
    const database = await openTestDatabase();
    await database.learners.put({ ...BEN, name: ANN.name });
    await restore(database, contents, CHOICE);
    expect((await database.learners.get(ANN.id))?.["name"]).toBe(ANN.name);
  });

  it("touches only the learners that were chosen", async () => {
    const contents = await asBackup(async () => {
      const database = await storeOfAnn();
      await database.learners.put({ ...BEN });
      await addRows(database, sampleReviews(2, { learner: BEN.id }));
      return database;
    });
    const database = await openTestDatabase();
    await restore(database, contents, { ...CHOICE, learners: [BEN.id] });
    expect(await database.learners.toArray()).toEqual([BEN]);
    expect(await database.reviews.count()).toBe(2);
  });

  it("puts thousands into blocks at once, behind those that are there", async () => {
    const many = sampleReviews(2 * BLOCK_SIZE + KEPT_LOOSE + 5, {
      learner: ANN.id,
    });
    const contents = await asBackup(() => storeOfAnn(many));
    const later = sampleReview({
      learner: ANN.id,
      at: (TUESDAY_NINE + 1e9) as Milliseconds,
    });
    const database = await storeOfAnn([]);
    await database.blocks.put({
      learner: ANN.id,
      number: 7,
      reviews: [later],
    });
    await restore(database, contents, CHOICE);
    const keys = await database.blocks.toCollection().primaryKeys();
    expect(keys.map(([, number]) => number)).toEqual([7, 8, 9]);
    expect(await database.reviews.count()).toBe(KEPT_LOOSE + 5);
    expect((await logOf(database)).reviews).toEqual([...many, later]);
  });

  it("puts readable answers in the place of damaged ones", async () => {
    const contents = await asBackup(storeOfAnn);
    const torn = (review: Review | undefined) => ({ ...review, verdict: "?" });
    const database = await storeOfAnn(REVIEWS.slice(2));
    await database.reviews.put(torn(REVIEWS[0]));
    await database.blocks.put({
      learner: ANN.id,
      number: 0,
      reviews: [torn(REVIEWS[1])],
    });
    expect((await logOf(database)).damaged).toHaveLength(2);
    const before = await dumpOf(database);
    expect(await restore(database, contents, CHOICE)).toEqual({
      ok: true,
      value: { ...NOTHING, repaired: 2 },
    });
    const log = await logOf(database);
    expect(log.reviews).toEqual(REVIEWS);
    // Blocks are never touched again: the damaged one stays in its own.
    expect(log.damaged).toEqual([
      { table: "blocks", key: "0/0", field: "verdict" },
    ]);
    expect(await restore(database, contents, CHOICE)).toEqual({
      ok: true,
      value: NOTHING,
    });
    await undoRestore(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it("puts damaged answers back as they were, and counts what it cannot", async () => {
    const torn = { id: "torn", learner: ANN.id, at: "noon" };
    const contents = await asBackup(async () => {
      const database = await storeOfAnn();
      await database.reviews.bulkPut([torn, { id: "x", learner: null }]);
      await database.learners.put({ id: "not an id" });
      return database;
    });
    const database = await openTestDatabase();
    expect((await planOf(database, contents)).leftInFile).toBe(2);
    await restore(database, contents, CHOICE);
    expect(await database.reviews.get("torn")).toEqual(torn);
    expect(await database.reviews.count()).toBe(7);
  });

  it("puts damaged whole runs back as they were, and never in the place of a readable one", async () => {
    const torn = { id: "torn", learner: ANN.id, time: "soon" };
    const contents = await asBackup(async () => {
      const database = await storeOfAnn([]);
      await database.runs.bulkPut([
        torn,
        { id: "here", learner: ANN.id },
        { id: "nobody", learner: 7 },
      ]);
      return database;
    });
    const database = await storeOfAnn([]);
    const here = sampleRun({ id: "here", learner: ANN.id });
    await database.runs.put({ ...here });
    const before = await dumpOf(database);
    const plan = await planOf(database, contents);
    expect(plan.learners[0]?.damagedRuns).toEqual([torn]);
    expect(plan.leftInFile).toBe(2);
    expect(await restore(database, contents, CHOICE)).toEqual({
      ok: true,
      value: { ...NOTHING, damaged: 1 },
    });
    expect(await database.runs.toArray()).toEqual([here, torn]);
    await undoRestore(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it("gives answers whose learner the file has lost a learner of a given name", async () => {
    const contents = await asBackup(async () => {
      const database = await storeOfAnn();
      await database.learners.put({ id: ANN.id, name: 7 });
      await addRows(database, sampleReviews(1, { learner: "not an id" }));
      return database;
    });
    const database = await openTestDatabase();
    const { learners } = await planOf(database, contents);
    expect(learners.map(({ learner }) => learner)).toEqual([
      undefined,
      undefined,
    ]);
    expect(learners.filter(isRestorable).map(({ id }) => id)).toEqual([ANN.id]);
    const all = learners.map(({ id }) => id);
    await restore(database, contents, { ...CHOICE, learners: all });
    expect(await database.learners.toArray()).toEqual([
      { id: ANN.id, name: "From a backup", createdAt: TUESDAY_NINE },
    ]);
    expect((await logOf(database)).reviews).toEqual(REVIEWS);
    expect(await database.reviews.count()).toBe(REVIEWS.length);
  });

  it("puts a readable learner in the place of a damaged one", async () => {
    const contents = await asBackup(storeOfAnn);
    const database = await storeOfAnn([]);
    await database.learners.put({ id: ANN.id, name: 7 });
    const before = await dumpOf(database);
    await restore(database, contents, CHOICE);
    expect(await database.learners.toArray()).toEqual([ANN]);
    await undoRestore(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it.each([
    ["none", undefined, "mine"],
    ["new", CLUB_DECK, "mine"],
    ["new-and-changed", CLUB_DECK, "theirs"],
  ] as const)("brings decks as chosen: %s", async (decks, club, name) => {
    const contents = await asBackup(async () => {
      const database = await openTestDatabase();
      await database.decks.bulkPut([CLUB_DECK, sampleDeckRow("theirs")]);
      return database;
    });
    const database = await openTestDatabase();
    await database.decks.put(sampleDeckRow("mine"));
    const plan = await planOf(database, contents);
    expect(plan.newDecks).toEqual([CLUB_DECK]);
    expect(plan.changedDecks).toEqual([
      { here: sampleDeckRow("mine"), inFile: sampleDeckRow("theirs") },
    ]);
    const before = await dumpOf(database);
    await restore(database, contents, { ...CHOICE, decks });
    expect(await database.decks.get(CLUB_ID)).toEqual(club);
    expect(await database.decks.get(DECK_ID)).toEqual(sampleDeckRow(name));
    await undoRestore(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it("is one strict transaction", async () => {
    const contents = await asBackup(storeOfAnn);
    const transaction = vi.spyOn(IDBDatabase.prototype, "transaction");
    const database = await openTestDatabase();
    transaction.mockClear();
    await restore(database, contents, CHOICE);
    expect(transaction.mock.calls.map(([, ...rest]) => rest)).toEqual([
      ["readwrite", { durability: "strict" }],
    ]);
    transaction.mockRestore();
  });
});
