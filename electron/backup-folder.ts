/**
 * The automatic backups: one a day in a folder of their own, and beside it a
 * mark of what the store held last.
 *
 * Which to keep is `core/backup/retention.ts`'s to say; here it is only done,
 * the new one safely written before an old one goes. What a backup holds
 * stands in its file's name, so that a list needs no reading, and a person who
 * looks into the folder understands it. Of whole runs the name says nothing:
 * a version before there were any would not find the file under another name.
 * The mark says how many there are in which file.
 *
 * The mark is there because an empty store looks like a first start: only
 * something outside the store can tell that it was not empty.
 */
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import * as v from "valibot";
import { planRetention, type StoredBackup } from "../core/backup/retention";
import {
  type AutomaticBackupOutcome,
  type DesktopFileError,
  type KeptBackup,
  type LastKnown,
  MAX_BACKUP_BYTES,
  type OpenedBackup,
} from "../core/desktop-bridge";
import { dayNumber, localDay } from "../core/memory/local-day";
import { err, ok, type Result } from "../core/result";
import type { FileKind } from "./file-dialogs";
import {
  isUnfinishedFile,
  makeFolder,
  readWholeFile,
  removeIfThere,
  systemCode,
  writeWholeFile,
} from "./whole-files";

/** Backups, as dialogs name them; inside, gzip. */
export const BACKUP_KIND: FileKind = {
  words: "Backups",
  endings: ["turnwise-backup", "gz"],
};

/** Now, here. */
export interface Moment {
  /** Units: milliseconds since 1970, UTC. */
  readonly at: number;
  /** Units: minutes east of UTC. */
  readonly utcOffset: number;
}

/** The automatic backups of this person. */
export interface BackupFolder {
  /**
   * Keeps a backup. A store without answers and runs makes none, and leaves
   * the mark.
   *
   * Errors: those of `writeWholeFile`; nothing was removed then.
   */
  keep(
    reviews: number,
    bytes: Uint8Array,
    runs?: number,
  ): Promise<Result<AutomaticBackupOutcome, DesktopFileError>>;
  /** The newest first. Errors: throws where the folder is there and cannot be looked into. */
  list(): Promise<readonly KeptBackup[]>;
  /**
   * Errors: `no-such-backup` for a name that is not in the list; those of
   *         `readWholeFile`.
   */
  read(name: string): Promise<Result<OpenedBackup, DesktopFileError>>;
  /** By the mark, or where it cannot be read by the newest backup. */
  lastKnown(): Promise<LastKnown | null>;
  /** Errors: those of `writeWholeFile`. */
  forget(): Promise<Result<null, DesktopFileError>>;
}

/**
 * The backups in `backups/` under a folder, with the mark `last-known.json`.
 *
 * Shape: `folder` is an absolute path; it is there.
 */
export function backupFolder(
  folder: string,
  now: () => Moment,
  write: typeof writeWholeFile = writeWholeFile,
): BackupFolder {
  const backups = join(folder, "backups");
  const mark = join(folder, "last-known.json");

  async function listed(): Promise<StoredBackup[]> {
    const runsIn = (await readMark(mark))?.runsIn ?? {};
    const stored = await storedBackups(backups);
    return stored.map((one) => ({
      ...one,
      ...runsWhereAny(runsIn[one.name] ?? 0),
    }));
  }

  async function keep(
    reviews: number,
    bytes: Uint8Array,
    runs = 0,
  ): Promise<Result<AutomaticBackupOutcome, DesktopFileError>> {
    const made = await makeFolder(backups);
    if (!made.ok) return made;
    const existing = await listed();
    const fresh = {
      ...freshBackup(existing, reviews, now()),
      ...runsWhereAny(runs),
    };
    const plan = planRetention(existing, fresh);
    const fewerThan = plan.fewerThan ?? null;
    if (!plan.write) return ok({ written: false, fewerThan });

    const written = await write(join(backups, fresh.name), bytes);
    if (!written.ok) return written;
    for (const name of [...plan.remove, ...(await unfinishedIn(backups))])
      await removeIfThere(join(backups, name));
    const stay = existing.filter(({ name }) => !plan.remove.includes(name));
    const marked = await writeMark(mark, {
      reviews,
      ...runsWhereAny(runs),
      at: fresh.madeAt,
      runsIn: runsInEach([...stay, fresh]),
    });
    return marked.ok ? ok({ written: true, fewerThan }) : marked;
  }

  return {
    keep: oneAfterTheOther(keep),
    list: async () => {
      const stored = await listed();
      return stored.sort((a, b) => b.madeAt - a.madeAt);
    },
    async read(name) {
      const stored = await storedBackups(backups);
      if (!stored.some((backup) => backup.name === name))
        return err({ code: "no-such-backup", name });
      const bytes = await readWholeFile(join(backups, name), MAX_BACKUP_BYTES);
      return bytes.ok ? ok({ name, bytes: bytes.value }) : bytes;
    },
    async lastKnown() {
      const marked = await readMark(mark);
      if (marked !== undefined) {
        const { reviews, runs = 0, at } = marked;
        if (reviews + runs === 0) return null;
        return { reviews, ...runsWhereAny(runs), at };
      }
      const stored = await storedBackups(backups);
      const [newest] = stored.sort((a, b) => b.madeAt - a.madeAt);
      return newest === undefined
        ? null
        : { reviews: newest.reviews, at: newest.madeAt };
    },
    // Not removed, or the backups would speak in its place.
    forget: async () =>
      writeMark(mark, {
        reviews: 0,
        at: now().at,
        runsIn: runsInEach(await listed()),
      }),
  };
}

