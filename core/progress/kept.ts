/** "What have I kept?" as data. */
import { dayAfter } from "../memory/local-day";
import type { LocalDay } from "../memory/review";
import { memoryState, type ScheduleSettings } from "../memory/schedule";
import type { RecallDay } from "./recall-days";

/** The most days that are looked at, between the first and today. */
const MOST_SAMPLES = 60;

/** How many of the cases met by a day were how well known on it. */
export interface KeptOnDay {
  readonly day: LocalDay;
  readonly kept: number;
  readonly settling: number;
  readonly fading: number;
}

/** Days from the first to the last, evenly spread and both among them. */
function sampledDays(first: LocalDay, last: LocalDay): readonly LocalDay[] {
  const step = Math.max(1, Math.ceil((last - first) / MOST_SAMPLES));
  const count = Math.floor((last - first) / step);
  // Counted back from the last day, which must be right.
  const days = Array.from({ length: count + 1 }, (_, i) =>
    dayAfter(last, -step * (count - i)),
  );
  return days[0] === first ? days : [first, ...days];
}

/**
 * How well the cases were known from the first day that counted until today,
 * as the schedule says now.
 *
 * Shape: `histories` are one case's days each, oldest first; the result is
 *        evenly spread over the days, today last; empty before the first day
 *        that counts.
 */
export function keptOverTime(
  histories: readonly (readonly RecallDay[])[],
  today: LocalDay,
  settings: ScheduleSettings = {},
): readonly KeptOnDay[] {
  const begun = histories.flatMap(([first]) => first?.lastDay ?? []);
  if (begun.length === 0) return [];
  const first = Math.min(...begun, today) as LocalDay;
  const counts = sampledDays(first, today).map((day) => ({
    day,
    kept: 0,
    settling: 0,
    fading: 0,
  }));
  for (const history of histories) {
    let reached = -1;
    for (const count of counts) {
      while ((history[reached + 1]?.lastDay ?? Infinity) <= count.day)
        reached += 1;
      const state = memoryState(history[reached], count.day, settings);
      if (state !== "new") count[state] += 1;
    }
  }
  return counts;
}
