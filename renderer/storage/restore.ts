/**
 * Restoring a backup: what it would do, doing it, and where to find what was
 * done.
 *
 * One strict transaction over the tables, and not a second database that is
 * switched to: all of it or nothing, whenever the machine stops, without twice
 * the room on a disk that may be full, without closing the other windows'
 * database under them, and with one way to read the store instead of two. The
 * price: while it runs nobody else can write, and taking it back needs a list
 * of what was added, 40 bytes an answer, kept under one settings key.
 *
 * The caller holds the practice locks of the learners that are restored.
 */
import type { BackupContents } from "../../core/backup/backup-reader";
import { LONGEST_NAME, parseLearner } from "../../core/memory/learner";
import type { Review } from "../../core/memory/review";
import { inReplayOrder } from "../../core/memory/schedule";
import { isAnswer } from "../../core/progress/answer-log";
import type { Result } from "../../core/result";
import { isStrike } from "../../core/runs/run";
import { forgetComputed } from "./cache";
import type { RawRow, TurnwiseDatabase } from "./database";
import {
  LAST_RESTORE_KEY,
  type LastRestore,
  logMark,
  type RestoredLearner,
} from "./last-restore";
import { learnerSettingsKey } from "./learners";
import { planClass, restoreClass } from "./restore-class";
import {
  type LearnerPlan,
  planRestore,
  type RestorePlan,
} from "./restore-plan";
import { BLOCK_SIZE, KEPT_LOOSE, nextBlockNumber } from "./sealing";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

/** What of a backup is to be restored. */
export interface RestoreChoice {
  /** The ids of the learners. */
  readonly learners: readonly string[];
  /** Decks that are not here are added, or none; those that differ are left or replaced. */
  readonly decks: "none" | "new" | "new-and-changed";
  /** Whether sheets, and people with the results that they shared, are added. */
  readonly ofClass: boolean;
  /** The name for a learner whose answers the file has and whose name it has lost. */
  readonly nameless: string;
  /** The instant, UTC. Units: milliseconds. */
  readonly now: number;
}

/** What was restored. */
export interface Restored {
  /** Learners that were not here. */
  readonly learners: number;
  /** Answers and showings added, and readable ones put in the place of damaged ones. */
  readonly reviews: number;
  /** How many of those that were added are showings. */
  readonly shown: number;
  readonly repaired: number;
  /** Damaged answers and runs put back as they were. */
  readonly damaged: number;
  /** Whole runs added. */
  readonly runs: number;
  readonly decksAdded: number;
  readonly decksReplaced: number;
  /** Printed sheets added. */
  readonly sheets: number;
  /** People who shared results, of whom something was added. */
  readonly people: number;
}

/** What restoring a backup would do here. Nothing is changed by asking. */
export function previewRestore(
  database: TurnwiseDatabase,
  contents: BackupContents,
): Promise<Result<RestorePlan, StorageError>> {
  const { learners, decks, reviews, blocks, runs } = database;
  const { sheets, classmates, heard, settings } = database;
  const tables = [learners, decks, reviews, blocks, runs, settings];
  return tryReading(() =>
    database.transaction(
      "r",
      [...tables, sheets, classmates, heard],
      async () =>
        planRestore(database, contents, await planClass(database, contents)),
    ),
  );
}

/** The row that a learner gets here, or undefined where the one here stays or none can be made. */
function learnerRow(
  { id, learner, isReadableHere, fresh, repairs, freshRuns }: LearnerPlan,
  nameless: string,
): RawRow | undefined {
  if (isReadableHere) return undefined;
  if (learner !== undefined) return { ...learner };
  const times = [
    ...fresh,
    ...repairs.map(({ review }) => review),
    ...freshRuns,
  ].map(({ at }) => at);
  const createdAt = times.reduce((a, b) => Math.min(a, b), Infinity);
  const made = parseLearner({ id, name: nameless, createdAt });
  return made.ok ? { ...made.value } : undefined;
}

/** Whether a learner of the plan can be restored here: not without a row, and an id that a row may have. */
export function isRestorable(plan: LearnerPlan): boolean {
  return plan.isReadableHere || learnerRow(plan, "?") !== undefined;
}

/**
 * Adds answers to a learner's log: thousands as blocks at once, by the rule
 * that sealing follows. The order inside the tables means nothing, a log is
 * sorted when it is read, so older answers may stand in later blocks.
 */
async function addReviews(
  { reviews, blocks }: TurnwiseDatabase,
  learner: string,
  added: readonly Review[],
): Promise<void> {
  const sorted = inReplayOrder(added);
  let from = 0;
  let number = await nextBlockNumber(blocks, learner);
  for (; sorted.length - from >= BLOCK_SIZE + KEPT_LOOSE; from += BLOCK_SIZE) {
    const oldest = sorted.slice(from, from + BLOCK_SIZE);
    await blocks.add({ learner, number, reviews: oldest });
    number += 1;
  }
  await reviews.bulkAdd(sorted.slice(from).map((review) => ({ ...review })));
}

/** As much of a name as leaves room for an ending, no sign cut in half. */
function shortened(name: string, room: number): string {
  let short = "";
  for (const sign of name)
    if (short.length + sign.length <= room) short += sign;
    else break;
  return short.trimEnd();
}

