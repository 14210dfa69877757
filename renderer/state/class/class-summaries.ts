/**
 * What each log of a class says, from the cache where its learner has not
 * answered since: a log is read only when it has changed.
 */
import {
  type MemberSummary,
  SUMMARY_VERSION,
} from "../../../core/class/member-summary";
import { parseMemberSummary } from "../../../core/class/member-summary-schema";
import { GRADING_VERSION } from "../../../core/memory/grade";
import { dayAfter } from "../../../core/memory/local-day";
import type { LocalDay } from "../../../core/memory/review";
import { WEIGHTS_VERSION } from "../../../core/memory/schedule";
import { err, ok, type Result } from "../../../core/result";
import { readAllCached, saveCached } from "../../storage/cache";
import type { TurnwiseDatabase } from "../../storage/database";
import type { StorageError } from "../../storage/storage-error";
import { type LogReader, logReader } from "../../workers/class-client";
import type { ProgressError } from "../../workers/progress-client";
import { packedWithBreaks } from "../progress-facts";
import { type ClassAnswer, type Enrolled, readClassLog } from "./class-log";

const NAME = "class-summary";

/** Why a class, or somebody's part in it, could not be read. */
export type ClassError = StorageError | ProgressError;

/** What the logs of a class say, as far as they could be read. */
export interface ClassSummaries {
  /** By learner. */
  readonly summaries: ReadonlyMap<string, MemberSummary>;
  /** By learner: those whose log could not be read, and why. The others stand. */
  readonly unreadable: ReadonlyMap<string, ClassError>;
}

/** How a class is read. */
export interface ClassReading {
  readonly today: LocalDay;
  readonly signal: AbortSignal;
  /** Told how many of the logs that had to be read are. */
  readonly onprogress?: (done: number, all: number) => void;
  readonly reader?: LogReader;
}

function entryOf({ id, digest, schedule }: Enrolled) {
  const versions = [GRADING_VERSION, WEIGHTS_VERSION, SUMMARY_VERSION];
  const key = JSON.stringify([digest, schedule, versions]);
  return { learner: id, name: NAME, key };
}

/** Whether nobody else's log could be read either, or shall be. */
function isTheWhole({ code }: ClassError): boolean {
  return (
    code === "cancelled" ||
    code === "closed" ||
    code === "unavailable" ||
    code === "newer-version"
  );
}

/** What somebody's log says: read now. */
async function readSummary(
  database: TurnwiseDatabase,
  one: Enrolled,
  { today, signal }: ClassReading,
  reader: LogReader,
): Promise<Result<MemberSummary, ClassError>> {
  const read = await readClassLog(database, one);
  if (!read.ok) return read;
  // As the learner's own page: days to come, from a clock that ran ahead, do
  // not count yet. Where the day turns over in another zone it is tomorrow.
  const last = dayAfter(today, 1);
  const come = read.value.filter(({ localDay }) => localDay <= last);
  const log = await packedWithBreaks(
    come.map((answer: ClassAnswer) =>
      answer.turns === undefined
        ? { ...answer, turns: [] }
        : { ...answer, turns: answer.turns },
    ),
  );
  if (signal.aborted) return err({ code: "cancelled" });
  const summary = await reader.summaryOf({ log, settings: one.schedule });
  // Without those to come it would be wrong once they have come.
  if (summary.ok && come.length === read.value.length)
    await saveCached(database, entryOf(one), summary.value);
  return summary;
}

/** The same, whatever is thrown: one odd answer must not cost the coach the whole class. */
async function readSafely(
  ...asked: Parameters<typeof readSummary>
): Promise<Result<MemberSummary, ClassError>> {
  try {
    return await readSummary(...asked);
  } catch (thrown) {
    return err({ code: "progress-failed", reason: String(thrown) });
  }
}

/**
 * What the logs of a class say. Never rejects.
 *
 * Errors: `cancelled`, and those of a store that is not there any more; what
 *         befalls one log is told of that learner alone.
 */
export async function readSummaries(
  database: TurnwiseDatabase,
  enrolled: readonly Enrolled[],
  reading: ClassReading,
): Promise<Result<ClassSummaries, ClassError>> {
  const { signal, onprogress, reader = logReader() } = reading;
  const kept = await readAllCached(database, enrolled.map(entryOf));
  const summaries = new Map<string, MemberSummary>();
  const unreadable = new Map<string, ClassError>();
  const unread: Enrolled[] = [];
  for (const [i, one] of enrolled.entries()) {
    // A cache that cannot be read is as good as an empty one, only slower.
    const known = parseMemberSummary(kept.ok ? kept.value[i] : undefined);
    if (known.ok) summaries.set(one.id, known.value);
    else unread.push(one);
  }
  const giveUp = () => reader.end();
  signal.addEventListener("abort", giveUp);
  try {
    for (const [done, one] of unread.entries()) {
      if (signal.aborted) return err({ code: "cancelled" });
      onprogress?.(done, unread.length);
      const summary = await readSafely(database, one, reading, reader);
      if (summary.ok) summaries.set(one.id, summary.value);
      else if (isTheWhole(summary.error)) return summary;
      else unreadable.set(one.id, summary.error);
    }
    return ok({ summaries, unreadable });
  } finally {
    signal.removeEventListener("abort", giveUp);
    reader.end();
  }
}
