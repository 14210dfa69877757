import "fake-indexeddb/auto";
import { Dexie } from "dexie";
import { beforeEach, describe, expect, it, vi } from "vitest";
import {
  DATABASE_NAME,
  DATABASE_VERSION,
  openDatabase,
} from "../../../renderer/storage/database";
import { saveSetting } from "../../../renderer/storage/settings";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { windowLocks } from "./window-locks";

beforeEach(forgetDatabases);

describe("the database", () => {
  it("has the tables and indexes of the design", async () => {
    const database = await openTestDatabase();
    const shape = Object.fromEntries(
      database.tables.map((table) => [
        table.name,
        [table.schema.primKey, ...table.schema.indexes]
          .map(({ src }) => src)
          .join(", "),
      ]),
    );
    // Source: the design's architecture.md, "Storage", and for the last four
    // what a coach's week needs.
    expect(shape).toEqual({
      learners: "id",
      decks: "id",
      reviews: "id, [learner+at], [learner+case+at]",
      blocks: "[learner+number]",
      rounds: "id, learner",
      settings: "key",
      cache: "[learner+name]",
      runs: "id, [learner+at]",
      sheets: "code",
      classmates: "id",
      heard: "id, learner",
    });
  });

  it("writes with strict durability, in every kind of transaction", async () => {
    // Before opening: the library keeps hold of the method.
    const transaction = vi.spyOn(IDBDatabase.prototype, "transaction");
    const database = await openTestDatabase();
    transaction.mockClear();
    await saveSetting(database, "a", 1);
    await database.transaction("rw", database.rounds, async () => {
      await database.rounds.put({ id: "r", learner: "l" });
    });
    const writing = transaction.mock.calls.filter(
      ([, mode]) => mode === "readwrite",
    );
    expect(writing).toHaveLength(2);
    for (const [, , options] of writing)
      expect(options).toEqual({ durability: "strict" });
    transaction.mockRestore();
  });

  it("is opened under the exclusive lock `data`", async () => {
    const locks = windowLocks();
    expect((await openDatabase({}, locks)).ok).toBe(true);
    expect(locks.log).toEqual(["exclusive data"]);
  });

  it("is closed in a window when another brings it to a newer shape, and the window is told", async () => {
    const onClosed = vi.fn();
    const first = await openDatabase({ onClosed }, windowLocks());
    const newer = new Dexie(DATABASE_NAME);
    newer.version(DATABASE_VERSION + 1).stores({ more: "id" });
    await newer.open();
    newer.close();
    expect(onClosed).toHaveBeenCalled();
    expect(first.ok && first.value.isOpen()).toBe(false);
  });

  it("of a newer Turnwise is refused and left as it is", async () => {
    const newer = new Dexie(DATABASE_NAME);
    newer.version(DATABASE_VERSION + 1).stores({ more: "id" });
    await newer.open();
    await newer.table("more").put({ id: "kept" });
    newer.close();
    const opened = await openDatabase({}, windowLocks());
    expect(opened).toEqual({
      ok: false,
      error: { code: "newer-version", version: DATABASE_VERSION + 1 },
    });
    await newer.open();
    expect(newer.tables.map(({ name }) => name)).toEqual(["more"]);
    expect(await newer.table("more").count()).toBe(1);
  });

  it("of shape 1 opens with everything that was in it", async () => {
    // The published shape, written out: never edited, whatever comes later.
    const old = new Dexie(DATABASE_NAME);
    old.version(1).stores({
      learners: "id",
      decks: "id",
      reviews: "id, [learner+at], [learner+case+at]",
      blocks: "[learner+number]",
      rounds: "id, learner",
      settings: "key",
      cache: "[learner+name]",
    });
    await old.open();
    await old.table("settings").put({ key: "k", value: { a: 1 } });
    await old.table("blocks").put({ learner: "l", number: 0, reviews: [1] });
    old.close();
    const database = await openTestDatabase();
    expect(await database.settings.get("k")).toEqual({
      key: "k",
      value: { a: 1 },
    });
    expect(await database.blocks.count()).toBe(1);
    expect(await database.runs.count()).toBe(0);
  });

  it("that the browser does not give is an error with its code", async () => {
    const factory = globalThis.indexedDB;
    vi.spyOn(factory, "open").mockImplementation(() => {
      throw new DOMException("refused", "SecurityError");
    });
    const opened = await openDatabase({}, windowLocks());
    expect(opened).toEqual({
      ok: false,
      error: { code: "unavailable", reason: "SecurityError" },
    });
  });
});
