/**
 * Reading a backup piece by piece: text goes in as it comes, cut anywhere, and
 * at the end there is all of it or one error with its line. Nothing is ever
 * half read: a line that is wrong refuses the file, because a backup that
 * quietly restores less than it says is worse than none.
 */
import type { Learner } from "../memory/learner";
import type { Review } from "../memory/review";
import { err, ok, type Result } from "../result";
import type { RunRow } from "../runs/run";
import type { BackupError } from "./backup-error";
import {
  BACKUP_VERSION,
  type BackupCounts,
  type BackupHeader,
  type DamagedInBackup,
  parseBackupLine,
  parseHeaderLine,
} from "./backup-line";
import {
  noRows,
  type RowLine,
  type RowsRead,
  takeDamaged,
  takeDamagedRun,
  takeRow,
} from "./backup-rows";
import type { BackupRow } from "./class-lines";
import { lineReader } from "./line-reader";

/** Two lines of one file that disagree. The first counts. */
export interface BackupConflict {
  readonly kind: RowLine["kind"];
  readonly id: string;
  /** The second of the two. */
  readonly line: number;
}

/** Everything that a backup holds. */
export interface BackupContents {
  readonly header: BackupHeader;
  /** By their id, as are the others. */
  readonly learners: ReadonlyMap<string, Learner>;
  /** By their learner. */
  readonly settings: ReadonlyMap<string, BackupRow>;
  readonly decks: ReadonlyMap<string, BackupRow>;
  readonly reviews: ReadonlyMap<string, Review>;
  readonly runs: ReadonlyMap<string, RunRow>;
  /** Sheets that were printed, by their codes. */
  readonly sheets: ReadonlyMap<string, BackupRow>;
  /** People who shared results. */
  readonly classmates: ReadonlyMap<string, BackupRow>;
  /** Blocks that others shared. */
  readonly heard: ReadonlyMap<string, BackupRow>;
  /** Blocks that are not whole in the file, and in none of the above. */
  readonly unfinished: number;
  readonly damaged: readonly DamagedInBackup[];
  readonly conflicts: readonly BackupConflict[];
  /** Lines of a newer version, of a kind that this one does not know. */
  readonly unknownLines: number;
}

/** How much a backup may hold. */
export interface BackupLimits {
  readonly lines: number;
  /** Answers, and those that others shared. */
  readonly reviews: number;
}

/** A million answers are 14 years of 200 a day. */
export const BACKUP_LIMITS: BackupLimits = {
  lines: 1_100_000,
  reviews: 1_000_000,
};

/** Reads one backup. */
export interface BackupReader {
  /** The line that is being read, counted from 1. */
  readonly line: number;
  /** Takes the next piece of text. After an error every answer is that error. */
  push(text: string): Result<void, BackupError>;
  /** What was read, once there is no more. */
  finish(): Result<BackupContents, BackupError>;
}

interface Reading {
  header: BackupHeader | undefined;
  readonly read: RowsRead;
  readonly conflicts: BackupConflict[];
  unknownLines: number;
  ended: boolean;
}

const OK = ok(undefined);

function wrongCount<Field extends keyof BackupCounts>(
  fields: readonly Field[],
  said: Readonly<Record<Field, number>>,
  found: Readonly<Record<Field, number>>,
  line: number,
): Result<void, BackupError> {
  const field = fields.find((one) => said[one] !== found[one]);
  return field === undefined
    ? OK
    : err({
        code: "wrong-counts",
        line,
        field,
        said: said[field],
        found: found[field],
      });
}

function takeHeader(reading: Reading, text: string): Result<void, BackupError> {
  const parsed = parseHeaderLine(text);
  if (parsed === undefined) return err({ code: "not-a-backup" });
  if (!parsed.ok) return err({ ...parsed.error, line: 1 });
  const { version, readableFrom } = parsed.value;
  if (readableFrom > BACKUP_VERSION)
    return err({ code: "newer-backup", version });
  reading.header = parsed.value;
  return OK;
}

function takeEnd(
  reading: Reading,
  header: BackupHeader,
  said: BackupCounts,
  line: number,
): Result<void, BackupError> {
  reading.ended = true;
  const lines = wrongCount(
    [
      "learners",
      "settings",
      "decks",
      "reviews",
      "damaged",
      "runs",
      "sheets",
      "classmates",
      "heard",
    ],
    said,
    reading.read.counts,
    line,
  );
  if (!lines.ok) return lines;
  return wrongCount(
    ["learners", "reviews", "decks", "runs"],
    header,
    reading.read.rows,
    1,
  );
}

function takeLine(
  reading: Reading,
  header: BackupHeader,
  text: string,
  line: number,
  limits: BackupLimits,
): Result<void, BackupError> {
  if (reading.ended) return err({ code: "lines-after-end", line });
  if (line > limits.lines) return err({ code: "too-many-lines", line });
  const parsed = parseBackupLine(text);
  if (!parsed.ok) return err({ ...parsed.error, line });
  const said = parsed.value;
  switch (said.kind) {
    case "end":
      return takeEnd(reading, header, said.counts, line);
    case "damaged":
      takeDamaged(reading.read, said.damaged);
      return OK;
    case "damagedRun":
      takeDamagedRun(reading.read, said.damaged);
      return OK;
    case "unknown":
      if (header.version <= BACKUP_VERSION)
        return err({ code: "unknown-line", line });
      reading.unknownLines += 1;
      return OK;
    case "learner":
    case "settings":
    case "deck":
    case "review":
    case "run":
    case "sheet":
    case "classmate":
    case "heard": {
      const { id, agrees } = takeRow(reading.read, said);
      if (!agrees) reading.conflicts.push({ kind: said.kind, id, line });
      const { counts, heard } = reading.read;
      return counts.reviews + heard.answers > limits.reviews
        ? err({ code: "too-many-reviews", line })
        : OK;
    }
  }
}

/** Begins to read a backup. */
export function backupReader(
  limits: BackupLimits = BACKUP_LIMITS,
): BackupReader {
  const reading: Reading = {
    header: undefined,
    read: noRows(),
    conflicts: [],
    unknownLines: 0,
    ended: false,
  };
  const lines = lineReader<BackupError>((text, line) => {
    const { header } = reading;
    return header === undefined
      ? takeHeader(reading, text)
      : takeLine(reading, header, text, line, limits);
  });

  return {
    get line() {
      return lines.line;
    },
    push: (text) => lines.push(text),
    finish() {
      if (!lines.outcome.ok) return lines.outcome;
      const last = lines.takeRest();
      const { header } = reading;
      if (header === undefined) return err({ code: "not-a-backup" });
      if (!last.ok && last.error.code !== "line-not-json") return last;
      // A last line that breaks off in the middle is cut off, not wrong.
      if (!last.ok || !reading.ended)
        return err({ code: "truncated", line: lines.line });
      const { read, conflicts, unknownLines } = reading;
      const { learners, settings, decks, reviews, runs } = read;
      const { sheets, classmates, damaged } = read;
      const { blocks: heard, unfinished } = read.heard.finish();
      return ok({
        header,
        learners,
        settings,
        decks,
        reviews,
        runs,
        sheets,
        classmates,
        heard,
        unfinished,
        damaged,
        conflicts,
        unknownLines,
      });
    },
  };
}
