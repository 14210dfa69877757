/**
 * The days on which the made-up learner practises: where the machine is, when
 * they sit down, and which day it should count as. Offsets are written down
 * here, so that what the page reads off its own clock is held against them.
 */
import { present } from "../../../core/invariant";
import { dayNumber } from "../../../core/memory/local-day";
import type { LocalDay } from "../../../core/memory/review";

const DAY = 86_400_000;
const MINUTE = 60_000;

/** Saturday 30 March 2030: in the night after it clocks in Berlin are put forward. */
const FIRST = Date.UTC(2030, 2, 30);

/** A day with practice. */
export interface PractisedDay {
  /** Days since the first. */
  readonly number: number;
  readonly localDay: LocalDay;
  readonly timezone: string;
  /** Minutes east of UTC, as that place has them on that day. */
  readonly utcOffset: number;
  /** When the learner sits down, UTC. Units: milliseconds. */
  readonly begins: number;
  /** Whether the window was left open over night instead of being opened now. */
  readonly isLeftOpen: boolean;
}

interface Stay {
  readonly from: number;
  readonly timezone: string;
  readonly utcOffset: number;
  /** Minutes after midnight there. */
  readonly sitsDown: number;
}

/** Source: the time zone database's rules for 2030, from memory. */
const STAYS: readonly Stay[] = [
  { from: 0, timezone: "Europe/Berlin", utcOffset: 60, sitsDown: 1170 },
  { from: 1, timezone: "Europe/Berlin", utcOffset: 120, sitsDown: 1170 },
  { from: 3, timezone: "Asia/Tokyo", utcOffset: 540, sitsDown: 510 },
  { from: 9, timezone: "America/New_York", utcOffset: -240, sitsDown: 1260 },
  { from: 16, timezone: "Europe/Berlin", utcOffset: 120, sitsDown: 1170 },
];

/** So many days of practice. Shape: `comes` says on which days; the first is day 0. */
export function calendarOf(
  count: number,
  comes: (day: number) => boolean,
): readonly PractisedDay[] {
  const days: PractisedDay[] = [];
  for (let number = 0; days.length < count; number++) {
    if (!comes(number)) continue;
    const { timezone, utcOffset, sitsDown } = present(
      STAYS.findLast(({ from }) => from <= number),
      "the first stay begins on day 0",
    );
    days.push({
      number,
      localDay: dayNumber(FIRST / DAY + number),
      timezone,
      utcOffset,
      begins: FIRST + number * DAY + (sitsDown - utcOffset) * MINUTE,
      isLeftOpen: days.at(-1)?.timezone === timezone && number % 2 === 1,
    });
  }
  return days;
}
