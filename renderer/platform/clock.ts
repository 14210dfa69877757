/**
 * The machine's clocks. Core never reads them: it is given what these say.
 *
 * Two kinds are kept apart: the calendar (an instant and its offset, for
 * "when" and "which day") and the page's own running time (never moved by a
 * corrected system clock, for "how long").
 */
import type { Milliseconds } from "../../core/memory/review";

/** The current instant. Units: milliseconds since the Unix epoch, UTC. */
export function now(): Milliseconds {
  return Date.now() as Milliseconds;
}

/** Minutes east of UTC on this machine at an instant. */
export function utcOffset(at: Milliseconds): number {
  // The library counts minutes west; adding zero turns −0 into 0.
  return -new Date(at).getTimezoneOffset() + 0;
}

/** The date of an instant on this machine. Shape: YYYY-MM-DD. */
export function dateOf(at: Milliseconds): string {
  const local = new Date(at + utcOffset(at) * 60_000);
  return local.toISOString().slice(0, 10);
}

/** The page's running time. Units: milliseconds since the page began. */
export function runningTime(): Milliseconds {
  return performance.now() as Milliseconds;
}