/** A new learner's row; where somebody here who has answered has that name, the two can be told apart. */
async function withFreeName(
  { learners, reviews, blocks }: TurnwiseDatabase,
  row: RawRow,
): Promise<RawRow> {
  const { name } = row;
  if (typeof name !== "string") return row;
  const others = await learners.filter((one) => one["name"] === name).toArray();
  for (const { id } of others) {
    const isTheirs = (one: RawRow) => one["learner"] === id;
    const answers = await reviews.filter(isTheirs).limit(1).count();
    if (answers + (await blocks.filter(isTheirs).limit(1).count()) === 0)
      continue;
    const ending = ", restored";
    const room = LONGEST_NAME - ending.length;
    return { ...row, name: shortened(name, room) + ending };
  }
  return row;
}

async function restoreLearner(
  database: TurnwiseDatabase,
  plan: LearnerPlan,
  choice: RestoreChoice,
): Promise<RestoredLearner> {
  const { id, here, settings } = plan;
  const isNew = here === undefined;
  const made = learnerRow(plan, choice.nameless);
  const row =
    isNew && made !== undefined ? await withFreeName(database, made) : made;
  if (row !== undefined) await database.learners.put(row);
  if (isNew && settings !== undefined)
    await database.settings.put({
      key: learnerSettingsKey(id),
      value: settings,
    });
  const replacing = plan.repairs.filter(
    ({ replaces }) => replaces !== undefined,
  );
  const beside = plan.repairs.filter(({ replaces }) => replaces === undefined);
  await addReviews(database, id, [
    ...plan.fresh,
    ...beside.map(({ review }) => review),
  ]);
  await database.reviews.bulkPut(
    replacing.map(({ review }) => ({ ...review })),
  );
  await database.reviews.bulkAdd([...plan.damaged]);
  const runs: readonly RawRow[] = [
    ...plan.freshRuns.map((row) => ({ ...row })),
    ...plan.damagedRuns,
  ];
  await database.runs.bulkAdd(runs);
  return {
    id,
    isNew,
    replacedRow: row === undefined ? undefined : here,
    added: [...plan.fresh, ...plan.damaged].map((one) => String(one["id"])),
    addedBeside: beside.map(({ review }) => review.id),
    replacedReviews: replacing.flatMap(({ replaces }) =>
      replaces === undefined ? [] : [replaces],
    ),
    runsAdded: runs.map((row) => String(row["id"])),
    mark: await logMark(database, id),
  };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}

/**
 * Restores what was chosen: all of it, or nothing. Choosing what brings
 * nothing new changes nothing, and leaves an earlier restore to be taken back.
 */
export function restore(
  database: TurnwiseDatabase,
  contents: BackupContents,
  choice: RestoreChoice,
): Promise<Result<Restored, StorageError>> {
  const { learners, decks, reviews, blocks, rounds } = database;
  const { settings, runs, cache, sheets, classmates, heard } = database;
  const tables = [learners, decks, reviews, blocks, rounds, settings, runs];
  return tryWriting(() =>
    database.transaction(
      "rw",
      [...tables, cache, sheets, classmates, heard],
      async () => {
        const ofClass = await planClass(database, contents);
        const plan = await planRestore(database, contents, ofClass);
        const chosen = plan.learners.filter(
          (one) => choice.learners.includes(one.id) && isRestorable(one),
        );
        const added = choice.decks === "none" ? [] : plan.newDecks;
        const replaced =
          choice.decks === "new-and-changed" ? plan.changedDecks : [];
        const done: RestoredLearner[] = [];
        for (const one of chosen)
          done.push(await restoreLearner(database, one, choice));
        await forgetComputed(
          database,
          chosen.map(({ id }) => id),
        );
        await decks.bulkPut([
          ...added,
          ...replaced.map(({ inFile }) => inFile),
        ]);
        const brought = await restoreClass(
          database,
          choice.ofClass ? ofClass : { sheets: [], people: [], leftInFile: 0 },
        );
        const restored: Restored = {
          learners: done.filter(({ isNew }) => isNew).length,
          reviews: sum(chosen.map(({ fresh }) => fresh.length)),
          shown: sum(
            chosen.map(
              ({ fresh }) => fresh.filter((one) => !isAnswer(one)).length,
            ),
          ),
          repaired: sum(chosen.map(({ repairs }) => repairs.length)),
          damaged: sum(
            chosen.map(
              ({ damaged, damagedRuns }) => damaged.length + damagedRuns.length,
            ),
          ),
          runs: sum(
            chosen.map(
              ({ freshRuns }) =>
                freshRuns.filter((row) => !isStrike(row)).length,
            ),
          ),
          decksAdded: added.length,
          decksReplaced: replaced.length,
          sheets: brought.sheetsAdded.length,
          people: brought.people.length,
        };
        const isSomething =
          sum(Object.values(restored)) > 0 ||
          done.some(
            ({ replacedRow, runsAdded }) =>
              replacedRow !== undefined || runsAdded.length > 0,
          );
        if (isSomething) {
          const value: LastRestore = {
            at: choice.now,
            madeAt: contents.header.madeAt,
            learners: done,
            decksAdded: added,
            decksReplaced: replaced,
            ...brought,
          };
          await settings.put({ key: LAST_RESTORE_KEY, value });
        }
        return restored;
      },
    ),
  );
}
