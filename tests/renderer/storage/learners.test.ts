import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type { Learner } from "../../../core/memory/learner";
import {
  deleteLearner,
  checkKey,
  decksSeenKey,
  learnerSettingsKey,
  ownSettingKeys,
  readLearners,
  saveLearner,
  sharingKey,
} from "../../../renderer/storage/learners";
import { readSetting, saveSetting } from "../../../renderer/storage/settings";
import { forgetDatabases, openTestDatabase } from "./fresh-database";

const ANN: Learner = { id: crypto.randomUUID(), name: "Ann", createdAt: 1 };
const BEN: Learner = { id: crypto.randomUUID(), name: "Ben", createdAt: 2 };

/** Tables that hold nothing of a learner's own. */
const NOBODYS: readonly string[] = ["decks", "sheets"];

beforeEach(forgetDatabases);

describe("learners", () => {
  it("are one on the first start, made silently", async () => {
    const database = await openTestDatabase();
    expect(await readLearners(database, ANN)).toEqual({
      ok: true,
      value: { learners: [ANN], damaged: [] },
    });
  });

  it("stay one when two windows start at the same moment", async () => {
    const one = await openTestDatabase();
    const two = await openTestDatabase();
    const [first, second] = await Promise.all([
      readLearners(one, ANN),
      readLearners(two, BEN),
    ]);
    expect(first).toEqual(second);
    expect(await one.learners.count()).toBe(1);
  });

  it("come oldest first, and a damaged one is reported, not lost", async () => {
    const database = await openTestDatabase();
    await saveLearner(database, BEN);
    await saveLearner(database, ANN);
    const damaged = { ...ANN, id: "not an id" };
    await database.learners.put(damaged);
    const read = await readLearners(database, ANN);
    expect(read).toEqual({
      ok: true,
      value: {
        learners: [ANN, BEN],
        damaged: [{ table: "learners", key: "not an id", field: "id" }],
      },
    });
    expect(await database.learners.get("not an id")).toEqual(damaged);
  });

  it("have settings under keys of their own, and no other", () => {
    const keys = ownSettingKeys(ANN.id);
    expect(keys).toHaveLength(new Set(keys).size);
    for (const key of keys) expect(key).toContain(ANN.id);
    expect(keys).toEqual(
      expect.arrayContaining([
        learnerSettingsKey(ANN.id),
        decksSeenKey(ANN.id),
        sharingKey(ANN.id),
        checkKey(ANN.id),
      ]),
    );
  });

  it("are deleted with everything that is theirs and nothing that is not", async () => {
    const database = await openTestDatabase();
    for (const { id } of [ANN, BEN]) {
      await saveSetting(database, learnerSettingsKey(id), { hold: "up" });
      await saveSetting(database, `practice:${id}`, { since: 1 });
      await saveSetting(database, checkKey(id), { version: 1 });
      await database.reviews.bulkPut([
        { id: `1 ${id}`, learner: id, at: 5 },
        { id: `2 ${id}`, learner: id, at: "damaged" },
      ]);
      await database.blocks.put({ learner: id, number: 0, reviews: [] });
      await database.rounds.put({ id: `round ${id}`, learner: id });
      await database.cache.put({ learner: id, name: "memories" });
      await database.runs.bulkPut([
        { id: `run ${id}`, learner: id, at: 5 },
        { id: `damaged ${id}`, learner: id, at: "noon" },
      ]);
      await saveSetting(database, sharingKey(id), { part: "answers" });
      await database.heard.put({ id: `block ${id}`, learner: id });
      await database.classmates.put({ id });
    }
    await saveLearner(database, ANN);
    await saveLearner(database, BEN);
    expect((await deleteLearner(database, ANN.id)).ok).toBe(true);
    for (const table of database.tables) {
      const rows: unknown[] = await table.toArray();
      expect(JSON.stringify(rows)).not.toContain(ANN.id);
      if (!NOBODYS.includes(table.name))
        expect(JSON.stringify(rows)).toContain(BEN.id);
    }
    expect(await database.reviews.count()).toBe(2);
    expect(await readSetting(database, learnerSettingsKey(BEN.id))).toEqual({
      ok: true,
      value: { hold: "up" },
    });
  });
});
