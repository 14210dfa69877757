/**
 * A learner's days. Core gets an instant and a UTC offset and works with a day
 * number of its own: the machine's zone and the scheduling library's calendar
 * (UTC days in one place, 24-hour gaps in another) never come into it, so a
 * log replays to the same days everywhere.
 */
import type { LocalDay, Milliseconds } from "./review";

/** Hour of the clock at which a learner's day turns over unless they choose otherwise. */
export const DAY_TURNS_OVER_AT = 3;

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** The day of that number. Units: whole days since 1 January 1970. */
export function dayNumber(day: number): LocalDay {
  return Math.floor(day) as LocalDay;
}

/**
 * The learner's day at an instant.
 *
 * Units: `at` in milliseconds since the Unix epoch, `utcOffset` in minutes
 *        east of UTC, `turnsOverAt` in hours after local midnight.
 */
export function localDay(
  at: number,
  utcOffset: number,
  turnsOverAt = DAY_TURNS_OVER_AT,
): LocalDay {
  return dayNumber((at + utcOffset * MINUTE - turnsOverAt * HOUR) / DAY);
}

/**
 * When a learner's day ends: the first instant of the next. Units as in
 * `localDay`, of which it is the other way round.
 */
export function endOfDay(
  day: LocalDay,
  utcOffset: number,
  turnsOverAt = DAY_TURNS_OVER_AT,
): Milliseconds {
  return ((day + 1) * DAY +
    turnsOverAt * HOUR -
    utcOffset * MINUTE) as Milliseconds;
}

/** The day some days later; earlier where `days` is negative. */
export function dayAfter(day: LocalDay, days: number): LocalDay {
  return dayNumber(day + days);
}
