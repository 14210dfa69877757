// @vitest-environment node
import "fake-indexeddb/auto";
import fc from "fast-check";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Milliseconds } from "../../../core/memory/review";
import type { BackupContents } from "../../../core/backup/backup-reader";
import { deleteClassmate } from "../../../renderer/storage/classmates";
import { noteDamagedResults } from "../../../renderer/storage/damaged-results";
import { surveyClass } from "../../../renderer/storage/class-survey";
import { previewRestore, restore } from "../../../renderer/storage/restore";
import { noteSent } from "../../../renderer/storage/sent-blocks";
import { readSheets } from "../../../renderer/storage/sheets";
import {
  classInWords,
  restoredInWords,
} from "../../../renderer/state/restore-words";
import { ANN, answersOf, BEN, SHEET } from "../../core/backup/sample-backup";
import {
  answersBlock,
  named,
  withdrawnBlock,
} from "../../core/sharing/sample-block";
import { tellSoak, tries } from "../../soak/times";
import { backedUp, contentsOf, dumpOf, linesOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import {
  CHOICE,
  OLD,
  NEW,
  GONE,
  type Deed,
  doIn,
  callOwl,
  callElk,
  deleteAnn,
  letIn,
  print,
  printAgain,
  backupAfter,
  storeAfter,
  restored,
  undone,
  seen,
  idsOf,
  BLOCKS,
  FIRST,
  SECOND,
} from "./class-machines";
beforeEach(forgetDatabases);

describe("a coach whose machine is lost", () => {
  it("has sheets, nicknames, results and what was deleted back, and can take all that back", async () => {
    const ben = named(
      9,
      answersBlock(1, answersOf(BEN, 2), { learner: BEN.id }),
    );
    const machine = [OLD, GONE, NEW, callOwl, print, ben] as const;
    const contents = await backupAfter(...machine, (database) =>
      deleteClassmate(database, BEN.id),
    );
    const database = await openTestDatabase();
    const before = await dumpOf(database);
    const done = await restored(database, contents);
    expect(done).toMatchObject({ sheets: 1, people: 2, learners: 0 });
    expect(restoredInWords(done)).toBe(
      "Restored: 0 answers, 1 printed sheet and 2 people who shared results.",
    );
    expect(await readSheets(database)).toEqual({ ok: true, value: [SHEET] });
    const shown = await seen(database);
    expect([idsOf(shown), shown.called]).toEqual([["Ann-1"], "Owl"]);
    // What was taken back, and what was deleted, stays away.
    await doIn(database, OLD, ben);
    expect(idsOf(await seen(database))).toEqual(["Ann-1"]);
    expect(idsOf(await seen(database, BEN.id))).toEqual([]);
    await database.heard.bulkDelete([OLD.id, ben.id]);
    await undone(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it("has the results in the order in which the folder would bring them, to the last row", async () => {
    const contents = await backupAfter(OLD, NEW, named(4, withdrawnBlock(5)));
    const database = await openTestDatabase();
    await restored(database, contents);
    const { heard, classmates } = await dumpOf(database);
    await forgetDatabases();
    const other = await storeAfter(named(4, withdrawnBlock(5)), NEW, OLD);
    expect(await dumpOf(other)).toMatchObject({ heard, classmates });
  });

  it("finds nothing in the backup of what this machine sent itself", async () => {
    const contents = await backupAfter((database) =>
      noteSent(database, {
        id: OLD.id,
        learner: ANN.id,
        madeAt: 10 as Milliseconds,
        part: "answers",
        answers: ["Ann-0"],
      }),
    );
    expect([contents.heard.size, contents.classmates.size]).toEqual([0, 0]);
  });

  it("finds none of it in a backup of one learner", async () => {
    const database = await storeAfter(OLD, callOwl, print);
    await database.learners.put({ ...ANN });
    const text = linesOf(await backedUp(database, ANN.id)).join("");
    expect(text).toContain(ANN.id);
    expect(text).not.toMatch(/Owl|Ann-0|"sheet"|"heard":{/);
  });

  it("with more results than a file takes finds the newest, and everything that was taken back", async () => {
    const database = await storeAfter(OLD, NEW, GONE);
    const late = named(4, answersBlock(40, [FIRST, SECOND]));
    const empty = named(5, answersBlock(50, []));
    await doIn(database, NEW, late, empty);
    const ids = async (room: number) => {
      const survey = await surveyClass(database, room);
      return [survey.blocks, survey.leftOut];
    };
    const [gone, second, fourth, fifth] = [GONE, NEW, late, empty].map(
      ({ id }) => id,
    );
    expect(await ids(4)).toEqual([[gone, fifth, fourth, second], 0]);
    expect(await ids(3)).toEqual([[gone, fifth, fourth], 1]);
    // An older one is not let in before a newer one that is too large.
    expect(await ids(2)).toEqual([[gone, fifth], 2]);
    expect(await ids(-1)).toEqual([[gone], 3]);
  });

  it("who does not want it, is not given it", async () => {
    const contents = await backupAfter(OLD, callOwl, print);
    const database = await openTestDatabase();
    const before = await dumpOf(database);
    const done = await restore(database, contents, {
      ...CHOICE,
      ofClass: false,
    });
    expect(done.ok).toBe(true);
    expect(await dumpOf(database)).toEqual(before);
  });

  it("gets back a block that is larger than a line", async () => {
    const answers = Array.from({ length: 4000 }, (_, i) => ({
      ...answersBlock(10, [FIRST]).answers[0],
      id: `many-${i}`,
    }));
    const large = named(7, {
      ...answersBlock(10, []),
      answers: answers as never,
    });
    const contents = await backupAfter(large);
    const database = await openTestDatabase();
    await restored(database, contents);
    expect(idsOf(await seen(database))).toHaveLength(4000);
  });
});

describe("a restore onto a class that is here", () => {
  it.each<
    [string, Deed[], Deed[], { ids: string[]; called: string | undefined }]
  >([
    [
      "does not bring back what a later withdrawal here hid",
      [OLD],
      [GONE],
      { ids: [], called: undefined },
    ],
    [
      "does not bring back what was withdrawn after it came",
      [OLD, NEW],
      [OLD, GONE],
      { ids: ["Ann-1"], called: "Ann" },
    ],
    [
      "does not bring back what was deleted here",
      [OLD, NEW, callOwl],
      [OLD, deleteAnn],
      { ids: [], called: undefined },
    ],
    [
      "hides what was taken back, as it is known from the file",
      [GONE],
      [OLD, callOwl],
      { ids: [], called: undefined },
    ],
    [
      "does not delete here what was deleted before it was let in again",
      [OLD, deleteAnn],
      [OLD],
      { ids: ["Ann-0"], called: "Ann" },
    ],
    [
      "leaves the nickname that is here",
      [OLD, callOwl],
      [callElk, OLD, callElk],
      { ids: ["Ann-0"], called: "Elk" },
    ],
    [
      "adds a nickname where none is here",
      [OLD, callOwl],
      [OLD],
      { ids: ["Ann-0"], called: "Owl" },
    ],
  ])("%s", async (_what, there, here, { ids, called }) => {
    const contents = await backupAfter(...there);
    const database = await storeAfter(...here);
    await restored(database, contents);
    const shown = await seen(database);
    expect([idsOf(shown), shown.called]).toEqual([ids, called]);
    // A second time there is nothing new.
    expect(await restored(database, contents)).toMatchObject({ people: 0 });
  });

  it("after what was deleted was let in again, keeps no block away", async () => {
    const contents = await backupAfter(OLD, deleteAnn);
    const database = await storeAfter(OLD, deleteAnn, letIn);
    await restored(database, contents);
    await doIn(database, OLD);
    expect(idsOf(await seen(database))).toEqual(["Ann-0"]);
  });

  it("mends a damaged row of somebody, and the damaged one is back when it is taken back", async () => {
    const contents = await backupAfter(OLD, callOwl);
    const database = await storeAfter(OLD);
    await database.classmates.put({ id: ANN.id, nickname: 7 });
    const before = await dumpOf(database);
    await restored(database, contents);
    expect((await seen(database)).called).toBe("Owl");
    await undone(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it("puts a block right that was found damaged here, and lets it be when it is taken back", async () => {
    const contents = await backupAfter(OLD, NEW);
    const database = await storeAfter(OLD);
    await database.heard.update(OLD.id, { answers: [7] });
    // Whoever reads the class finds it.
    await noteDamagedResults(database, [OLD.id]);
    await restored(database, contents);
    expect(idsOf(await seen(database))).toEqual(["Ann-0", "Ann-1"]);
    expect(await restored(database, contents)).toMatchObject({ people: 0 });
    await undone(database);
    expect(idsOf(await seen(database))).toEqual(["Ann-0"]);
  });

  it("leaves what cannot be read in the file, where it would keep a whole block away", async () => {
    const contents = await backupAfter(OLD, async (database) => {
      await database.heard.put({
        id: "torn",
        learner: ANN.id,
        kind: "answers",
      });
      await database.heard.put({
        id: NEW.id,
        learner: ANN.id,
        kind: "answers",
        answers: [1n],
      });
      await database.classmates.put({ id: "torn", nickname: 7 });
    });
    const database = await openTestDatabase();
    const plan = await previewRestore(database, contents);
    expect(plan.ok && plan.value.leftInFile).toBe(3);
    expect(plan.ok && classInWords(plan.value)).toBe(
      "New here: 1 person who shared results.",
    );
    await restored(database, contents);
    expect(await database.heard.toCollection().primaryKeys()).toEqual([OLD.id]);
    await doIn(database, NEW);
    expect(idsOf(await seen(database))).toEqual(["Ann-0", "Ann-1"]);
  });

  it("keeps a sheet as it is here", async () => {
    const contents = await backupAfter(print);
    const database = await storeAfter(printAgain);
    expect(await restored(database, contents)).toMatchObject({ sheets: 0 });
    expect(await readSheets(database)).toMatchObject({
      value: [{ printedAt: 99 }],
    });
  });

  it("throws away what was computed of those it touches, and so does taking it back", async () => {
    const contents = await backupAfter(OLD);
    const database = await openTestDatabase();
    const compute = () =>
      database.cache.bulkPut(
        [ANN.id, BEN.id].map((learner) => ({ learner, name: "class-summary" })),
      );
    const computed = async () =>
      (await database.cache.toArray()).map(({ learner }) => learner);
    await compute();
    await restored(database, contents);
    expect(await computed()).toEqual([BEN.id]);
    await compute();
    await undone(database);
    expect(await computed()).toEqual([BEN.id]);
  });

  it("is one strict transaction", async () => {
    const contents = await backupAfter(OLD, GONE, NEW, print);
    const transaction = vi.spyOn(IDBDatabase.prototype, "transaction");
    const database = await storeAfter(OLD);
    transaction.mockClear();
    await restored(database, contents);
    expect(transaction.mock.calls.map(([, ...rest]) => rest)).toEqual([
      ["readwrite", { durability: "strict" }],
    ]);
    transaction.mockRestore();
  });
});

const UNIONS = tries(100);

describe("results from backups and from blocks", () => {
  it("are one union: a machine that lost everything shows what it would have heard, whichever way it came", async () => {
    const database = await openTestDatabase();
    const clear = async () => {
      for (const table of database.tables) await table.clear();
    };
    const shown = async () => [
      await seen(database),
      await seen(database, BEN.id),
    ];
    await fc.assert(
      fc.asyncProperty(
        BLOCKS.chain((blocks) =>
          fc.tuple(
            fc.constant(blocks),
            // Of each block whether each of two backups and the machine has it: at least one.
            fc.array(fc.integer({ min: 1, max: 7 }), {
              minLength: blocks.length,
              maxLength: blocks.length,
            }),
            fc.shuffledSubarray([0, 1, 2, 0, 1], { minLength: 5 }),
          ),
        ),
        async ([blocks, where, order]) => {
          const part = (n: number) =>
            blocks.filter((_, i) => ((where[i] ?? 0) >> n) % 2 === 1);
          const files: BackupContents[] = [];
          for (const n of [0, 1]) {
            await clear();
            await doIn(database, ...part(n));
            files.push(await contentsOf(await backedUp(database)));
          }
          await clear();
          await doIn(database, ...blocks);
          const once = await shown();
          await clear();
          for (const n of order) {
            const file = files[n];
            if (file === undefined) await doIn(database, ...part(2));
            else await restored(database, file);
          }
          expect(await shown()).toEqual(once);
        },
      ),
      { numRuns: UNIONS },
    );
    tellSoak(`${UNIONS} classes put together from two backups and a folder`);
    database.close();
  });
});
