// @vitest-environment node
import "fake-indexeddb/auto";
import { Dexie } from "dexie";
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
import type { Milliseconds } from "../../../../core/memory/review";
import { err } from "../../../../core/result";
import { MOST_PARTS } from "../../../../core/sharing/results-bundle";
import {
  resultsFileName,
  withdrawalFileName,
} from "../../../../core/sharing/results-file-name";
import type { ResultsFolder } from "../../../../renderer/platform/results-folder";
import { lookThroughFolder } from "../../../../renderer/state/sharing/intake";
import { shareNow, takeBack } from "../../../../renderer/state/sharing/share";
import {
  deleteClassmate,
  readAgain,
  readHeardAnswers,
} from "../../../../renderer/storage/classmates";
import {
  openDatabase,
  type TurnwiseDatabase,
} from "../../../../renderer/storage/database";
import { saveLearner } from "../../../../renderer/storage/learners";
import { readResultsIn } from "../../../../renderer/storage/results-bundle";
import {
  learnerMark,
  packResults,
} from "../../../../renderer/storage/results-files";
import {
  changeSharing,
  readSharing,
} from "../../../../renderer/storage/sent-blocks";
import { ANN, answersOf } from "../../../core/backup/sample-backup";
import { withdrawnBlock } from "../../../core/sharing/sample-block";
import { windowLocks } from "../../storage/window-locks";
import { folderInMemory } from "./folder-in-memory";

let learner: TurnwiseDatabase;
let coach: TurnwiseDatabase;

async function opened(name: string) {
  const database = await openDatabase({}, windowLocks(), name);
  if (!database.ok) throw new Error(database.error.code);
  return database.value;
}

async function begin() {
  for (const database of [learner, coach])
    for (const table of database.tables) await table.clear();
  await saveLearner(learner, ANN);
  await changeSharing(learner, ANN.id, { part: "answers" });
}

beforeAll(async () => {
  vi.stubGlobal("navigator", { locks: windowLocks() });
  learner = await opened("learner");
  coach = await opened("coach");
});
beforeEach(begin);
afterAll(async () => {
  vi.unstubAllGlobals();
  learner.close();
  coach.close();
  for (const name of ["learner", "coach"]) await Dexie.delete(name);
});

const on = (date: string) => Date.parse(`${date}T12:00:00Z`) as Milliseconds;

const ann = (answers: number, date: string) => ({
  ...{ database: learner, learner: ANN, reviews: answersOf(ANN, answers) },
  ...{ today: dayNumber(20_500), now: on(date) },
});

/** What a coach sees after a look through the folder. */
async function seen(folder: ResultsFolder) {
  const looked = await lookThroughFolder(coach, folder);
  if (!looked.ok) throw new Error(looked.error.code);
  expect(looked.value.unread).toEqual([]);
  const heard = await readHeardAnswers(coach, ANN.id);
  return heard.ok ? heard.value.answers.map(({ id }) => id) : [];
}

const ids = (count: number) => answersOf(ANN, count).map(({ id }) => id);

const OCTOBER = ["2026-10-05", "2026-10-19", "2026-10-31"];

/** Shares an answer on each of these days of October. */
async function october(folder: ResultsFolder, days = OCTOBER) {
  for (const [i, day] of days.entries())
    await shareNow(ann(i + 1, day), folder);
}

/** How many blocks each file in the folder holds. */
async function sizes(files: ReadonlyMap<string, Uint8Array<ArrayBuffer>>) {
  const counts: number[] = [];
  for (const [name, bytes] of files) {
    const read = await readResultsIn(name, bytes);
    counts.push(read.ok ? read.value.blocks.length : 0);
  }
  return counts.sort();
}

