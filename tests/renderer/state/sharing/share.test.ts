// @vitest-environment node
import "fake-indexeddb/auto";
import { gunzipSync } from "node:zlib";
import {
  afterAll,
  beforeAll,
  beforeEach,
  describe,
  expect,
  it,
  vi,
} from "vitest";
import { dayNumber } from "../../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../../core/memory/review";
import type { ResultsFolder } from "../../../../renderer/platform/results-folder";
import { readClassLog } from "../../../../renderer/state/class/class-log";
import { lookThroughFolder } from "../../../../renderer/state/sharing/intake";
import {
  filesToHandOver,
  shareNow,
  takeBack,
} from "../../../../renderer/state/sharing/share";
import {
  readClassmates,
  readHeardAnswers,
} from "../../../../renderer/storage/classmates";
import type { TurnwiseDatabase } from "../../../../renderer/storage/database";
import {
  deleteLearner,
  saveLearner,
} from "../../../../renderer/storage/learners";
import { readResultsFile } from "../../../../renderer/storage/results-files";
import {
  changeSharing,
  readSent,
  readSharing,
} from "../../../../renderer/storage/sent-blocks";
import { ANN, answersOf, BEN } from "../../../core/backup/sample-backup";
import {
  forgetDatabases,
  openTestDatabase,
} from "../../storage/fresh-database";
import { windowLocks } from "../../storage/window-locks";
import { folderInMemory } from "./folder-in-memory";

let database: TurnwiseDatabase;

beforeAll(async () => {
  database = await openTestDatabase();
  vi.stubGlobal("navigator", { locks: windowLocks() });
});
beforeEach(async () => {
  for (const table of database.tables) await table.clear();
  await saveLearner(database, ANN);
});
afterAll(async () => {
  vi.unstubAllGlobals();
  database.close();
  await forgetDatabases();
});

const ann = (reviews: readonly Review[], now = 1000) => ({
  ...{ database, learner: ANN, reviews, today: dayNumber(20_500) },
  now: now as Milliseconds,
});

const choose = (part: "nothing" | "answers" | "turns", name?: string) =>
  changeSharing(database, ANN.id, {
    part,
    ...(name !== undefined && { name }),
  });

/** The blocks in a folder, oldest first. */
async function blocksIn(files: ReadonlyMap<string, Uint8Array<ArrayBuffer>>) {
  const blocks = [];
  for (const [name, bytes] of files) {
    const read = await readResultsFile(name, bytes);
    if (!read.ok) throw new Error(read.error.code);
    blocks.push(read.value.block);
  }
  return blocks.sort((a, b) => a.madeAt - b.madeAt);
}

