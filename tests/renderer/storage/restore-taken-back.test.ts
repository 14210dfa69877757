// @vitest-environment node
import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { ANN, BEN } from "../../core/backup/sample-backup";
import type { Milliseconds } from "../../../core/memory/review";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import {
  undoableRestore,
  undoRestore,
} from "../../../renderer/storage/last-restore";
import { deleteLearner } from "../../../renderer/storage/learners";
import { restore } from "../../../renderer/storage/restore";
import { acknowledgeReview } from "../../../renderer/storage/reviews";
import { BLOCK_SIZE, sealReviews } from "../../../renderer/storage/sealing";
import { dumpOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { DECK_ID, sampleDeckRow } from "./sample-deck-row";
import { sampleReview, sampleReviews } from "./sample-review";
import {
  asBackup,
  CHOICE,
  CLUB_DECK,
  CLUB_ID,
  logOf,
  planOf,
  REVIEWS,
  storeOfAnn,
} from "./restore-room";

beforeEach(forgetDatabases);

describe("a restore", () => {
  const older = sampleReviews(BLOCK_SIZE, { learner: ANN.id });
  const newer = sampleReviews(BLOCK_SIZE, {
    learner: ANN.id,
    case: "E8a",
  });

  it("can be taken back wholly, even after its answers were sealed among others", async () => {
    const contents = await asBackup(() => storeOfAnn(older));
    const database = await storeOfAnn(newer);
    const log = await logOf(database);
    await restore(database, contents, CHOICE);
    expect(await sealReviews(database, ANN.id)).toEqual({ ok: true, value: 1 });
    expect(await undoRestore(database)).toEqual({ ok: true, value: undefined });
    expect(await logOf(database)).toEqual(log);
    expect(await undoRestore(database)).toEqual({
      ok: false,
      error: { code: "nothing-to-undo" },
    });
  });

  it("throws away what was computed from the logs it touches, and so does taking it back", async () => {
    const contents = await asBackup(storeOfAnn);
    const database = await storeOfAnn([]);
    const compute = () =>
      database.cache.bulkPut(
        [ANN.id, BEN.id].map((learner) => ({
          learner,
          name: "class-summary",
          key: "",
        })),
      );
    const computed = async () =>
      (await database.cache.toArray()).map(({ learner }) => learner);
    await compute();
    await restore(database, contents, { ...CHOICE, learners: [ANN.id] });
    expect(await computed()).toEqual([BEN.id]);
    await compute();
    expect(await undoRestore(database)).toEqual({ ok: true, value: undefined });
    expect(await computed()).toEqual([BEN.id]);
  });

  it("that made a learner leaves nothing of them when it is taken back", async () => {
    const contents = await asBackup(storeOfAnn);
    const database = await openTestDatabase();
    const before = await dumpOf(database);
    await restore(database, contents, CHOICE);
    // What they chose since is no practice: the restore can still be taken back.
    for (const key of ["practice", "learner", "sharing", "check", "decks-seen"])
      await database.settings.put({ key: `${key}:${ANN.id}`, value: {} });
    await undoRestore(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it.each<[string, (database: TurnwiseDatabase) => PromiseLike<unknown>]>([
    [
      "an answer was given, its time set back or not",
      (database) =>
        acknowledgeReview(database, {
          review: sampleReview({ learner: ANN.id, at: 1 as Milliseconds }),
        }),
    ],
    [
      "a round was begun",
      (database) =>
        database.rounds.put({ id: "new", learner: ANN.id, savedAt: 1 }),
    ],
    [
      "a round went on",
      (database) =>
        database.rounds.put({ id: "old", learner: ANN.id, savedAt: 2 }),
    ],
    ["a round ended", (database) => database.rounds.delete("old")],
    ["its learner was deleted", (database) => deleteLearner(database, ANN.id)],
  ])("can no longer be taken back once %s", async (_what, happens) => {
    const contents = await asBackup(storeOfAnn);
    const database = await storeOfAnn(REVIEWS.slice(0, 2));
    await database.rounds.put({ id: "old", learner: ANN.id, savedAt: 1 });
    await restore(database, contents, CHOICE);
    expect(await undoableRestore(database)).toMatchObject({
      ok: true,
      value: { madeAt: 5 },
    });
    await happens(database);
    const before = await dumpOf(database);
    expect(await undoRestore(database)).toEqual({
      ok: false,
      error: { code: "practised-since" },
    });
    expect(await dumpOf(database)).toEqual(before);
    expect(await undoableRestore(database)).toEqual({
      ok: true,
      value: undefined,
    });
  });

  it("can be taken back whatever somebody else practised", async () => {
    const contents = await asBackup(storeOfAnn);
    const database = await openTestDatabase();
    await database.learners.put({ ...BEN });
    await restore(database, contents, CHOICE);
    await acknowledgeReview(database, {
      review: sampleReview({ learner: BEN.id }),
    });
    expect(await undoRestore(database)).toEqual({ ok: true, value: undefined });
  });

  it("leaves decks in the file that cannot be read, or take the place of one that came with the app", async () => {
    const contents = await asBackup(async () => {
      const database = await openTestDatabase();
      await database.decks.bulkPut([
        { id: DECK_ID, name: "no deck" },
        sampleDeckRow("First-layer edges", "starter-edges"),
      ]);
      return database;
    });
    const database = await openTestDatabase();
    const plan = await planOf(database, contents);
    expect([plan.newDecks, plan.leftInFile]).toEqual([[], 2]);
    await restore(database, contents, { ...CHOICE, decks: "new-and-changed" });
    expect(await database.decks.count()).toBe(0);
  });

  it("leaves a deck that its coach has changed since", async () => {
    const contents = await asBackup(async () => {
      const database = await openTestDatabase();
      await database.decks.bulkPut([CLUB_DECK, sampleDeckRow("theirs")]);
      return database;
    });
    const database = await openTestDatabase();
    await database.decks.put(sampleDeckRow("mine"));
    await restore(database, contents, { ...CHOICE, decks: "new-and-changed" });
    await database.decks.bulkPut([
      sampleDeckRow("Wednesday club", CLUB_ID),
      sampleDeckRow("ours"),
    ]);
    await undoRestore(database);
    expect(await database.decks.toArray()).toEqual([
      sampleDeckRow("ours"),
      sampleDeckRow("Wednesday club", CLUB_ID),
    ]);
  });

  it("whose word was damaged by hand cannot be taken back", async () => {
    const database = await openTestDatabase();
    await database.settings.put({ key: "last-restore", value: { at: "?" } });
    expect(await undoRestore(database)).toEqual({
      ok: false,
      error: { code: "nothing-to-undo" },
    });
  });
});
