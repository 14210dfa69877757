/**
 * What a backup will carry, looked up in one transaction: the small tables and
 * the loose answers as they are at that moment, and of the sealed blocks their
 * keys alone. Blocks are never touched again, so they may be read later, one
 * at a time: a million answers at once would take more than a gigabyte.
 */
import { BACKUP_LIMITS } from "../../core/backup/backup-reader";
import { type ClassSurvey, surveyClass } from "./class-survey";
import type { BlockRow, RawRow, TurnwiseDatabase } from "./database";
import { learnerSettingsKey } from "./learners";

/** The rows and keys that a backup is written from. */
export interface BackupSurvey {
  readonly learners: readonly RawRow[];
  /** Of learners, by their id. */
  readonly settings: readonly {
    readonly learner: string;
    readonly value: unknown;
  }[];
  readonly decks: readonly RawRow[];
  readonly loose: readonly RawRow[];
  /** Whole runs, and their being struck out. */
  readonly runs: readonly RawRow[];
  readonly blocks: readonly [string, number][];
  /** Answers in the blocks, readable or not. */
  readonly sealed: number;
  /** What belongs to the machine: in a backup of everything alone. */
  readonly ofClass: ClassSurvey | undefined;
}

const SETTINGS_OF = learnerSettingsKey("");

/** The answers in a block, or undefined where it holds none that can be told apart. */
export function reviewsInBlock(
  block: BlockRow,
): readonly unknown[] | undefined {
  const reviews: unknown = block.reviews;
  return Array.isArray(reviews) ? reviews : undefined;
}

/** Surveys the store, or one learner's part of it. Decks belong to everybody. */
export function surveyForBackup(
  database: TurnwiseDatabase,
  learner: string | undefined,
): PromiseLike<BackupSurvey> {
  const { learners, settings, decks, reviews, blocks, runs } = database;
  const { sheets, classmates, heard } = database;
  const isTheirs = (owner: unknown) =>
    learner === undefined || owner === learner;
  return database.transaction(
    "r",
    [
      learners,
      settings,
      decks,
      reviews,
      blocks,
      runs,
      sheets,
      classmates,
      heard,
    ],
    async () => {
      const keys: [string, number][] = [];
      let sealed = 0;
      await blocks.each((block, { primaryKey }) => {
        if (!isTheirs(block.learner)) return;
        keys.push(primaryKey);
        sealed += reviewsInBlock(block)?.length ?? 0;
      });
      const stored = await settings
        .where("key")
        .startsWith(SETTINGS_OF)
        .toArray();
      const loose = await reviews
        .filter((row) => isTheirs(row["learner"]))
        .toArray();
      // The answers given here come first: what others shared they have themselves.
      const room = BACKUP_LIMITS.reviews - sealed - loose.length;
      return {
        learners: await learners.filter((row) => isTheirs(row["id"])).toArray(),
        settings: stored
          .map(({ key, value }) => ({
            learner: key.slice(SETTINGS_OF.length),
            value,
          }))
          .filter((one) => isTheirs(one.learner)),
        decks: await decks.toArray(),
        loose,
        runs: await runs.filter((row) => isTheirs(row["learner"])).toArray(),
        blocks: keys,
        sealed,
        ofClass:
          learner === undefined ? await surveyClass(database, room) : undefined,
      };
    },
  );
}
