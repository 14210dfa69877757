import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type { LocalDay, Review } from "../../../core/memory/review";
import { progressFacts } from "../../../core/progress/progress-facts";
import { unpacked } from "../../../core/progress/packed-log";
import { ok } from "../../../core/result";
import { readCached, saveCached } from "../../../renderer/storage/cache";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import { deleteLearner, saveLearner } from "../../../renderer/storage/learners";
import { readProgressFacts } from "../../../renderer/state/progress-facts";
import type { askForProgress } from "../../../renderer/workers/progress-client";
import { forgetDatabases, openTestDatabase } from "../storage/fresh-database";
import { sampleReviews, TUESDAY_NINE } from "../storage/sample-review";

const ANN = "3d2f7f7e-1f8e-4b8a-9a34-6b1f3a1f9c55";
const TODAY = Math.floor(TUESDAY_NINE / 86_400_000) as LocalDay;
const ENTRY = { learner: ANN, name: "progress", key: "one" };

let database: TurnwiseDatabase;

beforeEach(async () => {
  await forgetDatabases();
  database = await openTestDatabase();
  await saveLearner(database, {
    id: ANN,
    name: "Ann",
    createdAt: TUESDAY_NINE,
  });
});

/** Reads facts without a worker, and counts how often one was asked. */
function reader() {
  const seen = { asked: 0 };
  const ask: typeof askForProgress = ({ log, today, settings }) => {
    seen.asked += 1;
    return Promise.resolve(ok(progressFacts(unpacked(log), today, settings)));
  };
  const read = (
    reviews: readonly Review[],
    { today = TODAY, level = 0.9, signal = new AbortController().signal } = {},
  ) =>
    readProgressFacts(
      database,
      { learner: ANN, reviews, today, schedule: { level } },
      signal,
      ask,
    );
  return { seen, read };
}

describe("progress facts", () => {
  it("are computed once for a log, a day and a level", async () => {
    const { seen, read } = reader();
    const log = sampleReviews(1200, { learner: ANN });
    const first = await read(log);
    expect(first).toMatchObject({ ok: true, value: { answers: 1200 } });
    expect(await read(log)).toEqual(first);
    expect(seen.asked).toBe(1);
    await read(log.slice(1));
    await read(log);
    expect(seen.asked).toBe(3);
    await read(log, { today: (TODAY + 1) as LocalDay });
    await read(log, { level: 0.85 });
    expect(seen.asked).toBe(5);
  });

  it("are computed anew where what was kept is damaged", async () => {
    const { seen, read } = reader();
    const log = sampleReviews(3, { learner: ANN });
    const first = await read(log);
    await database.cache.update([ANN, "progress"], { value: { answers: "?" } });
    expect(await read(log)).toEqual(first);
    expect(seen.asked).toBe(2);
  });

  it("are not asked for any more once somebody has gone on", async () => {
    const { seen, read } = reader();
    const controller = new AbortController();
    const reading = read(sampleReviews(3), { signal: controller.signal });
    controller.abort();
    expect(await reading).toEqual({ ok: false, error: { code: "cancelled" } });
    expect(seen.asked).toBe(0);
  });
});

describe("the cache", () => {
  it("gives a value back under its own key alone", async () => {
    await saveCached(database, ENTRY, { a: 1 });
    expect(await readCached(database, ENTRY)).toEqual(ok({ a: 1 }));
    const other = { ...ENTRY, key: "two" };
    expect(await readCached(database, other)).toEqual(ok(undefined));
    await saveCached(database, other, 2);
    expect(await readCached(database, ENTRY)).toEqual(ok(undefined));
    expect(await database.cache.count()).toBe(1);
  });

  it("keeps nothing of a learner who is gone", async () => {
    await saveCached(database, ENTRY, 1);
    await deleteLearner(database, ANN);
    await saveCached(database, ENTRY, 1);
    expect(await database.cache.count()).toBe(0);
  });

  it("says when the store cannot be read or written", async () => {
    database.close();
    expect(await readCached(database, ENTRY)).toMatchObject({ ok: false });
    expect(await saveCached(database, ENTRY, 1)).toMatchObject({ ok: false });
  });
});
