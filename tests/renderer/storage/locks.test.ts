import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type { Milliseconds } from "../../../core/memory/review";
import { takePracticeLock } from "../../../renderer/storage/locks";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { windowLocks } from "./window-locks";

const NINE = 1_764_057_600_000 as Milliseconds;
const TEN = (NINE + 3_600_000) as Milliseconds;

beforeEach(forgetDatabases);

describe("the practice lock", () => {
  it("is one window's for each learner, and the other is told since when", async () => {
    const database = await openTestDatabase();
    const locks = windowLocks();
    const first = await takePracticeLock(database, "ann", NINE, locks);
    expect(first.ok && first.value.held).toBe(true);
    expect(await takePracticeLock(database, "ann", TEN, locks)).toEqual({
      ok: true,
      value: { held: false, since: NINE },
    });
    const other = await takePracticeLock(database, "ben", TEN, locks);
    expect(other.ok && other.value.held).toBe(true);
  });

  it("is free again once it is released", async () => {
    const database = await openTestDatabase();
    const locks = windowLocks();
    const first = await takePracticeLock(database, "ann", NINE, locks);
    if (!first.ok || !first.value.held) throw new Error("it was free");
    await first.value.release();
    const second = await takePracticeLock(database, "ann", TEN, locks);
    expect(second.ok && second.value.held).toBe(true);
  });

  it("is told without a time where the holder's word cannot be read", async () => {
    const database = await openTestDatabase();
    const locks = windowLocks();
    await takePracticeLock(database, "ann", NINE, locks);
    await database.settings.put({ key: "practice:ann", value: "??" });
    expect(await takePracticeLock(database, "ann", TEN, locks)).toEqual({
      ok: true,
      value: { held: false, since: undefined },
    });
  });
});
