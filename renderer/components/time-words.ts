/**
 * Durations and days as people read them. Days are the learner's own local
 * days, so the calendar is read in UTC and no machine's zone comes in.
 */
import type { LocalDay } from "../../core/memory/review";

const DAY = 86_400_000;

const format = (options: Intl.DateTimeFormatOptions) =>
  new Intl.DateTimeFormat("en-GB", { ...options, timeZone: "UTC" });

const WEEKDAY = format({ weekday: "long" });
const SHORT_WEEKDAY = format({ weekday: "short" });
const DATE = format({ day: "numeric", month: "long" });
const DATE_WITH_YEAR = format({
  day: "numeric",
  month: "long",
  year: "numeric",
});
const WEEKDAY_AND_DATE = format({
  weekday: "long",
  day: "numeric",
  month: "long",
});
const SHORT_DATE = format({ weekday: "short", day: "numeric" });
const SHORT_MONTH_DATE = format({ day: "numeric", month: "short" });

const dateOf = (day: LocalDay) => new Date(day * DAY);

/** A duration with one decimal: "9.3 s". Units: milliseconds. */
export function seconds(duration: number): string {
  return `${(duration / 1000).toFixed(1)} s`;
}

/** A day near today by its name, another by its date: "tomorrow", "Thursday", "4 December". */
export function dayInWords(day: LocalDay, today: LocalDay): string {
  const ahead = day - today;
  if (ahead === 0) return "today";
  if (ahead === 1) return "tomorrow";
  if (ahead === -1) return "yesterday";
  const date = dateOf(day);
  if (ahead > 1 && ahead < 7) return WEEKDAY.format(date);
  const sameYear =
    date.getUTCFullYear() === dateOf(today).getUTCFullYear() ||
    Math.abs(ahead) < 90;
  return (sameYear ? DATE : DATE_WITH_YEAR).format(date);
}

/** A day in full: "Thursday 27 November". */
export function wholeDay(day: LocalDay): string {
  return WEEKDAY_AND_DATE.format(dateOf(day)).replace(",", "");
}

/** A day for the head of a column: "today", "Sat 22", "3 Sept". */
export function shortDay(day: LocalDay, today: LocalDay): string {
  const ahead = day - today;
  if (ahead === 0) return "today";
  return (Math.abs(ahead) < 14 ? SHORT_DATE : SHORT_MONTH_DATE)
    .format(dateOf(day))
    .replace(",", "");
}

/** The short name of a day's weekday: "Thu". */
export function shortWeekday(day: LocalDay): string {
  return SHORT_WEEKDAY.format(dateOf(day));
}
