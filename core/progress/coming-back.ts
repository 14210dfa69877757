/** "What comes back, and when?" as data. */
import { dayAfter } from "../memory/local-day";
import type { LocalDay } from "../memory/review";
import type { Memory } from "../memory/schedule";

/** How many days ahead the progress page looks. */
export const DAYS_AHEAD = 14;

/** The cases that come back on one day. */
export interface ComingDay {
  readonly day: LocalDay;
  /** Days from today; 0 is today. */
  readonly daysAhead: number;
  /** The likeliest to be forgotten first: what lasted until the earliest day. */
  readonly memories: readonly Memory[];
}

/** What comes back on the days ahead, and how many cases after them. */
export interface ComingBack {
  /** One entry a day, today first, empty days too. */
  readonly days: readonly ComingDay[];
  readonly later: number;
}

/** What comes back by day. What is overdue counts for today. `dueOn` says when a case is due where a deck wants it sooner than its memory. */
export function comingBackByDay(
  memories: Iterable<Memory>,
  today: LocalDay,
  daysAhead = DAYS_AHEAD,
  dueOn: (memory: Memory) => LocalDay = ({ lastsUntil }) => lastsUntil,
): ComingBack {
  const sorted = [...memories].toSorted((a, b) => dueOn(a) - dueOn(b));
  const aheadOf = (memory: Memory) => Math.max(0, dueOn(memory) - today);
  return {
    days: Array.from({ length: daysAhead }, (_, ahead) => ({
      day: dayAfter(today, ahead),
      daysAhead: ahead,
      memories: sorted.filter((memory) => aheadOf(memory) === ahead),
    })),
    later: sorted.filter((memory) => aheadOf(memory) >= daysAhead).length,
  };
}
