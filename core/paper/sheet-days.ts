/** On which days the answers of a sheet were given: what is suggested, and what can be chosen. */
import { dayAfter } from "../memory/local-day";
import type { LocalDay } from "../memory/review";
import type { CodedKind } from "./sheet-code";

/** What a case sheet calls its seven boxes; whoever enters them finds the same words. Shape: Monday first, in the order of the boxes. */
export const SHEET_DAYS = [
  "Mon",
  "Tue",
  "Wed",
  "Thu",
  "Fri",
  "Sat",
  "Sun",
] as const;

const WEEK = SHEET_DAYS.length;

/** 1 January 1970 was a Thursday: three days after a Monday. */
const THURSDAY = 3;

/** For how long a sheet may lie in a bag. Units: weeks, and days. */
const WEEKS_BACK = 26;
const DAYS_BACK = 60;

/** The Monday of a day's week. */
export function mondayOf(day: LocalDay): LocalDay {
  return dayAfter(day, -((((day + THURSDAY) % WEEK) + WEEK) % WEEK));
}

/**
 * The first day of a sheet that was printed on a day, as far as one can guess.
 *
 * A practice sheet is done on the day it is handed out. A case sheet has boxes
 * from Monday on: printed on the last days of a week it is for the next one.
 * Nobody has filled in a week that has not begun.
 */
export function likelyFirstDay(
  kind: CodedKind,
  printed: LocalDay,
  today: LocalDay,
): LocalDay {
  const earlier = (a: LocalDay, b: LocalDay) => (a < b ? a : b);
  if (kind === "practice") return earlier(printed, today);
  const monday = mondayOf(printed);
  const isForNext = printed - monday > THURSDAY;
  return earlier(isForNext ? dayAfter(monday, WEEK) : monday, mondayOf(today));
}

/** The first days that may be chosen, the last first: Mondays for a case sheet. Shape: as far back as the day that was printed, and half a year or two months at least. */
export function firstDaysToChoose(
  kind: CodedKind,
  printed: LocalDay,
  today: LocalDay,
): readonly LocalDay[] {
  const isWeekly = kind === "cases";
  const newest = isWeekly ? mondayOf(today) : today;
  const oldest = isWeekly ? mondayOf(printed) : printed;
  const step = isWeekly ? WEEK : 1;
  const least = isWeekly ? WEEKS_BACK : DAYS_BACK;
  const count = Math.max(least, Math.floor((newest - oldest) / step) + 1);
  return Array.from({ length: count }, (_, n) => dayAfter(newest, -n * step));
}
