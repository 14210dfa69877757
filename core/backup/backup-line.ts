/**
 * One line of a backup, as it is read.
 *
 * A backup is JSON lines, gzipped: a header, then one line for each row of the
 * store, then a line that says how many there were, so that a file cut off
 * anywhere is seen to be. One object for everything would have to be parsed as
 * a whole: a million answers are 900 MB.
 *
 * A line holds one thing under its name: `{"review":{…}}`. Rows stand as the
 * store has them, so that fields of a newer version come back as they went.
 * Rounds under way are not carried: they belong to the cube on the desk and to
 * the hour, and the plan of the day finds the same cases again.
 */
import * as v from "valibot";
import { nestingDepth, prototypeKeyIn } from "../json-guard";
import { type Learner, parseLearner } from "../memory/learner";
import type { Review } from "../memory/review";
import { parseReview } from "../memory/review-schema";
import {
  COUNT,
  MILLISECONDS,
  readBySchema,
  type StoredRowError,
} from "../memory/stored-row";
import { err, ok, type Result } from "../result";
import type { RunRow } from "../runs/run";
import { parseRunRow } from "../runs/run-schema";
import { type BackupRow, CLASS_KINDS, type ClassLine } from "./class-lines";

/**
 * The version of the format that this program writes, and the newest it reads.
 * Since 2 there are lines of whole runs, answers on paper, sheets that were
 * printed, and what others shared.
 */
export const BACKUP_VERSION = 2;

/**
 * The oldest version that can read what this program writes. Version 1 would
 * leave runs out, and refuse a file for an answer on paper at its line; it is
 * better told at the first that the file is a newer one.
 */
export const BACKUP_READABLE_FROM = 2;

/** The first line. Its counts are of rows in the store, readable or not. */
export interface BackupHeader {
  readonly turnwise: "backup";
  /** The version that wrote it. */
  readonly version: number;
  /** The oldest version that can read it. */
  readonly readableFrom: number;
  /** When it was made, UTC. Units: milliseconds. */
  readonly madeAt: number;
  readonly learners: number;
  readonly reviews: number;
  readonly decks: number;
  /** None in version 1. */
  readonly runs: number;
}

/** How many lines of each kind a backup has; its last line. A kind that it does not name it has none of. */
export interface BackupCounts {
  readonly learners: number;
  readonly settings: number;
  readonly decks: number;
  readonly reviews: number;
  readonly damaged: number;
  /** Lines of whole runs, and of those that could not be read. */
  readonly runs: number;
  readonly sheets: number;
  readonly classmates: number;
  /** Lines, each a part of a block. */
  readonly heard: number;
}

/** The counts of a backup in which nothing stands yet. */
export const NOTHING_COUNTED: BackupCounts = {
  learners: 0,
  settings: 0,
  decks: 0,
  reviews: 0,
  damaged: 0,
  runs: 0,
  sheets: 0,
  classmates: 0,
  heard: 0,
};

/** The tables from which rows come. */
export const BACKUP_TABLES = [
  "learners",
  "settings",
  "decks",
  "reviews",
  "blocks",
  "runs",
  "sheets",
  "classmates",
  "heard",
] as const;

export type BackupTable = (typeof BACKUP_TABLES)[number];

/** A row that could not be read in the store, as text: nothing in it is believed. */
export interface DamagedInBackup {
  readonly table: BackupTable;
  /** Its key in the table, as far as it had one. */
  readonly key: string;
  /** The row as JSON text; its beginning alone where `cut`. */
  readonly row: string;
  /** Whether the row was too large for a line, or could not be written as JSON. */
  readonly cut?: boolean | undefined;
}

/** A line after the header, by its kind. */
export type BackupLine =
  | { readonly kind: "learner"; readonly learner: Learner }
  | {
      readonly kind: "settings";
      readonly learner: string;
      readonly value: BackupRow;
    }
  | { readonly kind: "deck"; readonly id: string; readonly row: BackupRow }
  | { readonly kind: "review"; readonly review: Review }
  | { readonly kind: "run"; readonly run: RunRow }
  | ClassLine
  | { readonly kind: "damaged"; readonly damaged: DamagedInBackup }
  /** By a name of its own: it counts among the runs, and not among the answers. */
  | { readonly kind: "damagedRun"; readonly damaged: DamagedInBackup }
  | { readonly kind: "end"; readonly counts: BackupCounts }
  /** A kind that this version does not know. */
  | { readonly kind: "unknown" };

/** Why a line was refused; the reader adds its number. */
export type LineError =
  | { readonly code: "line-not-json" }
  | { readonly code: "line-too-deep" }
  | { readonly code: "line-too-long" }
  | { readonly code: "forbidden-key"; readonly field: string }
  | {
      readonly code: "wrong-field";
      /** The dotted path, from the line's own key. */
      readonly field: string;
      readonly problem: StoredRowError["code"];
    };

/** The longest line. Units: UTF-16 code units. The longest answers take 10,000. */
export const LONGEST_LINE = 1_000_000;

/** How deeply a line may nest. An answer nests 4 deep. */
export const DEEPEST_LINE = 32;

