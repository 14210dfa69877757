/**
 * A learner's progress facts, without holding the window up: the log is packed
 * with breaks, read by a worker, and what it says is kept until the log, the
 * day or a rule changes.
 */
import { GRADING_VERSION } from "../../core/memory/grade";
import type { LocalDay, Review } from "../../core/memory/review";
import {
  type ScheduleSettings,
  WEIGHTS_VERSION,
} from "../../core/memory/schedule";
import {
  logDigest,
  logPacker,
  type PackedAnswer,
  type PackedLog,
} from "../../core/progress/packed-log";
import { PROGRESS_VERSION } from "../../core/progress/progress-facts";
import { parseProgressFacts } from "../../core/progress/progress-facts-schema";
import { err } from "../../core/result";
import { breather } from "../platform/breather";
import { readCached, saveCached } from "../storage/cache";
import type { TurnwiseDatabase } from "../storage/database";
import {
  askForProgress,
  type ProgressOutcome,
} from "../workers/progress-client";

/** Whose progress, and what it depends on. */
export interface ProgressOf {
  readonly learner: string;
  /** In the order of replay. */
  readonly reviews: readonly Review[];
  readonly today: LocalDay;
  readonly schedule: ScheduleSettings;
}

const NAME = "progress";

/** How many answers are packed before one looks whether it is time for a break. */
const AT_ONCE = 500;

/** A log as it is handed to the worker, packed with breaks. */
export async function packedWithBreaks(
  reviews: readonly PackedAnswer[],
): Promise<PackedLog> {
  const breathe = breather();
  const packer = logPacker(reviews.length);
  for (let from = 0; from < reviews.length; from += AT_ONCE) {
    for (const review of reviews.slice(from, from + AT_ONCE))
      packer.add(review);
    await breathe();
  }
  return packer.finish();
}

/** The facts of a learner's log, from the cache where nothing has changed. Never rejects. */
export async function readProgressFacts(
  database: TurnwiseDatabase,
  { learner, reviews, today, schedule }: ProgressOf,
  signal: AbortSignal,
  ask: typeof askForProgress = askForProgress,
): Promise<ProgressOutcome> {
  const log = await packedWithBreaks(reviews);
  if (signal.aborted) return err({ code: "cancelled" });
  const versions = [GRADING_VERSION, WEIGHTS_VERSION, PROGRESS_VERSION];
  const key = JSON.stringify([logDigest(log), today, schedule, versions]);
  const entry = { learner, name: NAME, key };
  const kept = await readCached(database, entry);
  // A cache that cannot be read is as good as an empty one, only slower.
  const known = kept.ok ? parseProgressFacts(kept.value) : kept;
  if (known.ok) return known;
  const asked = await ask(
    { question: "facts", log, today, settings: schedule },
    signal,
  );
  if (asked.ok) await saveCached(database, entry, asked.value);
  return asked;
}
