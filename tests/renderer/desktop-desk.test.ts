import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type {
  DesktopBridge,
  DesktopNews,
  NewBackup,
} from "../../core/desktop-bridge";
import type { Milliseconds } from "../../core/memory/review";
import { err, ok } from "../../core/result";
import { type AppState, openApp } from "../../renderer/state/app-state.svelte";
import { DesktopDesk } from "../../renderer/state/desktop-desk.svelte";
import { keepRunRow } from "../../renderer/storage/runs";
import { readBackup } from "../../renderer/storage/read-backup";
import { sampleRun } from "../core/runs/sample-run";
import { standInDesktop } from "./platform/stand-in-desktop";
import { forgetDatabases } from "./storage/fresh-database";
import { sampleReview } from "./storage/sample-review";
import { windowLocks } from "./storage/window-locks";

async function opened(): Promise<AppState> {
  const app = await openApp();
  if (!app.ok) throw new Error(app.error.code);
  return app.value;
}

async function answerOnce(app: AppState): Promise<void> {
  const review = sampleReview({
    id: crypto.randomUUID(),
    learner: app.current.learner.id,
    at: Date.now() as Milliseconds,
  });
  expect((await app.current.acknowledge({ review })).ok).toBe(true);
}

async function runOnce(app: AppState): Promise<void> {
  const learner = app.current.learner.id;
  const run = sampleRun({ id: crypto.randomUUID(), learner });
  expect((await keepRunRow(app.database, run)).ok).toBe(true);
}

function deskOf(app: AppState, given: Partial<DesktopBridge>): DesktopDesk {
  return new DesktopDesk(app.backups, standInDesktop(given));
}

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("the automatic backup", () => {
  it("hands over everything, and not again while nothing was answered", async () => {
    const app = await opened();
    await answerOnce(app);
    const handed: NewBackup[] = [];
    const desk = deskOf(app, {
      automaticBackup: (backup) => {
        handed.push(backup);
        return Promise.resolve(ok({ written: true, fewerThan: null }));
      },
    });
    await desk.keepBackup();
    await desk.keepBackup();
    expect(handed.map(({ reviews }) => reviews)).toEqual([1]);
    const bytes = handed[0]?.bytes ?? new Uint8Array();
    const read = await readBackup(new Blob([bytes]).stream());
    expect(read.ok && read.value.reviews.size).toBe(1);
    await answerOnce(app);
    await desk.keepBackup();
    expect(handed).toHaveLength(2);
  });

  it("hands over whole runs, where nothing was answered as well, and again once there is another", async () => {
    const app = await opened();
    await runOnce(app);
    const handed: NewBackup[] = [];
    const desk = deskOf(app, {
      lastKnown: () => Promise.resolve(ok(null)),
      automaticBackup: (backup) => {
        handed.push(backup);
        return Promise.resolve(ok({ written: true, fewerThan: null }));
      },
    });
    await desk.keepBackup();
    await desk.keepBackup();
    expect(handed).toMatchObject([{ reviews: 0, runs: 1 }]);
    await runOnce(app);
    await desk.keepBackup();
    expect(handed).toMatchObject([{ runs: 1 }, { runs: 2 }]);
    const bytes = handed[1]?.bytes ?? new Uint8Array();
    const read = await readBackup(new Blob([bytes]).stream());
    expect(read.ok && read.value.runs.size).toBe(2);
  });

  it("says why it was not made, tries again, and says when it holds fewer answers than before", async () => {
    const app = await opened();
    await answerOnce(app);
    const fewerThan = { name: "b", day: 20_000, reviews: 9, madeAt: 1 };
    let isFull = true;
    const desk = deskOf(app, {
      automaticBackup: () =>
        Promise.resolve(
          isFull
            ? err({ code: "no-room", name: "b" } as const)
            : ok({ written: true, fewerThan }),
        ),
    });
    await desk.keepBackup();
    expect(desk.trouble).toEqual({
      of: "shell",
      error: { code: "no-room", name: "b" },
    });
    isFull = false;
    await desk.keepBackup();
    expect(desk.trouble).toBeUndefined();
    expect(desk.fewerThan).toEqual(fewerThan);
  });
});

