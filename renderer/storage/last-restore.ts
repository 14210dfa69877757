/**
 * The last restore, so that it can be taken back: what it added and what it
 * put something else in the place of. Only until the next round: from then on
 * answers rest on what was restored, and a plan of the day has been made of it.
 */
import * as v from "valibot";
import { parseReview } from "../../core/memory/review-schema";
import { err, ok, type Result } from "../../core/result";
import { isSameJson } from "../../core/same-json";
import { reviewsInBlock } from "./backup-survey";
import { forgetComputed } from "./cache";
import type { RawRow, TurnwiseDatabase } from "./database";
import { ownSettingKeys } from "./learners";
import type { ChangedDeck } from "./restore-plan";
import { type StorageError, tryReading, tryWriting } from "./storage-error";
import {
  type RestoredPerson,
  type RestoredSheet,
  undoClass,
} from "./undo-class";

/** The settings' key of the last restore. */
export const LAST_RESTORE_KEY = "last-restore";

const ROW = v.record(v.string(), v.unknown());

const LAST_RESTORE = v.object({
  at: v.number(),
  madeAt: v.number(),
  learners: v.array(
    v.object({
      id: v.string(),
      isNew: v.boolean(),
      replacedRow: v.optional(ROW),
      added: v.array(v.string()),
      addedBeside: v.array(v.string()),
      replacedReviews: v.array(ROW),
      // Absent in what a version before them did.
      runsAdded: v.optional(v.array(v.string()), []),
      mark: v.string(),
    }),
  ),
  decksAdded: v.array(ROW),
  decksReplaced: v.array(v.object({ here: ROW, inFile: ROW })),
  // As with runs.
  people: v.optional(
    v.array(
      v.object({
        id: v.string(),
        before: v.optional(ROW),
        after: ROW,
        added: v.array(v.string()),
      }),
    ),
    [],
  ),
  sheetsAdded: v.optional(
    v.array(v.object({ code: v.string(), printedAt: v.unknown() })),
    [],
  ),
});

/** What a restore did to one learner. */
export interface RestoredLearner {
  readonly id: string;
  /** Whether the learner was not here before. */
  readonly isNew: boolean;
  /** Their damaged row, which the file's took the place of. */
  readonly replacedRow?: RawRow | undefined;
  /** The ids of the answers that were added. */
  readonly added: readonly string[];
  /** Of those added while a damaged one of the same id stays in its block. */
  readonly addedBeside: readonly string[];
  /** Damaged answers that readable ones took the place of. */
  readonly replacedReviews: readonly RawRow[];
  /** The ids of the whole runs that were added, and of their being struck out. */
  readonly runsAdded: readonly string[];
  /** How their log, rounds and runs stood after the restore, as `logMark` says. */
  readonly mark: string;
}

/** What a restore did, as it is kept. */
export interface LastRestore {
  /** When it was done, UTC. Units: milliseconds. */
  readonly at: number;
  /** When its backup was made, UTC. Units: milliseconds. */
  readonly madeAt: number;
  readonly learners: readonly RestoredLearner[];
  readonly decksAdded: readonly RawRow[];
  readonly decksReplaced: readonly ChangedDeck[];
  readonly people: readonly RestoredPerson[];
  readonly sheetsAdded: readonly RestoredSheet[];
}

/** Why a restore cannot be taken back. */
export type UndoRestoreError =
  | StorageError
  /** None is known, or what is kept of it cannot be read. */
  | { readonly code: "nothing-to-undo" }
  /** A round was begun, an answer given or a whole run made since, by somebody it restored. */
  | { readonly code: "practised-since" };

/**
 * A text that changes with every answer, every round and every whole run of a
 * learner. Counted, not timed: a clock may be set back. Without a run it is as
 * it was before there were any. Call it inside a transaction over reviews,
 * blocks, rounds and runs.
 */
export async function logMark(
  { reviews, blocks, rounds, runs }: TurnwiseDatabase,
  learner: string,
): Promise<string> {
  let sealed = 0;
  await blocks.each((block) => {
    if (block.learner === learner) sealed += reviewsInBlock(block)?.length ?? 0;
  });
  const loose = await reviews
    .filter((row) => row["learner"] === learner)
    .count();
  const open = await rounds
    .filter((row) => row["learner"] === learner)
    .toArray();
  const marks = open.map(
    (row) => `${String(row["id"])}@${String(row["savedAt"])}`,
  );
  const whole = await runs.filter((row) => row["learner"] === learner).count();
  return [
    sealed + loose,
    ...marks.sort(),
    ...(whole === 0 ? [] : [`${whole} runs`]),
  ].join(" ");
}

