/**
 * Writing a backup line by line. Every row of the store becomes exactly one
 * line: what the reader would refuse is carried as damaged, as text, so that a
 * backup can always be read again and loses nothing. Asking the reader itself
 * costs a second parse, 10 µs an answer, and leaves no second set of rules.
 */
import {
  BACKUP_READABLE_FROM,
  BACKUP_VERSION,
  type BackupCounts,
  type BackupHeader,
  type BackupLine,
  type BackupTable,
  type DamagedInBackup,
  LONGEST_LINE,
  parseBackupLine,
  NOTHING_COUNTED,
} from "./backup-line";

const KIND_COUNTS = {
  learner: "learners",
  settings: "settings",
  deck: "decks",
  review: "reviews",
  run: "runs",
  sheet: "sheets",
  classmate: "classmates",
  heard: "heard",
  damaged: "damaged",
} as const satisfies Partial<Record<BackupLine["kind"], keyof BackupCounts>>;

/** A row of the store, to be written: which kind of line it is meant to be, and its place. */
export interface RowToWrite {
  readonly kind: keyof typeof KIND_COUNTS;
  /** What stands under the kind's name in the line. */
  readonly content: unknown;
  readonly table: BackupTable;
  readonly key: string;
}

/** Writes one backup: the header, the rows, the end, each a line with its line feed. */
export interface BackupWriter {
  header(
    about: Pick<
      BackupHeader,
      "madeAt" | "learners" | "reviews" | "decks" | "runs"
    >,
  ): string;
  row(row: RowToWrite): string;
  end(): string;
  /** Lines written so far. */
  readonly counts: BackupCounts;
  /** How many rows were too large for a line and are not whole in the file. */
  readonly cut: number;
}

/** The longest row as quoted text: a line less room for the key and the line's own words. */
const LONGEST_DAMAGED = LONGEST_LINE - 10_000;

/** A value as JSON, or undefined where it has none: it holds itself, or a big integer. */
export function jsonOf(value: unknown): string | undefined {
  try {
    return JSON.stringify(value);
  } catch (thrown) {
    if (thrown instanceof TypeError) return undefined;
    throw thrown;
  }
}

function damagedFrom({ content, table, key }: RowToWrite): DamagedInBackup {
  const text = jsonOf(content);
  const about = { table, key: key.slice(0, 1000) };
  if (text === undefined) return { ...about, row: "", cut: true };
  const quoted = JSON.stringify(text);
  return quoted.length <= LONGEST_DAMAGED
    ? { ...about, row: text }
    : // Six letters for one is the most that quoting makes of it.
      { ...about, row: text.slice(0, LONGEST_DAMAGED / 6), cut: true };
}

/** Begins to write a backup. */
export function backupWriter(): BackupWriter {
  const counts = { ...NOTHING_COUNTED };
  let cut = 0;
  const readable = ({ kind, content }: RowToWrite): string | undefined => {
    const line = jsonOf({ [kind]: content });
    if (kind === "damaged" || line === undefined) return undefined;
    const read = parseBackupLine(line);
    return read.ok && read.value.kind === kind ? line : undefined;
  };
  return {
    header(about) {
      const header: BackupHeader = {
        turnwise: "backup",
        version: BACKUP_VERSION,
        readableFrom: BACKUP_READABLE_FROM,
        ...about,
      };
      return `${JSON.stringify(header)}\n`;
    },
    row(row) {
      const line = readable(row);
      if (line !== undefined) {
        counts[KIND_COUNTS[row.kind]] += 1;
        return `${line}\n`;
      }
      const damaged = damagedFrom(row);
      if (damaged.cut === true) cut += 1;
      if (row.table === "runs") {
        counts.runs += 1;
        return `${JSON.stringify({ damagedRun: damaged })}\n`;
      }
      counts.damaged += 1;
      return `${JSON.stringify({ damaged })}\n`;
    },
    end() {
      return `${JSON.stringify({ end: counts })}\n`;
    },
    get counts() {
      return { ...counts };
    },
    get cut() {
      return cut;
    },
  };
}
