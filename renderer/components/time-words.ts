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

/** An answer's times as they are shown. Units: milliseconds, in whole tenths of a second. */
export interface ShownTimes {
  readonly thinking: number;
  readonly turning: number;
  /** From the last turn until the learner said they were done. */
  readonly finishing: number;
}

/** The parts of an answer's time, rounded so that they add up to its rounded whole. Units: milliseconds. */
export function shownTimes(
  total: number,
  thinking: number,
  turning: number,
): ShownTimes {
  const tenths = (duration: number) =>
    Math.round(10 * Number((duration / 1000).toFixed(1)));
  const left = tenths(total) - tenths(thinking);
  const finishing = Math.min(
    left,
    tenths(Math.max(0, total - thinking - turning)),
  );
  return {
    thinking: 100 * tenths(thinking),
    turning: 100 * (left - finishing),
    finishing: 100 * finishing,
  };
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

/** How many answers since their first day: "15 answers today", "15 answers since Monday". */
export function answersSince(
  count: number,
  first: LocalDay,
  today: LocalDay,
): string {
  const answers =
    count === 1 ? "1 answer" : `${count.toLocaleString("en")} answers`;
  const day = dayInWords(first, today);
  if (first === today) return `${answers} today.`;
  return count === 1 ? `${answers}, ${day}.` : `${answers} since ${day}.`;
}

/** A day in full: "Thursday 27 November". */
export function wholeDay(day: LocalDay): string {
  return WEEKDAY_AND_DATE.format(dateOf(day)).replace(",", "");
}

/** A day with its year: "1 February 2027". */
export function dateWithYear(day: LocalDay): string {
  return DATE_WITH_YEAR.format(dateOf(day));
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

const MONTH_AND_YEAR = format({ month: "short", year: "numeric" });
const DAY_AND_MONTH = format({ day: "numeric", month: "short" });

/** A day under an axis: "3 Sept"; "Sept 2026" where the axis is longer than most of a year. Units: `span` in days. */
export function axisDay(day: LocalDay, span: number): string {
  return (span > 300 ? MONTH_AND_YEAR : DAY_AND_MONTH).format(dateOf(day));
}
