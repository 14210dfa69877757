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
import {
  resultsFileName,
  withdrawalFileName,
} from "../../../../core/sharing/results-file-name";
import type { ResultsFolder } from "../../../../renderer/platform/results-folder";
import { lookThroughFolder } from "../../../../renderer/state/sharing/intake";
import { shareNow, takeBack } from "../../../../renderer/state/sharing/share";
import { readHeardAnswers } from "../../../../renderer/storage/classmates";
import {
  openDatabase,
  type TurnwiseDatabase,
} from "../../../../renderer/storage/database";
import { saveLearner } from "../../../../renderer/storage/learners";
import {
  learnerMark,
  packResults,
} from "../../../../renderer/storage/results-files";
import {
  changeSharing,
  readSharing,
} from "../../../../renderer/storage/sent-blocks";
import { ANN, answersOf, BEN } from "../../../core/backup/sample-backup";
import {
  answersBlock,
  withdrawnBlock,
} from "../../../core/sharing/sample-block";
import { windowLocks } from "../../storage/window-locks";
import { folderInMemory } from "./folder-in-memory";

const NAMES = ["first", "second", "coach"] as const;
const machines = new Map<string, TurnwiseDatabase>();

beforeAll(async () => {
  vi.stubGlobal("navigator", { locks: windowLocks() });
  for (const name of NAMES) {
    const opened = await openDatabase({}, windowLocks(), name);
    if (!opened.ok) throw new Error(opened.error.code);
    machines.set(name, opened.value);
  }
});
beforeEach(async () => {
  for (const database of machines.values())
    for (const table of database.tables) await table.clear();
  for (const name of ["first", "second"] as const) {
    await saveLearner(at(name), ANN);
    await choose(name);
  }
});
afterAll(async () => {
  vi.unstubAllGlobals();
  for (const [name, database] of machines) {
    database.close();
    await Dexie.delete(name);
  }
});

/** The store of one machine. */
function at(name: (typeof NAMES)[number]): TurnwiseDatabase {
  const database = machines.get(name);
  if (database === undefined) throw new Error("no such machine");
  return database;
}

const choose = (machine: "first" | "second") =>
  changeSharing(at(machine), ANN.id, { part: "answers" });

const ann = (machine: "first" | "second", answers: number, now: number) => ({
  ...{ database: at(machine), learner: ANN, reviews: answersOf(ANN, answers) },
  ...{ today: dayNumber(20_500), now: now as Milliseconds },
});

/** What the coach sees of Ann after a look through the folder. */
async function seen(folder: ResultsFolder) {
  await lookThroughFolder(at("coach"), folder);
  const heard = await readHeardAnswers(at("coach"), ANN.id);
  return heard.ok ? heard.value.answers.map(({ id }) => id) : [];
}

const STOPPED = { ok: false, error: { code: "taken-back-elsewhere" } };

/** A date that a clock which ran ahead put on a withdrawal. */
const FAR_AHEAD = 4_000_000_000_000;

describe("everything taken back on one machine", () => {
  it("stops the other before it shares anything, once, until the learner chooses again", async () => {
    const { folder, files } = folderInMemory();
    await shareNow(ann("first", 2, 1000), folder);
    await shareNow(ann("second", 1, 1100), folder);
    await takeBack(ann("first", 2, 2000), folder, "x");
    expect(await shareNow(ann("second", 4, 3000), folder)).toEqual(STOPPED);
    // The files of this machine that were taken back went with it.
    expect(files.size).toBe(1);
    expect(await seen(folder)).toEqual([]);
    expect(await readSharing(at("second"), ANN.id)).toMatchObject({
      value: { part: "nothing", stoppedElsewhere: true },
    });
    await choose("second");
    expect(await shareNow(ann("second", 4, 4000), folder)).toMatchObject({
      value: { answers: 4 },
    });
    expect(await seen(folder)).toHaveLength(4);
  });

  it("stops nobody else, and not the machine itself when its learner chooses again", async () => {
    const { folder } = folderInMemory();
    await takeBack(ann("first", 2, 2000), folder, "x");
    await choose("first");
    expect(await shareNow(ann("first", 2, 3000), folder)).toMatchObject({
      value: { answers: 2 },
    });
    await saveLearner(at("second"), BEN);
    await changeSharing(at("second"), BEN.id, { part: "answers" });
    const ben = { ...ann("second", 1, 3000), learner: BEN };
    expect(await shareNow(ben, folder)).toMatchObject({ ok: true });
  });

  it("by a clock that ran far ahead, hides nothing that is shared later from any machine", async () => {
    const { folder } = folderInMemory();
    await shareNow(ann("second", 1, 1000), folder);
    await takeBack(ann("first", 2, FAR_AHEAD), folder, "x");
    await choose("first");
    await shareNow(ann("first", 2, 2000), folder);
    expect(await seen(folder)).toEqual(["Ann-0", "Ann-1"]);
    expect(await shareNow(ann("second", 3, 2000), folder)).toEqual(STOPPED);
    await choose("second");
    await shareNow(ann("second", 3, 3000), folder);
    expect(await seen(folder)).toEqual(["Ann-0", "Ann-1", "Ann-2"]);
  });

  it("stops the other though the word has not arrived whole, and is read when it has", async () => {
    const { folder, files } = folderInMemory();
    await shareNow(ann("second", 1, 1000), folder);
    await takeBack(ann("first", 2, FAR_AHEAD), folder, "x");
    const [word] = [...files.keys()].filter((name) => name.includes("-back-"));
    const whole = files.get(word ?? "");
    if (word === undefined || whole === undefined) throw new Error("no word");
    files.set(word, whole.slice(0, 20));
    expect(await shareNow(ann("second", 3, 2000), folder)).toEqual(STOPPED);
    await choose("second");
    expect(await shareNow(ann("second", 3, 2000), folder)).toMatchObject({
      value: { answers: 2 },
    });
    files.set(word, whole);
    // What was laid there by the wrong date goes out anew by the right one.
    expect(await shareNow(ann("second", 3, 3000), folder)).toMatchObject({
      value: { answers: 3 },
    });
    expect(await seen(folder)).toEqual(["Ann-0", "Ann-1", "Ann-2"]);
  });

  it("is looked for without reading anybody else's files, and believed of nobody else", async () => {
    const { folder, files } = folderInMemory();
    const others = await packResults(
      answersBlock(500, answersOf(BEN, 2), { learner: BEN.id }),
    );
    files.set(resultsFileName(others.id), others.bytes);
    const word = await packResults(withdrawnBlock(900, { learner: BEN.id }));
    for (const learner of [ANN.id, BEN.id])
      files.set(
        withdrawalFileName(word.id, await learnerMark(learner)),
        word.bytes,
      );
    const read: string[] = [];
    const watched: ResultsFolder = {
      ...folder,
      read: (name) => {
        read.push(name);
        return folder.read(name);
      },
    };
    // It has her mark, so that it stops her; it is Ben's, so that nothing of hers goes.
    expect(await shareNow(ann("second", 1, 1000), watched)).toEqual(STOPPED);
    expect(read).toEqual([
      withdrawalFileName(word.id, await learnerMark(ANN.id)),
    ]);
    await choose("second");
    expect(await shareNow(ann("second", 1, 600), watched)).toMatchObject({
      value: { answers: 1 },
    });
    expect(await seen(folder)).toEqual(["Ann-0"]);
  });
});
