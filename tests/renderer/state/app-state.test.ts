import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { localDay } from "../../../core/memory/local-day";
import { tagOf, TAGS } from "../../../core/memory/learner";
import type { Milliseconds } from "../../../core/memory/review";
import { FIRST_COURSE } from "../../../core/deck/starter-decks";
import type { AppState } from "../../../renderer/state/app-state.svelte";
import { learnerSettingsKey } from "../../../renderer/storage/learners";
import { readSetting } from "../../../renderer/storage/settings";
import { sampleReview, TUESDAY_NINE } from "../storage/sample-review";
import { beginEmpty, names, openWindow } from "./open-window";

beginEmpty();

describe("the app", () => {
  it("begins with one learner and asks nothing", async () => {
    const app = await openWindow();
    expect(names(app)).toEqual(["Learner 1"]);
    expect(app.current.learner.name).toBe("Learner 1");
    expect(app.current.decks).toEqual(FIRST_COURSE);
    expect(app.current.memories.size).toBe(0);
  });

  it("opens with whoever was last at the desk", async () => {
    const app = await openWindow();
    await app.addLearner("Ada");
    expect(app.current.learner.name).toBe("Ada");
    const again = await openWindow();
    expect(names(again)).toEqual(["Learner 1", "Ada"]);
    expect(again.current.learner.name).toBe("Ada");
  });

  it("begins with somebody new where every stored learner is damaged, and reports them", async () => {
    const app = await openWindow();
    await app.database.learners.clear();
    await app.database.learners.put({ id: "damaged", name: 7 });
    const again = await openWindow();
    expect(names(again)).toEqual(["Learner 1"]);
    expect(again.damaged).toEqual([
      { table: "learners", key: "damaged", field: "id" },
    ]);
    expect(await app.database.learners.count()).toBe(2);
  });

  it("forgets a deleted learner and seats another, or somebody new", async () => {
    const app = await openWindow();
    const first = app.current.learner.id;
    await app.addLearner("Ada");
    expect((await app.deleteCurrent()).ok).toBe(true);
    expect(app.current.learner.id).toBe(first);
    await app.deleteCurrent();
    expect(names(app)).toEqual(["Learner 1"]);
    expect(app.current.learner.id).not.toBe(first);
  });

  it("does not delete a learner who practises in another window", async () => {
    const app = await openWindow();
    const { id } = app.current.learner;
    let done = (): void => undefined;
    void navigator.locks.request(
      `practice:${id}`,
      () => new Promise<void>((resolve) => (done = resolve)),
    );
    expect(await app.deleteCurrent()).toEqual({
      ok: false,
      error: { code: "practising-elsewhere" },
    });
    expect(app.current.learner.id).toBe(id);
    done();
  });
});