describe("the automatic backup at a start", () => {
  const startedAfter = async (hours: number) => {
    const app = await opened();
    await answerOnce(app);
    let made = 0;
    const desk = deskOf(app, {
      lastKnown: () =>
        Promise.resolve(ok({ reviews: 1, at: Date.now() - hours * 3_600_000 })),
      automaticBackup: () => {
        made += 1;
        return Promise.resolve(ok({ written: true, fewerThan: null }));
      },
    });
    await desk.keepBackup();
    return { app, desk, made: () => made };
  };

  it("is not made again within a day where nothing was answered since", async () => {
    const { app, desk, made } = await startedAfter(2);
    expect(made()).toBe(0);
    await answerOnce(app);
    await desk.keepBackup();
    expect(made()).toBe(1);
  });

  it("is made again where a run was made since, also by a version that did not count them", async () => {
    const { app, desk, made } = await startedAfter(2);
    await runOnce(app);
    await desk.keepBackup();
    expect(made()).toBe(1);
  });

  it("is made anew after a day, for what is no answer", async () => {
    expect((await startedAfter(30)).made()).toBe(1);
  });
});

describe("an empty store", () => {
  const known = { reviews: 240, at: 1 };
  const backup = { name: "b", day: 20_000, reviews: 240, madeAt: 1 };

  it("that is known to have held answers is told, with the backups there are, until it is settled", async () => {
    const app = await opened();
    let forgotten = 0;
    const desk = deskOf(app, {
      lastKnown: () => Promise.resolve(ok(known)),
      listBackups: () => Promise.resolve(ok([backup])),
      readBackup: () =>
        Promise.resolve(ok({ name: "b", bytes: new Uint8Array([31, 139]) })),
      forgetLastKnown: () => {
        forgotten += 1;
        return Promise.resolve(ok(null));
      },
    });
    await desk.keepBackup();
    expect(desk.lost).toEqual({ known, backups: [backup] });
    expect(await desk.takeOut("b")).toBeUndefined();
    expect(desk.hasTakenOut).toBe(true);
    expect(desk.lookAtTakenOut()?.size).toBe(2);
    expect(desk.hasTakenOut).toBe(false);
    await desk.settleLost();
    expect(desk.lost).toBeUndefined();
    expect(forgotten).toBe(1);
  });

  it("is told no longer once answers are here again", async () => {
    const app = await opened();
    const desk = deskOf(app, {
      lastKnown: () => Promise.resolve(ok(known)),
      listBackups: () => Promise.resolve(ok([backup])),
    });
    await desk.keepBackup();
    expect(desk.lost).toBeDefined();
    await answerOnce(app);
    await desk.keepBackup();
    expect(desk.lost).toBeUndefined();
  });

  it("with a run in it is not empty", async () => {
    const app = await opened();
    await runOnce(app);
    const desk = deskOf(app, {
      lastKnown: () => Promise.resolve(ok(known)),
      listBackups: () => Promise.resolve(ok([backup])),
      automaticBackup: () =>
        Promise.resolve(ok({ written: true, fewerThan: backup })),
    });
    await desk.keepBackup();
    expect(desk.lost).toBeUndefined();
    expect(desk.fewerThan).toEqual(backup);
  });

  it("that never held any is only a first start", async () => {
    const app = await opened();
    const desk = deskOf(app, { lastKnown: () => Promise.resolve(ok(null)) });
    await desk.keepBackup();
    expect(desk.lost).toBeUndefined();
  });
});

it("takes what the shell tells: commands once, and each deck file in turn", async () => {
  const app = await opened();
  let tell: (news: DesktopNews) => void = () => undefined;
  const waiting = ["one", "two"];
  const desk = deskOf(app, {
    takeDeckFile: () => {
      const name = waiting.shift();
      return Promise.resolve(
        ok(name === undefined ? null : { name, text: "{}" }),
      );
    },
    onNews: (listener) => {
      tell = listener;
      return () => undefined;
    },
  });
  const stop = desk.follow();
  await expect.poll(() => desk.given.length).toBe(2);
  expect(desk.takeGiven()).toEqual(ok({ name: "one", text: "{}" }));
  expect(desk.given).toHaveLength(1);
  tell({ kind: "menu", command: "back-up" });
  expect(desk.takeCommand("restore")).toBe(false);
  expect(desk.takeCommand("back-up")).toBe(true);
  expect(desk.command).toBeUndefined();
  stop();
});

it("in a browser does nothing", async () => {
  const app = await opened();
  const desk = new DesktopDesk(app.backups, undefined);
  desk.follow()();
  await desk.keepBackup();
  expect([desk.lost, desk.command, desk.trouble]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});