function runsWhereAny(runs: number): { readonly runs?: number } {
  return runs === 0 ? {} : { runs };
}

/** How many runs are in which file, where there are any. */
function runsInEach(
  stored: readonly StoredBackup[],
): Readonly<Record<string, number>> {
  return Object.fromEntries(
    stored.flatMap(({ name, runs = 0 }) => (runs === 0 ? [] : [[name, runs]])),
  );
}

const DAY = 86_400_000;

const NAME =
  /^turnwise-\d{4}-\d\d-\d\d-day-(\d{1,6})-with-(\d{1,9})-answers-(\d{1,15})\.turnwise-backup$/;

/** The file's name of a backup: its date for people, its day, answers and time for us. */
export function backupFileName(backup: Omit<StoredBackup, "name">): string {
  const { day, reviews, madeAt } = backup;
  const date = new Date(day * DAY).toISOString().slice(0, 10);
  return `turnwise-${date}-day-${day}-with-${reviews}-answers-${madeAt}.turnwise-backup`;
}

/** What a file's name tells; undefined where it is no automatic backup's. */
export function parseBackupFileName(name: string): StoredBackup | undefined {
  const [, day, reviews, madeAt] = (NAME.exec(name) ?? []).map(Number);
  if (day === undefined || reviews === undefined || madeAt === undefined)
    return undefined;
  const backup = { day: dayNumber(day), reviews, madeAt };
  // A name that was changed by hand in one place only is not ours any more.
  return backupFileName(backup) === name ? { name, ...backup } : undefined;
}

/** A name that is not taken: two within a millisecond are told apart. */
function freshBackup(
  existing: readonly StoredBackup[],
  reviews: number,
  { at, utcOffset }: Moment,
): StoredBackup {
  const day = localDay(at, utcOffset);
  for (let madeAt = at; ; madeAt += 1) {
    const name = backupFileName({ day, reviews, madeAt });
    if (!existing.some((backup) => backup.name === name))
      return { name, day, reviews, madeAt };
  }
}

async function storedBackups(backups: string): Promise<StoredBackup[]> {
  const names = await namesIn(backups);
  return names.flatMap((name) => parseBackupFileName(name) ?? []);
}

async function unfinishedIn(backups: string): Promise<string[]> {
  return (await namesIn(backups)).filter(isUnfinishedFile);
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    // Before the first backup there is no folder.
    if (systemCode(error) === "ENOENT") return [];
    throw error;
  }
}

const markCount = v.pipe(v.number(), v.safeInteger(), v.minValue(0));

/** A version before there were runs wrote the first and the last, and reads no more. */
const markSchema = v.object({
  reviews: markCount,
  runs: v.exactOptional(markCount),
  runsIn: v.exactOptional(v.record(v.string(), markCount)),
  at: v.pipe(v.number(), v.safeInteger()),
});

/** What the mark holds: what the store held last, and how many runs are in which file. */
export type BackupMark = Readonly<v.InferOutput<typeof markSchema>>;

/** Reads a mark; undefined where it cannot be read, and the backups tell instead. */
export function parseLastKnown(text: string): BackupMark | undefined {
  try {
    const mark = v.safeParse(markSchema, JSON.parse(text));
    return mark.success ? mark.output : undefined;
  } catch {
    return undefined;
  }
}

const MOST_MARK_BYTES = 10_000;

async function readMark(file: string): Promise<BackupMark | undefined> {
  const bytes = await readWholeFile(file, MOST_MARK_BYTES);
  return bytes.ok
    ? parseLastKnown(new TextDecoder().decode(bytes.value))
    : undefined;
}

function writeMark(
  file: string,
  mark: BackupMark,
): Promise<Result<null, DesktopFileError>> {
  const text = `${JSON.stringify(mark)}\n`;
  return writeWholeFile(file, new TextEncoder().encode(text));
}

/** Two at a time would not see each other's files. */
function oneAfterTheOther<Words extends unknown[], Answer>(
  act: (...words: Words) => Promise<Answer>,
): (...words: Words) => Promise<Answer> {
  let last: Promise<unknown> = Promise.resolve();
  return (...words) => {
    const next = last.then(
      () => act(...words),
      () => act(...words),
    );
    last = next;
    return next;
  };
}
