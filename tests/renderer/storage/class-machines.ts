/** Machines of a coach, on which blocks were taken in and something was done. */
import fc from "fast-check";
import { expect } from "vitest";
import type { Milliseconds, Review } from "../../../core/memory/review";
import type { NamedBlock } from "../../../core/sharing/results-block";
import type { BackupContents } from "../../../core/backup/backup-reader";
import {
  deleteClassmate,
  readAgain,
  readClassmates,
  readHeardAnswers,
  saveNickname,
} from "../../../renderer/storage/classmates";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import { undoRestore } from "../../../renderer/storage/last-restore";
import { restore } from "../../../renderer/storage/restore";
import { keepSheet } from "../../../renderer/storage/sheets";
import { takeIn } from "../../../renderer/storage/take-in";
import { ANN, answersOf, BEN, SHEET } from "../../core/backup/sample-backup";
import {
  answersBlock,
  named,
  withdrawnBlock,
} from "../../core/sharing/sample-block";
import { backedUp, contentsOf } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";

export const CHOICE = {
  learners: [],
  decks: "new",
  ofClass: true,
  nameless: "",
  now: 9,
} as const;

export const [FIRST, SECOND, THIRD] = answersOf(ANN, 3) as [
  Review,
  Review,
  Review,
];

export const OLD = named(1, answersBlock(10, [FIRST]));
export const NEW = named(2, answersBlock(30, [SECOND]));
export const GONE = named(3, withdrawnBlock(20));

export type Deed =
  NamedBlock | ((database: TurnwiseDatabase) => Promise<unknown>);

/** Takes blocks in and does what a coach does, one after the other. */
export async function doIn(
  database: TurnwiseDatabase,
  ...deeds: readonly Deed[]
) {
  for (const deed of deeds)
    if (typeof deed === "function") await deed(database);
    else {
      const taken = await takeIn(database, deed);
      expect(taken.ok).toBe(true);
    }
}

export const callOwl: Deed = (database) =>
  saveNickname(database, ANN.id, "Owl");
export const callElk: Deed = (database) =>
  saveNickname(database, ANN.id, "Elk");
export const deleteAnn: Deed = (database) => deleteClassmate(database, ANN.id);
export const letIn: Deed = (database) => readAgain(database);
export const print: Deed = (database) => keepSheet(database, SHEET);
export const printAgain: Deed = (database) =>
  keepSheet(database, { ...SHEET, printedAt: 99 as Milliseconds });

/** A backup of a machine on which all this was done; the machine is lost. */
export async function backupAfter(
  ...deeds: readonly Deed[]
): Promise<BackupContents> {
  const database = await openTestDatabase();
  await doIn(database, ...deeds);
  const contents = await contentsOf(await backedUp(database));
  database.close();
  await forgetDatabases();
  return contents;
}

export async function storeAfter(...deeds: readonly Deed[]) {
  const database = await openTestDatabase();
  await doIn(database, ...deeds);
  return database;
}

export async function restored(
  database: TurnwiseDatabase,
  contents: BackupContents,
) {
  const done = await restore(database, contents, CHOICE);
  if (!done.ok) throw new Error(JSON.stringify(done.error));
  return done.value;
}

export async function undone(database: TurnwiseDatabase) {
  expect(await undoRestore(database)).toEqual({ ok: true, value: undefined });
}

/** What the coach sees of somebody. */
export async function seen(database: TurnwiseDatabase, learner = ANN.id) {
  const heard = await readHeardAnswers(database, learner);
  const people = await readClassmates(database);
  if (!heard.ok || !people.ok) throw new Error("not read");
  const person = people.value.find(({ id }) => id === learner);
  return {
    answers: heard.value.answers,
    called: person?.nickname ?? person?.name,
  };
}

export const idsOf = ({ answers }: Awaited<ReturnType<typeof seen>>) =>
  answers.map(({ id }) => id);

/** Blocks of two learners: some share answers, some are withdrawals. */
export const BLOCKS: fc.Arbitrary<readonly NamedBlock[]> = fc
  .array(
    fc.record({
      of: fc.constantFrom(ANN, BEN),
      madeAt: fc.integer({ min: 1, max: 12 }),
      name: fc.constantFrom("Ann", "Owl"),
      answers: fc.subarray(answersOf(ANN, 6)),
      isWithdrawn: fc.constantFrom(false, false, false, true),
      total: fc.constantFrom(1000, 2000),
    }),
    { minLength: 1, maxLength: 10 },
  )
  .map((told) =>
    told.map(({ of, madeAt, name, answers, isWithdrawn, total }, i) =>
      named(
        i,
        isWithdrawn
          ? withdrawnBlock(madeAt, { learner: of.id })
          : answersBlock(
              madeAt,
              answers.map((one) => ({ ...one, total: total as Milliseconds })),
              { learner: of.id, name },
            ),
      ),
    ),
  );