async function readLastRestore(
  database: TurnwiseDatabase,
): Promise<LastRestore | undefined> {
  const stored = (await database.settings.get(LAST_RESTORE_KEY))?.value;
  const parsed = v.safeParse(LAST_RESTORE, stored);
  return parsed.success ? parsed.output : undefined;
}

async function isUnpractised(
  database: TurnwiseDatabase,
  last: LastRestore,
): Promise<boolean> {
  for (const { id, mark } of last.learners)
    if ((await logMark(database, id)) !== mark) return false;
  return true;
}

/** The last restore that can still be taken back, or undefined. */
export function undoableRestore(
  database: TurnwiseDatabase,
): Promise<Result<LastRestore | undefined, StorageError>> {
  const { settings, reviews, blocks, rounds, runs } = database;
  return tryReading(() =>
    database.transaction(
      "r",
      [settings, reviews, blocks, rounds, runs],
      async () => {
        const last = await readLastRestore(database);
        return last !== undefined && (await isUnpractised(database, last))
          ? last
          : undefined;
      },
    ),
  );
}

function idOf(row: unknown): unknown {
  return typeof row === "object" && row !== null && "id" in row
    ? row.id
    : undefined;
}

/** Takes answers out of the loose ones and out of blocks, where sealing may have moved them since. */
async function removeReviews(
  { reviews, blocks }: TurnwiseDatabase,
  { id: learner, added, addedBeside, replacedReviews }: RestoredLearner,
): Promise<void> {
  await reviews.bulkDelete([...added, ...addedBeside]);
  const all = new Set<unknown>(added);
  const readableOnly = new Set([...addedBeside, ...replacedReviews.map(idOf)]);
  const isGone = (row: unknown) => {
    const id = idOf(row);
    return all.has(id) || (readableOnly.has(id) && parseReview(row).ok);
  };
  const touched = await blocks
    .filter(
      (block) =>
        block.learner === learner &&
        reviewsInBlock(block)?.some(isGone) === true,
    )
    .toArray();
  for (const block of touched) {
    const rest = block.reviews.filter((row) => !isGone(row));
    if (rest.length === 0) await blocks.delete([learner, block.number]);
    else await blocks.put({ ...block, reviews: rest });
  }
}

async function undoDecks(
  { decks }: TurnwiseDatabase,
  { decksAdded, decksReplaced }: LastRestore,
): Promise<void> {
  // A deck that was changed since is the coach's again, and stays.
  const isUntouched = async (row: RawRow) =>
    isSameJson(await decks.get(String(row["id"])), row);
  for (const row of decksAdded)
    if (await isUntouched(row)) await decks.delete(String(row["id"]));
  for (const { here, inFile } of decksReplaced)
    if (await isUntouched(inFile)) await decks.put(here);
}

/**
 * Takes the last restore back, all of it or nothing: the store is as it was
 * before, but for decks and what a class has that were changed since, and for
 * what a learner took back.
 */
export async function undoRestore(
  database: TurnwiseDatabase,
): Promise<Result<void, UndoRestoreError>> {
  const { learners, decks, reviews, blocks, rounds } = database;
  const { settings, runs, cache, sheets, classmates, heard } = database;
  const tables = [learners, decks, reviews, blocks, rounds, settings, runs];
  const undone = await tryWriting(() =>
    database.transaction(
      "rw",
      [...tables, cache, sheets, classmates, heard],
      async (): Promise<Result<void, UndoRestoreError>> => {
        const last = await readLastRestore(database);
        if (last === undefined) return err({ code: "nothing-to-undo" });
        if (!(await isUnpractised(database, last)))
          return err({ code: "practised-since" });
        for (const one of last.learners) {
          const { id } = one;
          await removeReviews(database, one);
          await reviews.bulkPut(one.replacedReviews);
          await runs.bulkDelete([...one.runsAdded]);
          if (one.replacedRow !== undefined)
            await learners.put(one.replacedRow);
          if (!one.isNew) continue;
          await learners.delete(id);
          await settings.bulkDelete([...ownSettingKeys(id)]);
        }
        await forgetComputed(
          database,
          last.learners.map(({ id }) => id),
        );
        await undoDecks(database, last);
        await undoClass(database, last.people, last.sheetsAdded);
        await settings.delete(LAST_RESTORE_KEY);
        return ok(undefined);
      },
    ),
  );
  return undone.ok ? undone.value : undone;
}
