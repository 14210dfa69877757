/**
 * Which automatic backups to keep: one a day, the day's newest, for the newest
 * 14 days that have one. Days without a backup are not counted, so that who
 * comes back after a month still has what was there.
 *
 * A backup with fewer answers, or fewer whole runs, than an earlier one is a
 * bad sign: the store may have been lost. It is written beside and reported,
 * it takes nobody's place,
 * and while it is the newest the earlier backup with the most answers is kept
 * beyond the 14 days. Price: after a learner was deleted on purpose, their
 * answers stay in that one file, for 90 days at most.
 */
import type { LocalDay } from "../memory/review";

/** For how many days a backup is kept. */
export const KEPT_BACKUP_DAYS = 14;

/** For how long the one with the most answers is kept beyond that. Units: days. */
export const FULLEST_KEPT_DAYS = 90;

/** A backup file, as its name tells, and of its runs whoever knows. */
export interface StoredBackup {
  /** The file's name. */
  readonly name: string;
  /** The day it was made on. */
  readonly day: LocalDay;
  /** Answers in it, as its header says. */
  readonly reviews: number;
  /** Whole runs in it; absent where there are none, or it is not known. */
  readonly runs?: number;
  /** When it was made. Units: milliseconds since 1970. */
  readonly madeAt: number;
}

/** What is to be done with a new backup and the old ones. */
export interface RetentionPlan {
  /** Whether the new one is written at all: an empty store makes no backup. */
  readonly write: boolean;
  /** The files to delete once the new one is safely written; never before. */
  readonly remove: readonly string[];
  /** The newest earlier backup, where it holds more answers or runs than the new one: to be said. */
  readonly fewerThan: StoredBackup | undefined;
}

/** By day and then by time, so that a clock set back within a day does not matter to the days. */
function byAge(a: StoredBackup, b: StoredBackup): number {
  return b.day - a.day || b.madeAt - a.madeAt;
}

/** Whether a backup holds what another cannot have: more answers, or more runs. */
function holdsMore(one: StoredBackup, other: StoredBackup): boolean {
  return one.reviews > other.reviews || (one.runs ?? 0) > (other.runs ?? 0);
}

function fullest(backups: readonly StoredBackup[]): StoredBackup | undefined {
  return [...backups].sort((a, b) => b.reviews - a.reviews || byAge(a, b))[0];
}

/**
 * What to do with a new backup, which has a name that is not taken.
 *
 * Of one day those stay that hold more answers, or more runs, than every later
 * one of that day. Nothing is removed where nothing is written.
 */
export function planRetention(
  existing: readonly StoredBackup[],
  fresh: StoredBackup,
): RetentionPlan {
  const [last] = [...existing].sort((a, b) => b.madeAt - a.madeAt);
  const fewerThan =
    last !== undefined && holdsMore(last, fresh) ? last : undefined;
  if (fresh.reviews + (fresh.runs ?? 0) === 0)
    return { write: false, remove: [], fewerThan };
  const kept: StoredBackup[] = [fresh];
  const days = new Set<LocalDay>([fresh.day]);
  for (const one of [...existing].sort(byAge)) {
    const ofItsDay = kept.filter(({ day }) => day === one.day);
    if (ofItsDay.some((later) => !holdsMore(one, later))) continue;
    days.add(one.day);
    if (days.size <= KEPT_BACKUP_DAYS) kept.push(one);
  }
  const most = fullest(existing);
  const isProtected =
    most !== undefined &&
    most.reviews > fresh.reviews &&
    fresh.day - most.day <= FULLEST_KEPT_DAYS;
  const names = new Set(kept.map(({ name }) => name));
  if (isProtected) names.add(most.name);
  const remove = existing
    .map(({ name }) => name)
    .filter((name) => !names.has(name));
  return { write: true, remove, fewerThan };
}
