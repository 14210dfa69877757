/** "What comes back when?" as data. */
import { dayAfter } from "../memory/local-day";
import type { LocalDay } from "../memory/review";
import type { Memory } from "../memory/schedule";
import type { AskedCase } from "./answer-log";
import type { CaseTimes } from "./case-times";
import { median } from "./median";
import { secondsToAsk } from "../memory/time-needed";

/** How many days ahead the progress page looks. */
export const DAYS_AHEAD = 30;

/** The cases that come back on one day. */
export interface ComingDay {
  readonly day: LocalDay;
  /** Days from today; 0 is today. */
  readonly daysAhead: number;
  /** The likeliest to be forgotten first: what lasted until the earliest day. */
  readonly memories: readonly Memory[];
  /** How long they should take. */
  readonly minutes: number;
}

/** What comes back on the days ahead, how many cases after them, and how many not at all. */
export interface ComingBack {
  /** One entry a day, today first, empty days too. */
  readonly days: readonly ComingDay[];
  readonly later: number;
  /** Known, and asked by nobody: cases of no deck that is practised. */
  readonly resting: number;
}

/** What one may want to be otherwise. */
export interface ComingBackOptions {
  readonly daysAhead?: number;
  /** When a case comes back, where that is not by its memory alone; undefined: it does not. */
  readonly dueOn?: (memory: Memory) => LocalDay | undefined;
  /** How long a case takes. Units: seconds. */
  readonly secondsOf?: (memory: Memory) => number;
}

/** What comes back by day, each case once. What is overdue counts for today. */
export function comingBackByDay(
  memories: Iterable<Memory>,
  today: LocalDay,
  {
    daysAhead = DAYS_AHEAD,
    dueOn = ({ lastsUntil }) => lastsUntil,
    secondsOf = secondsByCase([]),
  }: ComingBackOptions = {},
): ComingBack {
  // Asked once for each: finding a memory's deck takes longer than the rest.
  let resting = 0;
  const due: { readonly memory: Memory; readonly due: LocalDay }[] = [];
  for (const memory of memories) {
    const day = dueOn(memory);
    if (day === undefined) resting += 1;
    else due.push({ memory, due: day });
  }
  due.sort((a, b) => a.due - b.due);
  const byDay = Array.from({ length: daysAhead }, (): Memory[] => []);
  let later = 0;
  for (const { memory, due: day } of due) {
    const own = byDay[Math.max(0, day - today)];
    if (own === undefined) later += 1;
    else own.push(memory);
  }
  return {
    days: byDay.map((own, ahead) => ({
      day: dayAfter(today, ahead),
      daysAhead: ahead,
      memories: own,
      minutes: own.reduce((sum, memory) => sum + secondsOf(memory), 0) / 60,
    })),
    later,
    resting,
  };
}

/** What a case is taken to need before any was answered in time. Units: seconds. Source: about a starter deck's targets. */
const UNKNOWN_SECONDS = 10;

/**
 * How long each case takes a learner to be asked: their own usual time for it,
 * else what their others take in the middle. Units: seconds.
 */
export function secondsByCase(
  times: readonly CaseTimes[],
): (asked: AskedCase) => number {
  const key = ({ case: id, hold }: AskedCase) => `${id} ${hold}`;
  const own = new Map(times.map((one) => [key(one), one.total / 1000]));
  const usual = median([...own.values()]) ?? UNKNOWN_SECONDS;
  return (asked) => secondsToAsk(own.get(key(asked)) ?? usual);
}
