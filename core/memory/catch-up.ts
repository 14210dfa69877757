/**
 * How long a catch-up takes: the coming days played through, each filled with
 * what is due, the longest overdue first, as if everything were recalled.
 * Somebody who forgets some of it takes longer, so people are told "about".
 */
import type { DeckCeiling } from "../deck/deck";
import { dueDay } from "./due-day";
import { dayAfter } from "./local-day";
import type { LocalDay } from "./review";
import {
  type MemoryAhead,
  recalledOn,
  type ScheduleSettings,
  taughtOn,
} from "./schedule";

/** Over how many days a catch-up is looked for. */
const LONGEST = 60;

/** A case that is known, as the days ahead see it. */
export interface KnownCase {
  readonly memory: MemoryAhead;
  readonly due: LocalDay;
  /** How often its deck wants it at least. */
  readonly ceiling: DeckCeiling | undefined;
  /** How long asking it takes. Units: seconds. */
  readonly seconds: number;
}

/** What a catch-up is reckoned from. */
export interface CatchUpInput {
  readonly today: LocalDay;
  /** What is asked today. */
  readonly asked: readonly KnownCase[];
  /** What is due and waits. */
  readonly waiting: readonly KnownCase[];
  readonly resting: readonly KnownCase[];
  /** What a day has room for. Units: seconds. */
  readonly budget: number;
  readonly settings: ScheduleSettings | undefined;
}

/** A case after it was recalled steadily on a day. */
export function recalledCase(
  one: KnownCase,
  day: LocalDay,
  settings: ScheduleSettings | undefined,
): KnownCase {
  const { memory, due } = recalledOn(one.memory, day, settings);
  const lasts = { lastDay: day, lastsUntil: due };
  return { ...one, memory, due: dueDay(lasts, one.ceiling) };
}

/**
 * On which days a case that is taught today comes back, as long as it is
 * recalled steadily each time. Units: days from today, rising, up to `within`.
 */
export function daysAfterTaught(
  today: LocalDay,
  within: number,
  {
    ceiling,
    settings,
  }: { ceiling?: DeckCeiling | undefined } & Pick<CatchUpInput, "settings">,
): readonly number[] {
  const days: number[] = [];
  const { memory, due } = taughtOn(today, settings);
  const lasts = { lastDay: today, lastsUntil: due };
  let one: KnownCase = {
    memory,
    due: dueDay(lasts, ceiling),
    ceiling,
    seconds: 0,
  };
  while (one.due - today <= within) {
    days.push(one.due - today);
    one = recalledCase(one, one.due, settings);
  }
  return days;
}

/** How many from the front fit a time; the first always does. Units: seconds. */
export function countThatFits(
  cases: readonly Pick<KnownCase, "seconds">[],
  budget: number,
): number {
  let spent = 0;
  const over = cases.findIndex(({ seconds }, i) => {
    spent += seconds;
    return spent > budget && i > 0;
  });
  return over < 0 ? cases.length : over;
}

/**
 * In how many days nothing waits any more that is due: 0 where nothing does
 * today, undefined beyond two months.
 */
export function daysToCatchUp({
  today,
  asked,
  waiting,
  resting,
  budget,
  settings,
}: CatchUpInput): number | undefined {
  if (waiting.length === 0) return 0;
  let cases = [
    ...asked.map((one) => recalledCase(one, today, settings)),
    ...waiting,
    ...resting,
  ];
  for (let ahead = 1; ahead <= LONGEST; ahead++) {
    const day = dayAfter(today, ahead);
    const due = cases
      .filter((one) => one.due <= day)
      .toSorted((a, b) => a.due - b.due);
    const count = countThatFits(due, budget);
    if (count === due.length) return ahead;
    cases = [
      ...cases.filter((one) => one.due > day),
      ...due.map((one, i) =>
        i < count ? recalledCase(one, day, settings) : one,
      ),
    ];
  }
  return undefined;
}
