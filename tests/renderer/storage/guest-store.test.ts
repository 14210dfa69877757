import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import {
  clearGuestStores,
  openGuestStore,
} from "../../../renderer/storage/guest-store";
import { saveSetting } from "../../../renderer/storage/settings";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { windowLocks } from "./window-locks";

async function namesOfDatabases(): Promise<readonly (string | undefined)[]> {
  return (await indexedDB.databases()).map(({ name }) => name);
}

async function guest(id: string, locks = windowLocks()) {
  const opened = await openGuestStore(id, locks);
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value;
}

beforeEach(async () => {
  await forgetDatabases();
  await clearGuestStores(windowLocks());
});

describe("a guest's store", () => {
  it("is a database of its own, and gone when they leave", async () => {
    const database = await openTestDatabase();
    const store = await guest("one");
    await saveSetting(store.database, "a", 1);
    expect(await database.settings.count()).toBe(0);
    expect(await namesOfDatabases()).toContain("turnwise-guest-one");
    expect(await store.leave()).toEqual({ ok: true, value: undefined });
    expect(await namesOfDatabases()).toEqual(["turnwise"]);
  });

  it("refuses what is written after they left", async () => {
    const store = await guest("late");
    await store.leave();
    const saved = await saveSetting(store.database, "a", 1);
    expect(saved.ok).toBe(false);
    expect(await namesOfDatabases()).not.toContain("turnwise-guest-late");
  });

  it("is deleted at the next start where their window is gone, and kept where it is not", async () => {
    const locks = windowLocks();
    const here = await guest("here", locks);
    // A window that crashed: its database is there, its lock is not.
    (await guest("gone", windowLocks())).database.close();
    expect(await clearGuestStores(locks)).toEqual({ ok: true, value: 1 });
    expect(await namesOfDatabases()).toContain("turnwise-guest-here");
    expect(await namesOfDatabases()).not.toContain("turnwise-guest-gone");
    await here.leave();
  });
});