describe("the files of a past month", () => {
  it("become one, which says the same to whoever had them and whoever had not", async () => {
    const { folder, files } = folderInMemory();
    await october(folder);
    expect(await sizes(files)).toEqual([1, 1, 1]);
    expect(await seen(folder)).toEqual(ids(3));
    await shareNow(ann(4, "2026-11-02"), folder);
    expect(await sizes(files)).toEqual([1, 3]);
    expect(await seen(folder)).toEqual(ids(4));
    const once = await coach.heard.toArray();
    for (const table of coach.tables) await table.clear();
    expect(await seen(folder)).toEqual(ids(4));
    expect(await coach.heard.toArray()).toEqual(once);
    // Whoever has it does not read it again.
    const none = { ...folder, read: () => Promise.reject(new Error("read")) };
    expect(await seen(none)).toEqual(ids(4));
    // What is in it counts as shared, and a month is put together once.
    expect(await shareNow(ann(4, "2026-11-03"), folder)).toMatchObject({
      value: { answers: 0 },
    });
    expect(await sizes(files)).toEqual([1, 3]);
  });

  it("go when everything is taken back, and what withdrew them is obeyed", async () => {
    const { folder, files } = folderInMemory();
    await october(folder);
    await shareNow(ann(4, "2026-11-02"), folder);
    expect(await seen(folder)).toEqual(ids(4));
    expect(await takeBack(ann(4, "2026-11-03"), folder, "x")).toMatchObject({
      value: { left: 0 },
    });
    expect(files.size).toBe(1);
    expect(await seen(folder)).toEqual([]);
  });

  it("are hidden by a withdrawal exactly as they were hidden apart", async () => {
    const { folder, files } = folderInMemory();
    await october(folder);
    await shareNow(ann(4, "2026-11-02"), folder);
    // On another machine, between two of them; not yet heard here.
    const word = await packResults(withdrawnBlock(on("2026-10-20")));
    files.set(
      withdrawalFileName(word.id, await learnerMark(ANN.id)),
      word.bytes,
    );
    expect(await seen(folder)).toEqual(ids(4).slice(2));
    for (const table of coach.tables) await table.clear();
    expect(await seen(folder)).toEqual(ids(4).slice(2));
    // Once it is heard here, the bundle goes, and all goes out anew by choice.
    await shareNow(ann(4, "2026-11-03"), folder);
    expect(await sizes(files)).toEqual([1, 1]);
    await changeSharing(learner, ANN.id, { part: "answers" });
    await shareNow(ann(4, "2026-11-03"), folder);
    expect(await seen(folder)).toEqual(ids(4));
  });

  it("stay as they are where one alone is left, is too large or cannot be read", async () => {
    const { folder, files } = folderInMemory();
    await october(folder, OCTOBER.slice(0, 2));
    const [name = ""] = files.keys();
    const whole = files.get(name);
    files.set(name, new Uint8Array([1]));
    await shareNow(ann(3, "2026-11-02"), folder);
    expect(files.size).toBe(3);
    if (whole !== undefined) files.set(name, whole);
    await shareNow(ann(3, "2026-11-03"), folder);
    expect(await sizes(files)).toEqual([1, 2]);
  });

  it("are not read again at every sharing where nothing can be put together", async () => {
    const { folder } = folderInMemory();
    await october(folder, ["2026-08-05", "2026-09-19", "2026-10-31"]);
    // Two on one day of September that are too large to be parts.
    await shareNow(ann(1200, "2026-09-20"), folder);
    await changeSharing(learner, ANN.id, { part: "turns" });
    await shareNow(ann(1200, "2026-09-20"), folder);
    const unread = { ...folder, read: () => Promise.reject(new Error("read")) };
    expect(await shareNow(ann(1201, "2026-11-02"), unread)).toMatchObject({
      value: { answers: 1 },
    });
  });

  it("become one once there are enough of them, though a clock that ran ahead dated them all in a month to come", async () => {
    const { folder, files } = folderInMemory();
    await shareNow(ann(1, "2031-01-01"), folder);
    for (let n = 2; n <= MOST_PARTS; n += 1)
      await shareNow(ann(n, "2026-10-05"), folder);
    expect(files.size).toBe(MOST_PARTS);
    await shareNow(ann(MOST_PARTS + 1, "2026-10-06"), folder);
    expect(await sizes(files)).toEqual([1, MOST_PARTS]);
    expect(await seen(folder)).toHaveLength(MOST_PARTS + 1);
  });

  it("stop no sharing in a folder that lets nobody remove a file", async () => {
    const { folder, files } = folderInMemory();
    await october(folder);
    const strict: ResultsFolder = {
      ...folder,
      remove: () => Promise.resolve(err({ code: "not-allowed" })),
    };
    for (const day of ["2026-11-02", "2026-11-03"])
      expect(await shareNow(ann(4, day), strict)).toMatchObject({ ok: true });
    expect(await readSharing(learner, ANN.id)).toMatchObject({
      value: { sharedOn: dayNumber(20_500) },
    });
    // The bundle is there once, beside what it holds.
    expect(await sizes(files)).toEqual([1, 1, 1, 1, 3]);
    expect(await seen(folder)).toEqual(ids(4));
  });

  it("that were deleted by the coach come back out of the bundle when asked for", async () => {
    const { folder } = folderInMemory();
    await october(folder);
    await shareNow(ann(4, "2026-11-02"), folder);
    await seen(folder);
    await deleteClassmate(coach, ANN.id);
    expect(await seen(folder)).toEqual([]);
    await readAgain(coach);
    expect(await seen(folder)).toEqual(ids(4));
  });

  it("and are damaged in the coach's store are read again out of the bundle", async () => {
    const { folder } = folderInMemory();
    await october(folder);
    await shareNow(ann(4, "2026-11-02"), folder);
    await seen(folder);
    await coach.heard
      .filter(({ kind }) => kind === "answers")
      .modify({ answers: [7] });
    const { readClassLog } =
      await import("../../../../renderer/state/class/class-log");
    await readClassLog(coach, { id: ANN.id, isHere: false });
    expect(await seen(folder)).toEqual(ids(4));
  });

  it("and are damaged when a withdrawal made before them comes, are read again out of the bundle", async () => {
    const { folder, files } = folderInMemory();
    await october(folder);
    await shareNow(ann(4, "2026-11-02"), folder);
    await seen(folder);
    await coach.heard
      .filter(({ kind }) => kind === "answers")
      .modify({ kind: 7 });
    const word = await packResults(withdrawnBlock(on("2026-10-20")));
    files.set(resultsFileName(word.id), word.bytes);
    await seen(folder);
    expect(await seen(folder)).toEqual(ids(4).slice(2));
  });

  it("are whole whenever a window is killed while they are put together", async () => {
    let isKilled = true;
    let deeds = 0;
    for (let until = 0; isKilled; until += 1) {
      isKilled = false;
      await begin();
      const { folder, files } = folderInMemory();
      await october(folder);
      let done = 0;
      const dying = <T>(act: () => Promise<T>) => {
        isKilled ||= done === until;
        if (isKilled) throw new Error("killed");
        done += 1;
        return act();
      };
      const killed: ResultsFolder = {
        ...folder,
        // Half of it is there, as by a drive that is synchronised.
        write: async (name, bytes) => {
          if (done === until) await folder.write(name, bytes.slice(0, 9));
          return dying(() => folder.write(name, bytes));
        },
        read: (name) => dying(() => folder.read(name)),
        remove: (name) => dying(() => folder.remove(name)),
      };
      await shareNow(ann(3, "2026-11-02"), killed).catch(() => undefined);
      deeds = done;
      await lookThroughFolder(coach, folder);
      const heard = await readHeardAnswers(coach, ANN.id);
      expect(heard.ok && heard.value.answers.length, String(until)).toBe(3);
      await shareNow(ann(3, "2026-11-03"), folder);
      await shareNow(ann(3, "2026-11-04"), folder);
      expect(await sizes(files), String(until)).toEqual([3]);
      await takeBack(ann(3, "2026-11-05"), folder, "x");
      expect(files.size).toBe(1);
    }
    // Three read, one written and read back, three removed.
    expect(deeds).toBe(8);
  });
});