describe("sharing", () => {
  it("begins only where the learner chose something to share", async () => {
    const { folder, files } = folderInMemory();
    expect(await shareNow(ann(answersOf(ANN, 2)), folder)).toEqual({
      ok: false,
      error: { code: "nothing-chosen" },
    });
    expect(await filesToHandOver(ann(answersOf(ANN, 2)), "x")).toEqual({
      ok: false,
      error: { code: "nothing-chosen" },
    });
    expect(files.size).toBe(0);
  });

  it("lays into the folder what is not there, once, under the name for the class", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers", "Owl");
    expect(await shareNow(ann(answersOf(ANN, 2)), folder)).toEqual({
      ok: true,
      value: { answers: 2, shown: 0, leftOut: 0 },
    });
    expect(await shareNow(ann(answersOf(ANN, 3)), folder)).toMatchObject({
      value: { answers: 1 },
    });
    expect(await shareNow(ann(answersOf(ANN, 3)), folder)).toMatchObject({
      value: { answers: 0 },
    });
    const blocks = await blocksIn(files);
    expect(blocks).toMatchObject([
      { name: "Owl", answers: [{ id: "Ann-0" }, { id: "Ann-1" }] },
      { name: "Owl", answers: [{ id: "Ann-2" }] },
    ]);
    for (const bytes of files.values())
      expect(gunzipSync(bytes).toString()).not.toMatch(/"Ann"|position|deck/);
  });

  it("sends showings along, and counts them as no answers", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    const log = answersOf(ANN, 3).map((review, n): Review => {
      return n === 1 ? review : { ...review, asking: "shown" };
    });
    const told = [];
    for (const count of [2, 2, 3]) {
      const sent = await shareNow(ann(log.slice(0, count)), folder);
      told.push(sent.ok && [sent.value.answers, sent.value.shown]);
    }
    expect(told).toEqual([
      [1, 1],
      [0, 0],
      [0, 1],
    ]);
    expect(await blocksIn(files)).toMatchObject([
      { answers: { length: 2 } },
      { answers: { length: 1 } },
    ]);
  });

  it("sends nothing twice where two windows share at once", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    const both = [1, 2].map(() => shareNow(ann(answersOf(ANN, 2)), folder));
    const sent = await Promise.all(both);
    expect(sent.map((one) => one.ok && one.value.answers).sort()).toEqual([
      0, 2,
    ]);
    expect(files.size).toBe(1);
  });

  it("fills a folder again that was emptied, and one that is new", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    files.clear();
    expect(await shareNow(ann(answersOf(ANN, 2)), folder)).toMatchObject({
      value: { answers: 2 },
    });
  });

  it("makes blocks in rising order, though the clock is set back", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 1), 5000), folder);
    await shareNow(ann(answersOf(ANN, 2), 10), folder);
    expect((await blocksIn(files)).map(({ madeAt }) => madeAt)).toEqual([
      5000, 5001,
    ]);
    await filesToHandOver(ann(answersOf(ANN, 2), 10), "x");
    await takeBack(ann(answersOf(ANN, 2), 10), folder, "x");
    expect((await blocksIn(files)).map(({ madeAt }) => madeAt)).toEqual([5003]);
  });

  it("sends the turns of all answers once these are shared as well", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    await choose("turns");
    await shareNow(ann(answersOf(ANN, 2), 2000), folder);
    const [, newest] = await blocksIn(files);
    expect(newest).toMatchObject({
      answers: [{ position: expect.any(String) as string }, {}],
    });
    expect(await shareNow(ann(answersOf(ANN, 2)), folder)).toMatchObject({
      value: { answers: 0 },
    });
  });

  it("that fails is said, and begins again where it stopped", async () => {
    const { folder, files, state } = folderInMemory();
    await choose("answers");
    for (const code of ["folder-gone", "not-allowed", "folder-full"] as const) {
      state.trouble = { code };
      expect(await shareNow(ann(answersOf(ANN, 2)), folder)).toEqual({
        ok: false,
        error: { code },
      });
      const settings = await readSharing(database, ANN.id);
      expect(settings.ok && settings.value.sharedOn).toBeUndefined();
    }
    state.trouble = undefined;
    await shareNow(ann(answersOf(ANN, 2)), folder);
    expect(files.size).toBe(1);
    const settings = await readSharing(database, ANN.id);
    expect(settings.ok && settings.value.sharedOn).toBe(20_500);
  });

  it("leaves the day to later answers where it found nothing new", async () => {
    const { folder } = folderInMemory();
    await choose("answers");
    await shareNow(ann([]), folder);
    const settings = await readSharing(database, ANN.id);
    expect(settings.ok && settings.value.sharedOn).toBeUndefined();
  });

  it("makes nobody a classmate on their own machine, and reads none of its own files", async () => {
    const { folder } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    const looked = await lookThroughFolder(database, folder);
    expect(looked).toMatchObject({ ok: true, value: { arrivals: [] } });
    expect(await readClassmates(database)).toEqual({ ok: true, value: [] });
  });
});

/** A window that is killed while it writes: the file is there, and nothing after it happens. */
function killedWhileWriting(folder: ResultsFolder): ResultsFolder {
  return {
    ...folder,
    write: async (name, bytes) => {
      await folder.write(name, bytes);
      throw new Error("killed");
    },
  };
}

describe("a window that is killed", () => {
  it("while it shares, leaves no file that taking back would not find", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await expect(
      shareNow(ann(answersOf(ANN, 2)), killedWhileWriting(folder)),
    ).rejects.toThrow("killed");
    await takeBack(ann([], 2000), folder, "x");
    expect(await blocksIn(files)).toMatchObject([{ kind: "withdrawn" }]);
  });

  it("while it takes back, shares nothing anew", async () => {
    const { folder } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    await expect(
      takeBack(ann([], 2000), killedWhileWriting(folder), "x"),
    ).rejects.toThrow("killed");
    expect(await shareNow(ann(answersOf(ANN, 2), 3000), folder)).toEqual({
      ok: false,
      error: { code: "nothing-chosen" },
    });
    // Taken back once more it is as if nothing had happened.
    expect(await takeBack(ann([], 3000), folder, "x")).toMatchObject({
      ok: true,
    });
    const sent = await readSent(database, ANN.id);
    expect(sent.ok && sent.value.answers).toBe(0);
  });
});

