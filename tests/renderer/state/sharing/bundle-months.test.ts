// @vitest-environment node
import "fake-indexeddb/auto";
import { Dexie } from "dexie";
import fc from "fast-check";
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
import { resultsFileName } from "../../../../core/sharing/results-file-name";
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
import {
  packBundle,
  readResultsIn,
} from "../../../../renderer/storage/results-bundle";
import {
  learnerMark,
  packResults,
} from "../../../../renderer/storage/results-files";
import { changeSharing } from "../../../../renderer/storage/sent-blocks";
import { withdrawalFileName } from "../../../../core/sharing/results-file-name";
import { ANN, answersOf, BEN } from "../../../core/backup/sample-backup";
import {
  answersBlock,
  withdrawnBlock,
} from "../../../core/sharing/sample-block";
import { tries } from "../../../soak/times";
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

/** Blocks of two learners, withdrawals among them, and of each whether its own file is there and in which bundle it lies. */
const LAID = fc.array(
  fc.record({
    of: fc.constantFrom(ANN, BEN),
    madeAt: fc.integer({ min: 1, max: 12 }),
    answers: fc.subarray(answersOf(ANN, 6)),
    isWithdrawn: fc.constantFrom(false, false, false, true),
    isAlone: fc.boolean(),
    bundle: fc.integer({ min: 0, max: 2 }),
  }),
  { minLength: 1, maxLength: 10 },
);

describe("bundles", () => {
  it("say what their blocks say, in any order, cut or doubled, whatever else is there", async () => {
    await fc.assert(
      fc.asyncProperty(
        LAID,
        fc.infiniteStream(fc.nat()),
        async (laid, chance) => {
          const draw = () => {
            const [value = 0] = chance.take(1);
            return value;
          };
          const small: [string, Uint8Array<ArrayBuffer>][] = [];
          const mixed: [string, Uint8Array<ArrayBuffer>][] = [];
          const bundles = new Map<string, Uint8Array<ArrayBuffer>[]>();
          for (const { of, madeAt, answers, isWithdrawn, ...where } of laid) {
            const { id, bytes } = await packResults(
              isWithdrawn
                ? withdrawnBlock(madeAt, { learner: of.id })
                : answersBlock(madeAt, answers, { learner: of.id }),
            );
            small.push([resultsFileName(id), bytes]);
            if (isWithdrawn || where.isAlone)
              mixed.push([resultsFileName(id), bytes]);
            if (isWithdrawn) continue;
            const key = `${of.id} ${where.bundle}`;
            bundles.set(key, [...(bundles.get(key) ?? []), bytes]);
          }
          for (const parts of bundles.values()) {
            const { id, bytes } = await packBundle(parts);
            mixed.push([resultsFileName(id), bytes]);
            mixed.push([`${id} (1).turnwise-results`, bytes.slice(0, -1)]);
          }
          const shown = async (looks: (typeof small)[]) => {
            for (const table of coach.tables) await table.clear();
            for (const files of looks) {
              const { folder, files: there } = folderInMemory();
              for (const [name, bytes] of files) there.set(name, bytes);
              await lookThroughFolder(coach, folder);
            }
            return Promise.all(
              [ANN, BEN].map(({ id }) => readHeardAnswers(coach, id)),
            );
          };
          const shuffled = mixed
            .map((file) => ({ file, key: draw() }))
            .toSorted((a, b) => a.key - b.key)
            .map(({ file }) => file);
          const cut = draw() % (shuffled.length + 1);
          expect(
            await shown([shuffled.slice(0, cut), shuffled, shuffled]),
          ).toEqual(await shown([small]));
        },
      ),
      { numRuns: tries(60) },
    );
  });
});
