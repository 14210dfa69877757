/** When to remind of a backup, where nobody makes one by itself. */

/** After so many days. */
export const REMIND_AFTER_DAYS = 7;

/** After so many answers and whole runs. */
export const REMIND_AFTER_REVIEWS = 200;

const DAY = 24 * 60 * 60 * 1000;

/** What the reminder goes by. */
export interface SinceBackup {
  /** The last backup, or the first answer or run where there was none. Units: milliseconds since 1970. */
  readonly since: number;
  /** Answers given and whole runs made since then, by anybody. */
  readonly keptSince: number;
  /** Units: milliseconds since 1970. */
  readonly now: number;
}

/**
 * Whether it is time for a backup: after a week, or 200 answers, whichever
 * comes first. Without anything since there is nothing to lose; under a clock
 * set back only the number counts.
 */
export function shouldRemind({ since, keptSince, now }: SinceBackup): boolean {
  if (keptSince === 0) return false;
  return (
    keptSince >= REMIND_AFTER_REVIEWS || now - since >= REMIND_AFTER_DAYS * DAY
  );
}
