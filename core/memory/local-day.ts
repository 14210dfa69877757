/**
 * A learner's days. Core gets an instant and a UTC offset and works with a day
 * number of its own: the machine's zone and the scheduling library's calendar
 * (UTC days in one place, 24-hour gaps in another) never come into it, so a
 * log replays to the same days everywhere.
 */
import type { LocalDay } from "./review";

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
 * The instant at which a learner's day begins, under one UTC offset.
 *
 * Units: as `localDay`.
 */
export function dayStartsAt(
  day: LocalDay,
  utcOffset: number,
  turnsOverAt = DAY_TURNS_OVER_AT,
): number {
  return day * DAY + turnsOverAt * HOUR - utcOffset * MINUTE;
}

/** The day some days later; earlier where `days` is negative. */
export function dayAfter(day: LocalDay, days: number): LocalDay {
  return dayNumber(day + days);
}

/** A day of the week: 0 is Monday, 6 is Sunday. */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

/**
 * The day of the week of a day.
 *
 * Source: 1 January 1970 was a Thursday (the Gregorian calendar).
 */
export function weekdayOf(day: LocalDay): Weekday {
  return ((((day + 3) % 7) + 7) % 7) as Weekday;
}

/** A date of the Gregorian calendar; months and days count from 1. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/**
 * The calendar date of a day.
 *
 * Source: the usual count in eras of 400 years (146,097 days) that begin on
 *         1 March, so that the leap day comes last.
 */
export function calendarDate(day: LocalDay): CalendarDate {
  const sinceMarch0000 = day + 719_468;
  const era = Math.floor(sinceMarch0000 / 146_097);
  const dayOfEra = sinceMarch0000 - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear =
    dayOfEra -
    (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1,
  };
}

/** A day as a person would name it today, as data for a sentence. */
export type RelativeDay =
  | { readonly kind: "past"; readonly daysAgo: number }
  | { readonly kind: "today" }
  | { readonly kind: "tomorrow" }
  | { readonly kind: "weekday"; readonly weekday: Weekday }
  | {
      readonly kind: "date";
      readonly date: CalendarDate;
      readonly days: number;
    };

/**
 * How to name a day: by its weekday only from two to six days ahead, where no
 * other day of that name comes first; further off by its date.
 */
export function relativeDay(today: LocalDay, day: LocalDay): RelativeDay {
  const days = day - today;
  if (days < 0) return { kind: "past", daysAgo: -days };
  if (days === 0) return { kind: "today" };
  if (days === 1) return { kind: "tomorrow" };
  if (days < 7) return { kind: "weekday", weekday: weekdayOf(day) };
  return { kind: "date", date: calendarDate(day), days };
}
