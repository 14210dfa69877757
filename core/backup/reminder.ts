/** When to remind of a backup, where nobody makes one by itself. */

/** After so many days. */
export const REMIND_AFTER_DAYS = 7;

/** After so many answers. */
export const REMIND_AFTER_REVIEWS = 200;

const DAY = 24 * 60 * 60 * 1000;

/** What the reminder goes by. */
export interface SinceBackup {
  /** The last backup, or the first answer where there was none. Units: milliseconds since 1970. */
  readonly since: number;
  /** Answers given since then, by anybody. */
  readonly reviewsSince: number;
  /** Units: milliseconds since 1970. */
  readonly now: number;
}

/**
 * Whether it is time for a backup: after a week, or 200 answers, whichever
 * comes first. Without an answer since there is nothing to lose; under a clock
 * set back only the answers count.
 */
export function shouldRemind({
  since,
  reviewsSince,
  now,
}: SinceBackup): boolean {
  if (reviewsSince === 0) return false;
  return (
    reviewsSince >= REMIND_AFTER_REVIEWS ||
    now - since >= REMIND_AFTER_DAYS * DAY
  );
}