describe("two machines of one learner", () => {
  it("that both share everything, one of them from a backup, are one union", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 3)), folder);
    // The other machine: the log came back by a backup, and what was shared did not.
    await database.heard.clear();
    await database.settings.clear();
    await choose("turns", "Owl");
    await shareNow(ann(answersOf(ANN, 4), 1000), folder);
    expect(files.size).toBe(2);
    await deleteLearner(database, ANN.id);
    await lookThroughFolder(database, folder);
    const heard = await readHeardAnswers(database, ANN.id);
    expect(heard.ok && heard.value.answers.map(({ id }) => id)).toEqual(
      answersOf(ANN, 4).map(({ id }) => id),
    );
  });
});

describe("taking back", () => {
  it("removes this machine’s files, leaves the word, and shares nothing more", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    const [own] = [...files.keys()];
    expect(await takeBack(ann([], 2000), folder, "x")).toEqual({
      ok: true,
      value: { left: 0, file: undefined },
    });
    expect([...files.keys()]).not.toContain(own);
    expect(await blocksIn(files)).toEqual([
      { kind: "withdrawn", learner: ANN.id, madeAt: 2000 },
    ]);
    expect(await readSharing(database, ANN.id)).toMatchObject({
      value: { part: "nothing" },
    });
    // Who shares again later shares everything.
    await choose("answers");
    expect(await shareNow(ann(answersOf(ANN, 2)), folder)).toMatchObject({
      value: { answers: 2 },
    });
  });

  it("without the folder that holds the files changes nothing", async () => {
    const { folder, files, state } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    expect(await takeBack(ann([]), undefined, "x")).toEqual({
      ok: false,
      error: { code: "no-folder" },
    });
    state.trouble = { code: "folder-gone" };
    expect(await takeBack(ann([]), folder, "x")).toMatchObject({ ok: false });
    expect(files.size).toBe(1);
    const sent = await readSent(database, ANN.id);
    expect(sent.ok && sent.value.answers).toBe(2);
    expect(await readSharing(database, ANN.id)).toMatchObject({
      value: { part: "answers" },
    });
  });

  it("gives a file to whoever was handed one, and that empties it there", async () => {
    await choose("answers");
    const made = await filesToHandOver(ann(answersOf(ANN, 2)), "Ann’s results");
    const taken = await takeBack(ann([], 2000), undefined, "Ann takes back");
    if (!made.ok || !taken.ok || taken.value.file === undefined)
      throw new Error("no files");
    const [first] = made.value;
    expect(first?.name).toBe("Ann’s results.turnwise-results");
    const bytes = async (file: Blob) =>
      new Uint8Array(await file.arrayBuffer());
    // On the coach's machine: the files come in the wrong order.
    await deleteLearner(database, ANN.id);
    const { folder, files } = folderInMemory();
    files.set("b.turnwise-results", await bytes(taken.value.file.file));
    files.set("a.turnwise-results", await bytes(first?.file ?? new Blob()));
    expect(await lookThroughFolder(database, folder)).toMatchObject({
      value: { arrivals: [], withdrawn: 1, known: 1 },
    });
    const heard = await readHeardAnswers(database, ANN.id);
    expect(heard.ok && heard.value.answers).toEqual([]);
  });
});

describe("a block that is damaged in the coach's store", () => {
  it("is read again from its file at the next look after the class was read", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    await deleteLearner(database, ANN.id);
    await lookThroughFolder(database, folder);
    const [row] = await database.heard.toArray();
    await database.heard.update(String(row?.["id"]), { answers: [7] });
    const seen = () => readClassLog(database, { id: ANN.id, isHere: false });
    expect(await seen()).toEqual({ ok: true, value: [] });
    // As long as its file is not there, it goes on being looked for.
    const [[name, bytes] = ["", new Uint8Array()]] = files;
    files.clear();
    await lookThroughFolder(database, folder);
    files.set(name, bytes);
    await lookThroughFolder(database, folder);
    expect(await seen()).toMatchObject({
      value: [{ id: "Ann-0" }, { id: "Ann-1" }],
    });
    // Once: a look after it reads nothing.
    const none = { ...folder, read: () => Promise.reject(new Error("read")) };
    expect(await lookThroughFolder(database, none)).toMatchObject({ ok: true });
  });
});

describe("a learner who is deleted", () => {
  it("takes along what was noted of their sharing; their files stay in the folder", async () => {
    const { folder, files } = folderInMemory();
    await choose("answers");
    await shareNow(ann(answersOf(ANN, 2)), folder);
    await saveLearner(database, BEN);
    await deleteLearner(database, ANN.id);
    expect(await database.heard.count()).toBe(0);
    expect(await database.settings.count()).toBe(0);
    expect(files.size).toBe(1);
    await lookThroughFolder(database, folder);
    expect(await readClassmates(database)).toMatchObject({
      value: [{ name: "Ann" }],
    });
  });
});
