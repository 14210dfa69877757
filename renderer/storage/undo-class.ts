/**
 * Taking back what a restore brought a class.
 *
 * A withdrawal that hides something here is not taken back with the restore:
 * its learner said it, whoever brought it.
 */
import { isSameJson } from "../../core/same-json";
import { forgetComputed } from "./cache";
import { joined, later, readClassmateRow, rowOfBlocks } from "./classmate-row";
import type { RawRow, TurnwiseDatabase } from "./database";
import { type ClassmateRow, parseClassmateRow } from "./heard-rows";

/** What a restore added of somebody who shared results. */
export interface RestoredPerson {
  readonly id: string;
  /** Their row before it, readable or not. */
  readonly before?: RawRow | undefined;
  readonly after: RawRow;
  /** The ids of the blocks. */
  readonly added: readonly string[];
}

/** A sheet that a restore added. */
export interface RestoredSheet {
  readonly code: string;
  /** As its row says it: printed again, it is another. */
  readonly printedAt: unknown;
}

/** Lets the files be read again of bundles in which something counts: it may have been known by the restore alone. */
async function forgetBundles(
  database: TurnwiseDatabase,
  id: string,
): Promise<void> {
  const { withdrawnAt = -1 } = await readClassmateRow(database, id);
  await database.heard
    .where("learner")
    .equals(id)
    .filter(
      ({ kind, madeAt }) => kind === "emptied" && Number(madeAt) > withdrawnAt,
    )
    .delete();
}

/** Whether their row of before tells what is left of them: a block that came since need not have changed the row. */
async function tellsAll(
  database: TurnwiseDatabase,
  { id, before }: RestoredPerson,
): Promise<boolean> {
  const { shared } = await rowOfBlocks(database, id);
  const was = parseClassmateRow(before, id);
  if (shared === undefined || !was.ok) return true;
  const both = joined(was.value.shared, {
    ...shared,
    answers: [{ at: shared.newest }],
  });
  return isSameJson(both, was.value.shared);
}

/** Their row without what the restore brought, where other things came to it since. */
async function rowWithout(
  database: TurnwiseDatabase,
  { id, before, after }: RestoredPerson,
): Promise<ClassmateRow | undefined> {
  const now = await readClassmateRow(database, id);
  const { shared, withdrawnAt } = await rowOfBlocks(database, id);
  const was = parseClassmateRow(before, id);
  const earlier: ClassmateRow = was.ok ? was.value : { id };
  const nickname =
    now.nickname === after["nickname"] ? earlier.nickname : now.nickname;
  const leftOut =
    now.leftOut === after["leftOut"] ? earlier.leftOut : now.leftOut;
  const until = later(withdrawnAt, earlier.withdrawnAt);
  const row: ClassmateRow = {
    id,
    ...(shared !== undefined && { shared }),
    ...(nickname !== undefined && { nickname }),
    ...(until !== undefined && { withdrawnAt: until }),
    ...(leftOut !== undefined && { leftOut }),
  };
  return before === undefined && Object.keys(row).length === 1
    ? undefined
    : row;
}

/** Takes back what a restore brought a class; what was done since stays. Call it inside a transaction over the three tables and the cache. */
export async function undoClass(
  database: TurnwiseDatabase,
  people: readonly RestoredPerson[],
  sheetsAdded: readonly RestoredSheet[],
): Promise<void> {
  const { sheets, classmates, heard } = database;
  for (const one of people) {
    await heard.bulkDelete([...one.added]);
    const now = await classmates.get(one.id);
    // Deleted since, with everything that was heard of them.
    if (now === undefined) continue;
    await forgetBundles(database, one.id);
    const row =
      isSameJson(now, one.after) && (await tellsAll(database, one))
        ? one.before
        : await rowWithout(database, one);
    if (row === undefined) await classmates.delete(one.id);
    else await classmates.put(row);
  }
  // A sheet that was printed again since is the coach's again, and stays.
  for (const { code, printedAt } of sheetsAdded)
    if ((await sheets.get(code))?.["printedAt"] === printedAt)
      await sheets.delete(code);
  await forgetComputed(
    database,
    people.map(({ id }) => id),
  );
}
