// @vitest-environment node
import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { standingRuns } from "../../../core/runs/run";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import {
  undoableRestore,
  undoRestore,
} from "../../../renderer/storage/last-restore";
import {
  previewRestore,
  restore,
  type RestoreChoice,
} from "../../../renderer/storage/restore";
import { keepRunRow, readRunRows } from "../../../renderer/storage/runs";
import { learnersToRestore } from "../../../renderer/state/restore-words";
import { ANN, BEN } from "../../core/backup/sample-backup";
import { ms, sampleRun } from "../../core/runs/sample-run";
import { backedUp, contentsOf, dumpOf, linesOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";

const CHOICE: RestoreChoice = {
  learners: [ANN.id, BEN.id],
  decks: "new",
  ofClass: true,
  nameless: "From a backup",
  now: 9,
};

const FIRST = sampleRun({ id: "first" });
const SECOND = sampleRun({ id: "second", at: ms(1_800_000_100_000) });
const STRIKE = { id: "strike", learner: ANN.id, at: ms(7), strikes: "first" };
const DAMAGED = { id: "torn", learner: ANN.id, at: "noon" };

async function storeOfAnn(): Promise<TurnwiseDatabase> {
  const database = await openTestDatabase();
  await database.learners.put({ ...ANN });
  for (const row of [FIRST, SECOND, STRIKE])
    expect(await keepRunRow(database, row)).toEqual({
      ok: true,
      value: undefined,
    });
  return database;
}

async function rowsOf(database: TurnwiseDatabase) {
  const read = await readRunRows(database, ANN.id);
  if (!read.ok) throw new Error(read.error.code);
  return read.value;
}

/** A backup of Ann's runs, a damaged one among them; the store is forgotten. */
async function annsBackup() {
  const database = await storeOfAnn();
  await database.runs.put(DAMAGED);
  const bytes = await backedUp(database);
  database.close();
  await forgetDatabases();
  return bytes;
}

beforeEach(forgetDatabases);

describe("runs in the store", () => {
  it("are read as they were kept, and a damaged one is told and left", async () => {
    const database = await storeOfAnn();
    await database.runs.put(DAMAGED);
    await database.runs.put({ ...FIRST, id: "Ben's", learner: BEN.id });
    const { rows, damaged } = await rowsOf(database);
    expect(standingRuns(rows)).toEqual([SECOND]);
    expect(rows).toHaveLength(3);
    expect(damaged).toEqual([{ table: "runs", key: "torn", field: "kind" }]);
    expect(await database.runs.get("torn")).toEqual(DAMAGED);
  });

  it("stay as they are when the same one is kept again", async () => {
    const database = await storeOfAnn();
    await keepRunRow(database, { ...FIRST, time: ms(1) });
    expect(await database.runs.get("first")).toEqual(FIRST);
  });

  it("are not kept for a learner who was deleted meanwhile", async () => {
    const database = await storeOfAnn();
    await database.learners.delete(ANN.id);
    const late = sampleRun({ id: "late" });
    expect(await keepRunRow(database, late)).toEqual({
      ok: false,
      error: { code: "learner-gone" },
    });
    expect(await database.runs.get("late")).toBeUndefined();
  });

  it("are refused with a code by a store that is closed", async () => {
    const database = await storeOfAnn();
    database.close();
    expect(await readRunRows(database, ANN.id)).toEqual({
      ok: false,
      error: { code: "closed" },
    });
  });
});

describe("a backup", () => {
  it("brings runs and their being struck out into another store, and takes them back", async () => {
    const contents = await contentsOf(await annsBackup());
    const database = await openTestDatabase();
    const before = await dumpOf(database);
    const done = await restore(database, contents, CHOICE);
    expect(done.ok && done.value).toMatchObject({ learners: 1, runs: 2 });
    expect(standingRuns((await rowsOf(database)).rows)).toEqual([SECOND]);
    expect(await undoRestore(database)).toEqual({ ok: true, value: undefined });
    expect(await dumpOf(database)).toEqual(before);
  });

  it("adds the runs that are not there, and leaves those that differ", async () => {
    const contents = await contentsOf(await annsBackup());
    const database = await openTestDatabase();
    await database.learners.put({ ...ANN });
    const other = { ...FIRST, time: ms(1) };
    await database.runs.put(other);
    const preview = await previewRestore(database, contents);
    if (!preview.ok) throw new Error(preview.error.code);
    expect(preview.value.learners).toMatchObject([
      { id: ANN.id, conflicts: 1, freshRuns: [SECOND, STRIKE] },
    ]);
    // A run that cannot be read is put back as it was.
    expect(preview.value.leftInFile).toBe(0);
    expect(learnersToRestore(preview.value)).toEqual([
      {
        id: ANN.id,
        name: "Ann",
        what: "1 new whole run, 1 that cannot be read, kept as it is, 1 differs from what is here, which stays.",
        brings: true,
      },
    ]);
    await restore(database, contents, CHOICE);
    expect(await database.runs.get("first")).toEqual(other);
    expect((await rowsOf(database)).rows).toHaveLength(3);
    // A second time there is nothing new, and the first can be taken back.
    const again = await restore(database, contents, CHOICE);
    expect(again.ok && again.value.runs).toBe(0);
    await undoRestore(database);
    expect((await rowsOf(database)).rows).toEqual([other]);
  });

  it("is not taken back once a run was made since", async () => {
    const contents = await contentsOf(await annsBackup());
    const database = await openTestDatabase();
    await restore(database, contents, CHOICE);
    await keepRunRow(database, sampleRun({ id: "since" }));
    expect(await undoableRestore(database)).toEqual({
      ok: true,
      value: undefined,
    });
    expect(await undoRestore(database)).toEqual({
      ok: false,
      error: { code: "practised-since" },
    });
  });

  it("gives runs whose learner the file has lost a learner of a given name", async () => {
    const bytes = await annsBackup();
    const lines = linesOf(bytes)
      .filter((line) => !line.startsWith('{"learner"'))
      .map((line) => line.replace('"learners":1', '"learners":0'));
    const contents = await contentsOf(
      new Uint8Array(new TextEncoder().encode(lines.join("\n"))),
    );
    const database = await openTestDatabase();
    await restore(database, contents, CHOICE);
    expect(await database.learners.toArray()).toEqual([
      { id: ANN.id, name: "From a backup", createdAt: 7 },
    ]);
  });

  it("of one learner holds no other’s runs", async () => {
    const database = await storeOfAnn();
    await database.learners.put({ ...BEN });
    await database.runs.put({ ...FIRST, id: "Ben's", learner: BEN.id });
    const contents = await contentsOf(await backedUp(database, BEN.id));
    expect([...contents.runs.keys()]).toEqual(["Ben's"]);
  });
});
