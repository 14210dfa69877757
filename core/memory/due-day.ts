/**
 * When a case is due: on the day its memory lasts until, or sooner where its
 * deck wants every case at least so often, as a weekly class does.
 */
import type { DeckCeiling } from "../deck/deck";
import { dayAfter, dayNumber } from "./local-day";
import type { LocalDay } from "./review";
import type { Memory } from "./schedule";

const MILLISECONDS_A_DAY = 86_400_000;

/** The day that a calendar date is. Shape: `date` as YYYY-MM-DD, a day that the calendar has. */
function dayOfDate(date: string): LocalDay {
  return dayNumber(Date.parse(`${date}T00:00:00Z`) / MILLISECONDS_A_DAY);
}

/**
 * The day on which a case is due. A ceiling counts up to its last day and
 * leaves the memory as it is: it only asks sooner.
 */
export function dueDay(
  { lastDay, lastsUntil }: Pick<Memory, "lastDay" | "lastsUntil">,
  ceiling?: DeckCeiling,
): LocalDay {
  if (ceiling === undefined) return lastsUntil;
  const asked = dayAfter(lastDay, ceiling.everyDays);
  return asked < lastsUntil && asked <= dayOfDate(ceiling.until)
    ? asked
    : lastsUntil;
}