describe("a learner at the desk", () => {
  it("has an acknowledged answer in the log and in the memories at once", async () => {
    const { current } = await openWindow();
    const review = sampleReview({ learner: current.learner.id });
    expect(await current.acknowledge({ review })).toEqual({
      ok: true,
      value: review.id,
    });
    expect(current.reviews).toEqual([review]);
    expect(current.memoryOf("E1")?.lastDay).toBe(review.localDay);
    // Met for the first time, and unaided.
    const graded = { review, outcome: "steady", recall: "steady" };
    expect(current.answersTo("E1")).toEqual([graded]);
    expect(current.answers).toEqual([graded]);
    expect((await openWindow()).current.reviews).toEqual([review]);
  });

  it("has no answer that was not stored", async () => {
    const { current } = await openWindow();
    current.database.close();
    const outcome = await current.acknowledge({
      review: sampleReview({ learner: current.learner.id }),
    });
    expect(outcome).toEqual({ ok: false, error: { code: "closed" } });
    expect(current.reviews).toEqual([]);
  });

  it("lives in days that turn over when the learner chose", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: TUESDAY_NINE });
    const { current } = await openWindow();
    const offset = -new Date().getTimezoneOffset();
    const hourOf = (at: number) => new Date(at + offset * 60_000).getUTCHours();
    expect(current.today).toBe(localDay(TUESDAY_NINE, offset));
    // The hour after the present one has not come yet: it is still yesterday.
    await current.changeSettings({
      turnsOverAt: Math.min(12, hourOf(TUESDAY_NINE) + 1),
    });
    expect(current.today).toBe(
      localDay(TUESDAY_NINE, offset, Math.min(12, hourOf(TUESDAY_NINE) + 1)),
    );
    vi.setSystemTime(TUESDAY_NINE + 24 * 3_600_000);
    const before = current.today;
    current.refreshToday();
    expect(current.today).toBe(before + 1);
    vi.useRealTimers();
  });

  it("keeps what another window chose meanwhile", async () => {
    const one = await openWindow();
    const two = await openWindow();
    await one.current.changeSettings({ hold: "down" });
    await two.current.changeSettings({ letters: true });
    await one.current.reload();
    expect(one.current.settings).toMatchObject({ hold: "down", letters: true });
    const key = learnerSettingsKey(one.current.learner.id);
    expect(await readSetting(one.database, key)).toEqual({
      ok: true,
      value: { hold: "down", letters: true },
    });
  });

  it("has back what was chosen before where the choice could not be stored", async () => {
    const { current } = await openWindow();
    current.database.close();
    const outcome = await current.changeSettings({ hold: "down" });
    expect(outcome.ok).toBe(false);
    expect(current.settings.hold).toBe("up");
  });

  it("sees what another window answered", async () => {
    const one = await openWindow();
    const two = await openWindow();
    const stop = two.followOtherWindows();
    const review = sampleReview({
      learner: one.current.learner.id,
      at: (TUESDAY_NINE + 1) as Milliseconds,
    });
    // In one process both windows would share one channel, which hears only others.
    await one.current.acknowledge({ review });
    const other = new BroadcastChannel("turnwise");
    other.postMessage({ changed: "learner", id: one.current.learner.id });
    await vi.waitFor(() => expect(two.current.reviews).toEqual([review]));
    other.close();
    stop();
  });

  it("does not count answers of days to come, from a clock that ran ahead, until their day", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: TUESDAY_NINE });
    const { current } = await openWindow();
    const day = (days: number) => TUESDAY_NINE + days * 24 * 3_600_000;
    const answered = (days: number) =>
      sampleReview({
        learner: current.learner.id,
        case: "E1",
        at: day(days) as Milliseconds,
        localDay: localDay(day(days), 0),
      });
    await current.acknowledge({ review: answered(0) });
    vi.setSystemTime(day(30));
    await current.acknowledge({ review: answered(30) });
    vi.setSystemTime(day(3));
    await current.reload();
    expect(current.memoryOf("E1")?.lastDay).toBe(localDay(TUESDAY_NINE, 0));
    expect(current.reviews).toHaveLength(2);
    vi.setSystemTime(day(31));
    await current.reload();
    expect(current.memoryOf("E1")?.lastDay).toBe(localDay(day(30), 0));
    vi.useRealTimers();
  });

  it("knows what a learner usually takes, for what an answer measured", async () => {
    const { current } = await openWindow();
    const day = 24 * 3_600_000;
    for (let n = 0; n < 4; n++) {
      const at = (TUESDAY_NINE - (9 - 2 * n) * day) as Milliseconds;
      const review = sampleReview({
        learner: current.learner.id,
        at,
        localDay: localDay(at, 0),
        thinking: 2000 as Milliseconds,
      });
      await current.acknowledge({ review });
    }
    const { case: id, answerWay } = sampleReview({});
    const asked = { case: id, answerWay };
    const thinking = 5000 as Milliseconds;
    expect(current.usualFor({ ...asked, thinking })).toBeCloseTo(2000);
    expect(current.usualFor(asked)).toBeUndefined();
    expect(
      current.usualFor({ ...asked, answerWay: "write-it", thinking }),
    ).toBeUndefined();
  });

  it("practises the decks that were chosen, in their order", async () => {
    const { current } = await openWindow();
    await current.changeSettings({
      decks: ["starter-rest", "a deck of a later version", "starter-edges"],
    });
    expect(current.decks.map(({ id }) => id)).toEqual([
      "starter-rest",
      "starter-edges",
    ]);
  });
});

describe("after a restore the desk", () => {
  /** Somebody new at the desk, and Ada, who was restored. */
  async function restored(): Promise<{ app: AppState; ada: string }> {
    const app = await openWindow();
    const [first = { id: "" }] = app.learners;
    await app.addLearner("Ada");
    const ada = app.current.learner.id;
    await app.switchTo(first.id);
    return { app, ada };
  }

  it("is given away where nobody sat down, and whoever the first start put there goes", async () => {
    const { app, ada } = await restored();
    expect((await app.giveDeskTo([ada])).ok).toBe(true);
    expect(app.current.learner.name).toBe("Ada");
    expect(names(app)).toEqual(["Ada"]);
  });

  it.each(["runs", "heard"] as const)(
    "stays with somebody of whom the table %s has a row, readable or not",
    async (table) => {
      const { app, ada } = await restored();
      const { id } = app.current.learner;
      await app.database[table].add({ id: "damaged", learner: id });
      expect((await app.giveDeskTo([ada])).ok).toBe(true);
      expect(app.current.learner.id).toBe(id);
      expect(names(app)).toEqual(["Learner 1", "Ada"]);
      expect(await app.database[table].count()).toBe(1);
    },
  );
});

describe("a learner's colour", () => {
  it("is one that nobody else has, as long as there are any", async () => {
    const app = await openWindow();
    for (const name of ["Ada", "Ben", "Cleo", "Dan", "Eva", "Finn", "Gil"])
      await app.addLearner(name);
    expect(new Set(app.learners.map(tagOf)).size).toBe(TAGS.length);
    await app.addLearner("Hal");
    expect(TAGS).toContain(tagOf(app.current.learner));
  });

  it("is kept beside the name", async () => {
    const app = await openWindow();
    await app.rename({ tag: "iris" });
    await app.rename({ name: "Mia" });
    const again = await openWindow();
    expect(again.current.learner).toMatchObject({ name: "Mia", tag: "iris" });
  });
});
