/**
 * The rows of a backup as they gather while it is read. Lines that say the
 * same thing twice are one: two backups written one behind the other by hand
 * still lose nothing.
 */
import type { Learner } from "../memory/learner";
import type { Review } from "../memory/review";
import type { RunRow } from "../runs/run";
import { isSameJson } from "../same-json";
import {
  type BackupCounts,
  type BackupLine,
  type DamagedInBackup,
  NOTHING_COUNTED,
} from "./backup-line";
import type { BackupRow } from "./class-lines";
import { type HeardCollector, heardCollector } from "./heard-parts";

/** A line that is a row which could be read. */
export type RowLine = Exclude<
  BackupLine,
  { kind: "damaged" | "damagedRun" | "end" | "unknown" }
>;

/** What was read so far. */
export interface RowsRead {
  readonly learners: Map<string, Learner>;
  readonly settings: Map<string, BackupRow>;
  readonly decks: Map<string, BackupRow>;
  readonly reviews: Map<string, Review>;
  readonly runs: Map<string, RunRow>;
  readonly sheets: Map<string, BackupRow>;
  readonly classmates: Map<string, BackupRow>;
  readonly heard: HeardCollector;
  readonly damaged: DamagedInBackup[];
  readonly counts: Record<keyof BackupCounts, number>;
  /** Rows of these tables that stand in the file, readable or not. */
  readonly rows: Record<"learners" | "reviews" | "decks" | "runs", number>;
}

/** Begins with none. */
export function noRows(): RowsRead {
  return {
    learners: new Map(),
    settings: new Map(),
    decks: new Map(),
    reviews: new Map(),
    runs: new Map(),
    sheets: new Map(),
    classmates: new Map(),
    heard: heardCollector(),
    damaged: [],
    counts: { ...NOTHING_COUNTED },
    rows: { learners: 0, reviews: 0, decks: 0, runs: 0 },
  };
}

/** Keeps a value under its id, and says whether it agrees with what is there. */
function keep<T>(map: Map<string, T>, id: string, value: T): boolean {
  const known = map.get(id);
  if (known === undefined) map.set(id, value);
  return known === undefined || isSameJson(known, value);
}

/** Takes a row, and says under which id, and whether it agrees with what is there. The first counts. */
export function takeRow(
  read: RowsRead,
  line: RowLine,
): { readonly id: string; readonly agrees: boolean } {
  const { counts, rows } = read;
  switch (line.kind) {
    case "learner": {
      counts.learners += 1;
      rows.learners += 1;
      const { id } = line.learner;
      return { id, agrees: keep(read.learners, id, line.learner) };
    }
    case "settings": {
      counts.settings += 1;
      const id = line.learner;
      return { id, agrees: keep(read.settings, id, line.value) };
    }
    case "deck":
      counts.decks += 1;
      rows.decks += 1;
      return { id: line.id, agrees: keep(read.decks, line.id, line.row) };
    case "review": {
      counts.reviews += 1;
      rows.reviews += 1;
      const { id } = line.review;
      return { id, agrees: keep(read.reviews, id, line.review) };
    }
    case "run": {
      counts.runs += 1;
      rows.runs += 1;
      const { id } = line.run;
      return { id, agrees: keep(read.runs, id, line.run) };
    }
    case "sheet":
      counts.sheets += 1;
      return { id: line.code, agrees: keep(read.sheets, line.code, line.row) };
    case "classmate":
      counts.classmates += 1;
      return { id: line.id, agrees: keep(read.classmates, line.id, line.row) };
    case "heard":
      counts.heard += 1;
      return { id: line.part.row.id, agrees: read.heard.take(line.part) };
  }
}

/** Takes a damaged row that is told by `damaged`. */
export function takeDamaged(read: RowsRead, damaged: DamagedInBackup): void {
  read.counts.damaged += 1;
  read.damaged.push(damaged);
  const { table } = damaged;
  if (table === "learners" || table === "reviews" || table === "decks")
    read.rows[table] += 1;
}

/** Takes a damaged run, which is told by a line of its own. */
export function takeDamagedRun(read: RowsRead, damaged: DamagedInBackup): void {
  read.counts.runs += 1;
  read.rows.runs += 1;
  read.damaged.push(damaged);
}
