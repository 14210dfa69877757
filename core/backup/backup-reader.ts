/**
 * Reading a backup piece by piece: text goes in as it comes, cut anywhere, and
 * at the end there is all of it or one error with its line. Nothing is ever
 * half read: a line that is wrong refuses the file, because a backup that
 * quietly restores less than it says is worse than none.
 *
 * Lines that say the same thing twice are one: two backups written one behind
 * the other by hand still lose nothing.
 */
import type { Learner } from "../memory/learner";
import type { Review } from "../memory/review";
import { err, ok, type Result } from "../result";
import type { RunRow } from "../runs/run";
import { isSameJson } from "../same-json";
import type { BackupError } from "./backup-error";
import {
  BACKUP_VERSION,
  type BackupCounts,
  type BackupHeader,
  type BackupLine,
  type BackupRow,
  type DamagedInBackup,
  parseBackupLine,
  parseHeaderLine,
} from "./backup-line";
import { lineReader } from "./line-reader";

/** Two lines of one file that disagree. The first counts. */
export interface BackupConflict {
  readonly kind: "learner" | "settings" | "deck" | "review" | "run";
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
  readonly damaged: readonly DamagedInBackup[];
  readonly conflicts: readonly BackupConflict[];
  /** Lines of a newer version, of a kind that this one does not know. */
  readonly unknownLines: number;
}

/** How much a backup may hold. */
export interface BackupLimits {
  readonly lines: number;
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
  readonly learners: Map<string, Learner>;
  readonly settings: Map<string, BackupRow>;
  readonly decks: Map<string, BackupRow>;
  readonly reviews: Map<string, Review>;
  readonly runs: Map<string, RunRow>;
  readonly damaged: DamagedInBackup[];
  readonly conflicts: BackupConflict[];
  readonly counts: Record<keyof BackupCounts, number>;
  /** Rows of these tables that stand in the file, readable or not. */
  readonly rows: Record<"learners" | "reviews" | "decks" | "runs", number>;
  unknownLines: number;
  ended: boolean;
}

const OK = ok(undefined);

/** Keeps a value under its id, and says whether it agrees with what is there. */
function keep<T>(map: Map<string, T>, id: string, value: T): boolean {
  const known = map.get(id);
  if (known === undefined) map.set(id, value);
  return known === undefined || isSameJson(known, value);
}

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
    ["learners", "settings", "decks", "reviews", "damaged", "runs"],
    said,
    reading.counts,
    line,
  );
  if (!lines.ok) return lines;
  return wrongCount(
    ["learners", "reviews", "decks", "runs"],
    header,
    reading.rows,
    1,
  );
}

function takeDamaged(reading: Reading, damaged: DamagedInBackup): void {
  reading.counts.damaged += 1;
  reading.damaged.push(damaged);
  const { table } = damaged;
  if (table === "learners" || table === "reviews" || table === "decks")
    reading.rows[table] += 1;
}

function takeRow(
  reading: Reading,
  row: Extract<
    BackupLine,
    { kind: "learner" | "settings" | "deck" | "review" | "run" }
  >,
): { readonly id: string; readonly agrees: boolean } {
  const { counts, rows } = reading;
  switch (row.kind) {
    case "learner": {
      counts.learners += 1;
      rows.learners += 1;
      const { id } = row.learner;
      return { id, agrees: keep(reading.learners, id, row.learner) };
    }
    case "settings": {
      counts.settings += 1;
      const id = row.learner;
      return { id, agrees: keep(reading.settings, id, row.value) };
    }
    case "deck":
      counts.decks += 1;
      rows.decks += 1;
      return { id: row.id, agrees: keep(reading.decks, row.id, row.row) };
    case "review": {
      counts.reviews += 1;
      rows.reviews += 1;
      const { id } = row.review;
      return { id, agrees: keep(reading.reviews, id, row.review) };
    }
    case "run": {
      counts.runs += 1;
      rows.runs += 1;
      const { id } = row.run;
      return { id, agrees: keep(reading.runs, id, row.run) };
    }
  }
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
      takeDamaged(reading, said.damaged);
      return OK;
    case "damagedRun":
      reading.counts.runs += 1;
      reading.rows.runs += 1;
      reading.damaged.push(said.damaged);
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
    case "run": {
      const { id, agrees } = takeRow(reading, said);
      if (!agrees) reading.conflicts.push({ kind: said.kind, id, line });
      return reading.counts.reviews > limits.reviews
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
    learners: new Map(),
    settings: new Map(),
    decks: new Map(),
    reviews: new Map(),
    runs: new Map(),
    damaged: [],
    conflicts: [],
    counts: {
      learners: 0,
      settings: 0,
      decks: 0,
      reviews: 0,
      damaged: 0,
      runs: 0,
    },
    rows: { learners: 0, reviews: 0, decks: 0, runs: 0 },
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
      const { learners, settings, decks, reviews, runs } = reading;
      const { damaged, conflicts, unknownLines } = reading;
      return ok({
        header,
        learners,
        settings,
        decks,
        reviews,
        runs,
        damaged,
        conflicts,
        unknownLines,
      });
    },
  };
}