const HEADER = v.looseObject({
  turnwise: v.literal("backup"),
  version: v.pipe(COUNT, v.minValue(1)),
  readableFrom: v.pipe(COUNT, v.minValue(1)),
  madeAt: MILLISECONDS,
  learners: COUNT,
  reviews: COUNT,
  decks: COUNT,
  runs: v.optional(COUNT, 0),
});

const ID = v.pipe(v.string(), v.minLength(1));

const ROW = v.record(v.string(), v.unknown());

const SETTINGS = v.looseObject({ learner: ID, value: ROW });

const DECK = v.looseObject({ id: ID });

const DAMAGED = v.looseObject({
  table: v.picklist(BACKUP_TABLES),
  key: v.string(),
  row: v.string(),
  cut: v.optional(v.boolean()),
});

const COUNTS = v.looseObject({
  learners: COUNT,
  settings: COUNT,
  decks: COUNT,
  reviews: COUNT,
  damaged: COUNT,
  runs: v.optional(COUNT, 0),
  sheets: v.optional(COUNT, 0),
  classmates: v.optional(COUNT, 0),
  heard: v.optional(COUNT, 0),
});

function isRow(value: unknown): value is BackupRow {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Parses a line to an object, so far that its fields may be looked at: long, deep and forbidden ones are refused. */
export function parseText(text: string): Result<BackupRow, LineError> {
  if (text.length > LONGEST_LINE) return err({ code: "line-too-long" });
  // Before parsing: the parser recurses, and its stack is not ours to grow.
  if (nestingDepth(text, DEEPEST_LINE) > DEEPEST_LINE)
    return err({ code: "line-too-deep" });
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (thrown) {
    if (thrown instanceof SyntaxError) return err({ code: "line-not-json" });
    throw thrown;
  }
  if (!isRow(value))
    return err({ code: "wrong-field", field: "", problem: "wrong-type" });
  const field = prototypeKeyIn(value);
  return field === undefined
    ? ok(value)
    : err({ code: "forbidden-key", field });
}

/** What was read under a line's key, or the error with its field named from there. */
export function under<T>(
  key: string,
  parsed: Result<T, StoredRowError>,
): Result<T, LineError> {
  if (parsed.ok) return parsed;
  const { code, field } = parsed.error;
  return err({
    code: "wrong-field",
    field: [key, field].filter((part) => part !== "").join("."),
    problem: code,
  });
}

/** The first line, or undefined where the text is no backup at all. */
export function parseHeaderLine(
  text: string,
): Result<BackupHeader, LineError> | undefined {
  const parsed = parseText(text);
  if (!parsed.ok || parsed.value["turnwise"] !== "backup") return undefined;
  return under("", readBySchema(HEADER, parsed.value));
}

/** What each kind of line makes of the value under its name. */
const KINDS = {
  learner: (value) => {
    const parsed = under("learner", parseLearner(value));
    return parsed.ok ? ok({ kind: "learner", learner: parsed.value }) : parsed;
  },
  settings: (value) => {
    const parsed = under("settings", readBySchema(SETTINGS, value));
    return parsed.ok
      ? ok({
          kind: "settings",
          learner: parsed.value.learner,
          value: parsed.value.value,
        })
      : parsed;
  },
  deck: (value) => {
    const parsed = under("deck", readBySchema(DECK, value));
    return parsed.ok
      ? ok({ kind: "deck", id: parsed.value.id, row: parsed.value })
      : parsed;
  },
  review: (value) => {
    const parsed = under("review", parseReview(value));
    if (!parsed.ok) return parsed;
    if (parsed.value.id === "")
      return err({
        code: "wrong-field",
        field: "review.id",
        problem: "out-of-range",
      });
    // As it came and not as it was parsed: the schema of the inner objects
    // drops what a newer version may have put there.
    return ok({ kind: "review", review: value as Review });
  },
  run: (value) => {
    const parsed = under("run", parseRunRow(value));
    return parsed.ok ? ok({ kind: "run", run: parsed.value }) : parsed;
  },
  sheet: (value) => under("sheet", CLASS_KINDS.sheet(value)),
  classmate: (value) => under("classmate", CLASS_KINDS.classmate(value)),
  heard: (value) => under("heard", CLASS_KINDS.heard(value)),
  damagedRun: (value) => {
    const parsed = under("damagedRun", readBySchema(DAMAGED, value));
    return parsed.ok
      ? ok({ kind: "damagedRun", damaged: parsed.value })
      : parsed;
  },
  damaged: (value) => {
    const parsed = under("damaged", readBySchema(DAMAGED, value));
    return parsed.ok ? ok({ kind: "damaged", damaged: parsed.value }) : parsed;
  },
  end: (value) => {
    const parsed = under("end", readBySchema(COUNTS, value));
    return parsed.ok ? ok({ kind: "end", counts: parsed.value }) : parsed;
  },
} satisfies Record<string, (value: unknown) => Result<BackupLine, LineError>>;

/** What a line after the header says. */
export function parseBackupLine(text: string): Result<BackupLine, LineError> {
  const parsed = parseText(text);
  if (!parsed.ok) return parsed;
  for (const [kind, read] of Object.entries(KINDS))
    if (Object.hasOwn(parsed.value, kind)) return read(parsed.value[kind]);
  return ok({ kind: "unknown" });
}
