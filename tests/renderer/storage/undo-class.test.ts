// @vitest-environment node
import "fake-indexeddb/auto";
import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { readKnownBlocks } from "../../../renderer/storage/classmates";
import { undoRestore } from "../../../renderer/storage/last-restore";
import { deleteLearner } from "../../../renderer/storage/learners";
import { previewRestore } from "../../../renderer/storage/restore";
import type { ResultsInFile } from "../../../renderer/storage/results-bundle";
import { noteBundle } from "../../../renderer/storage/take-in";
import { classInWords } from "../../../renderer/state/restore-words";
import { ANN, BEN } from "../../core/backup/sample-backup";
import {
  answersBlock,
  named,
  withdrawnBlock,
} from "../../core/sharing/sample-block";
import { tries } from "../../soak/times";
import { backedUp, contentsOf, dumpOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import {
  OLD,
  NEW,
  GONE,
  type Deed,
  doIn,
  callOwl,
  callElk,
  deleteAnn,
  print,
  printAgain,
  backupAfter,
  storeAfter,
  restored,
  undone,
  seen,
  idsOf,
  BLOCKS,
  THIRD,
} from "./class-machines";
beforeEach(forgetDatabases);

describe("a restore that is taken back", () => {
  it("does not bring back what a learner took back, as the file told", async () => {
    const contents = await backupAfter(GONE, NEW);
    const database = await storeAfter(OLD, callOwl);
    const plan = await previewRestore(database, contents);
    expect(plan.ok && classInWords(plan.value)).toBe(
      "New here: 1 person who shared results. 1 person has taken results back: these go from here too, for good.",
    );
    await restored(database, contents);
    expect(idsOf(await seen(database))).toEqual(["Ann-1"]);
    await undone(database);
    expect(idsOf(await seen(database))).toEqual([]);
    expect(JSON.stringify(await dumpOf(database))).not.toMatch(/Ann-/);
    expect(await database.classmates.get(ANN.id)).toEqual({
      id: ANN.id,
      nickname: "Owl",
      withdrawnAt: 20,
    });
  });

  it.each<[string, Deed, string[], string | undefined]>([
    [
      "a block that came since",
      named(8, answersBlock(40, [THIRD], { name: "A." })),
      ["Ann-2"],
      "A.",
    ],
    ["a nickname that was given since", callElk, [], undefined],
    ["that they were deleted since", deleteAnn, [], undefined],
    ["what they took back since", named(8, withdrawnBlock(50)), [], undefined],
  ])("leaves %s", async (_what, since, ids, called) => {
    const contents = await backupAfter(OLD, NEW, callOwl);
    const database = await openTestDatabase();
    await restored(database, contents);
    await doIn(database, since);
    const {
      nickname: given,
      leftOut,
      withdrawnAt,
    } = (await database.classmates.get(ANN.id)) ?? {};
    await undone(database);
    const shown = await seen(database);
    expect([idsOf(shown), shown.called]).toEqual([ids, called]);
    expect(await database.classmates.get(ANN.id)).toMatchObject({
      ...(given === "Elk" && { nickname: given }),
      ...(leftOut === true && { leftOut }),
      ...(withdrawnAt !== undefined && { withdrawnAt }),
    });
    expect(JSON.stringify(await dumpOf(database))).not.toContain("Owl");
  });

  it("leaves nothing of somebody who was deleted since as a learner", async () => {
    const contents = await backupAfter(OLD, NEW);
    const database = await openTestDatabase();
    const before = await dumpOf(database);
    await restored(database, contents);
    await deleteLearner(database, ANN.id);
    await undone(database);
    expect(await dumpOf(database)).toEqual(before);
  });

  it("leaves a block that came since and says nothing new of its learner", async () => {
    const contents = await backupAfter(NEW);
    const database = await openTestDatabase();
    await restored(database, contents);
    await doIn(database, OLD);
    await undone(database);
    const shown = await seen(database);
    expect([idsOf(shown), shown.called]).toEqual([["Ann-0"], "Ann"]);
  });

  it("leaves nothing away that a bundle has, though all of it was here when it was read", async () => {
    const contents = await backupAfter(GONE, NEW);
    const database = await openTestDatabase();
    await restored(database, contents);
    const bundle: ResultsInFile = {
      id: "b".repeat(64),
      blocks: [OLD, NEW],
      isBundle: true,
    };
    await noteBundle(database, bundle);
    await undone(database);
    const known = await readKnownBlocks(database);
    expect(known.ok && known.value.has(bundle.id)).toBe(false);
  });

  it("leaves a sheet that was printed again since", async () => {
    const contents = await backupAfter(print);
    const database = await openTestDatabase();
    await restored(database, contents);
    await doIn(database, printAgain);
    await undone(database);
    expect(await database.sheets.count()).toBe(1);
  });

  it("are as before once the restore is taken back, but for what was taken back", async () => {
    const database = await openTestDatabase();
    await fc.assert(
      fc.asyncProperty(
        BLOCKS,
        BLOCKS,
        fc.boolean(),
        async (there, here, isDeleted) => {
          for (const table of database.tables) await table.clear();
          // Other blocks than those here have other ids.
          const far = there.map(({ block }, i) => named(100 + i, block));
          await doIn(database, ...far, callOwl);
          const file = await contentsOf(await backedUp(database));
          for (const table of database.tables) await table.clear();
          await doIn(database, ...here);
          if (isDeleted) await doIn(database, deleteAnn);
          const before = await dumpOf(database);
          // Withdrawals that hide something here are said anew: nothing is left to hide.
          await doIn(
            database,
            ...far.filter(({ block }) => block.kind === "withdrawn"),
          );
          const withdrawn = await seen(database);
          const bens = await seen(database, BEN.id);
          for (const table of database.tables) await table.clear();
          for (const [name, rows] of Object.entries(before))
            await database.table(name).bulkPut([...rows]);
          await restored(database, file);
          await undoRestore(database);
          expect(await seen(database)).toEqual(withdrawn);
          expect(await seen(database, BEN.id)).toEqual(bens);
          if (!far.some(({ block }) => block.kind === "withdrawn"))
            expect(await dumpOf(database)).toEqual(before);
        },
      ),
      { numRuns: tries(100) },
    );
    database.close();
  });
});
