import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Milliseconds } from "../../core/memory/review";
import { type AppState, openApp } from "../../renderer/state/app-state.svelte";
import { readBackup } from "../../renderer/storage/read-backup";
import { sampleRun } from "../core/runs/sample-run";
import { forgetDatabases } from "./storage/fresh-database";
import { sampleReview } from "./storage/sample-review";
import { windowLocks } from "./storage/window-locks";

const START = Date.parse("2030-03-05T10:00:00Z");
const DAY = 86_400_000;

async function opened(): Promise<AppState> {
  const app = await openApp();
  if (!app.ok) throw new Error(app.error.code);
  await app.value.backups.look();
  return app.value;
}

async function answerTimes(app: AppState, count: number): Promise<void> {
  for (let n = 0; n < count; n++) {
    const review = sampleReview({
      id: crypto.randomUUID(),
      learner: app.current.learner.id,
      at: Date.now() as Milliseconds,
    });
    expect((await app.current.acknowledge({ review })).ok).toBe(true);
  }
  await app.backups.look();
}

beforeEach(async () => {
  await forgetDatabases();
  const locks = windowLocks();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: locks,
  });
  vi.useFakeTimers({ toFake: ["Date"] });
  vi.setSystemTime(START);
});

afterEach(() => void vi.useRealTimers());

describe("the reminder of a backup", () => {
  it("comes a week after the first answer, goes with a backup, and comes again", async () => {
    const app = await opened();
    expect(app.backups.isDue).toBe(false);
    await answerTimes(app, 1);
    expect(app.backups.isDue).toBe(false);
    vi.setSystemTime(START + 7 * DAY);
    await app.backups.look();
    expect(app.backups.isDue).toBe(true);
    await app.backups.handedOver();
    expect(app.backups.isDue).toBe(false);
    expect(app.backups.answersSince).toBe(0);
    // Without an answer since, there is nothing to lose.
    vi.setSystemTime(START + 30 * DAY);
    await app.backups.look();
    expect(app.backups.isDue).toBe(false);
    await answerTimes(app, 1);
    expect(app.backups.isDue).toBe(true);
  });

  it("comes after 200 answers on one day", async () => {
    const app = await opened();
    await answerTimes(app, 199);
    expect(app.backups.isDue).toBe(false);
    await answerTimes(app, 1);
    expect(app.backups.isDue).toBe(true);
  });

  it("counts no showing as an answer, and keeps it all the same", async () => {
    const app = await opened();
    const learner = app.current.learner.id;
    const showing = () =>
      sampleReview({ learner, asking: "shown", at: START as Milliseconds });
    await app.database.reviews.bulkAdd([{ ...showing() }]);
    await app.database.blocks.add({
      ...{ learner, number: 0 },
      reviews: [showing(), sampleReview({ learner })],
    });
    await app.backups.look();
    const { backups } = app;
    expect([backups.answersSince, backups.reviews]).toEqual([1, 3]);
    await backups.handedOver();
    await app.database.reviews.bulkAdd([
      { ...showing() },
      { ...sampleReview({ learner }) },
    ]);
    await backups.look();
    expect(backups.answersSince).toBe(1);
    // The note of a version that did not tell them apart.
    await app.database.settings.put({
      key: "last-backup",
      value: { at: START, answers: 3, runs: 0 },
    });
    await backups.look();
    expect(backups.answersSince).toBe(2);
    await app.database.reviews.clear();
    await app.database.blocks.clear();
    await app.database.reviews.add({ ...showing() });
    await backups.look();
    expect([backups.answersSince, backups.isEmpty]).toEqual([0, false]);
  });

  it("counts whole runs, which no version before them had in its backup", async () => {
    const app = await opened();
    const learner = app.current.learner.id;
    await app.database.runs.bulkAdd([
      { ...sampleRun({ id: "a", learner, at: START as Milliseconds }) },
      { id: "strike", learner, at: START, strikes: "a" },
      { id: "damaged", learner },
    ]);
    await app.backups.look();
    expect([app.backups.runs, app.backups.isEmpty]).toEqual([2, false]);
    expect(app.backups.isDue).toBe(false);
    vi.setSystemTime(START + 7 * DAY);
    await app.backups.look();
    expect(app.backups.isDue).toBe(true);
    await app.backups.handedOver();
    expect([app.backups.runsSince, app.backups.isDue]).toEqual([0, false]);
    await app.database.settings.put({
      key: "last-backup",
      value: { at: START, answers: 0 },
    });
    await app.backups.look();
    expect([app.backups.runsSince, app.backups.isDue]).toEqual([2, true]);
  });

  it("is not stilled by the backup of one learner among several", async () => {
    const app = await opened();
    await answerTimes(app, 200);
    const made = await app.backups.make(app.current.learner);
    expect(made.ok).toBe(true);
    expect(app.backups.isDue).toBe(true);
  });
});

describe("restoring", () => {
  async function backedUp(app: AppState) {
    const made = await app.backups.make();
    if (!made.ok) throw new Error(made.error.code);
    expect(made.value.name).toBe(
      "Turnwise 2030-03-05 everything.turnwise-backup",
    );
    const read = await readBackup(made.value.file.stream());
    if (!read.ok) throw new Error(read.error.code);
    return read.value;
  }

  const everything = (app: AppState) => ({
    learners: app.learners.map(({ id }) => id),
    decks: "new" as const,
    ofClass: true,
    nameless: "Restored learner",
  });

  it("brings deleted answers back, and is taken back until somebody practises", async () => {
    const app = await opened();
    await answerTimes(app, 3);
    const contents = await backedUp(app);
    await app.database.reviews.clear();
    const restored = await app.backups.restore(contents, everything(app));
    expect(restored).toMatchObject({ ok: true, value: { reviews: 3 } });
    expect(await app.database.reviews.count()).toBe(3);
    expect(app.backups.undoable?.learners).toHaveLength(1);
    expect(await app.backups.takeBack()).toMatchObject({ ok: true });
    expect(await app.database.reviews.count()).toBe(0);

    await app.backups.restore(contents, everything(app));
    await app.reload();
    await answerTimes(app, 1);
    expect(app.backups.undoable).toBeUndefined();
    expect(await app.backups.takeBack()).toEqual({
      ok: false,
      error: { code: "practised-since" },
    });
    expect(await app.database.reviews.count()).toBe(4);
  });

  it("waits until nobody practises as those learners in another window", async () => {
    const app = await opened();
    await answerTimes(app, 1);
    const contents = await backedUp(app);
    await app.database.reviews.clear();
    let leave: () => void = () => undefined;
    const practising = navigator.locks.request(
      `practice:${app.current.learner.id}`,
      () => new Promise<void>((resolve) => (leave = resolve)),
    );
    expect(await app.backups.restore(contents, everything(app))).toEqual({
      ok: false,
      error: { code: "practising-elsewhere" },
    });
    expect(await app.database.reviews.count()).toBe(0);
    leave();
    await practising;
    expect((await app.backups.restore(contents, everything(app))).ok).toBe(
      true,
    );
  });
});
