/**
 * When to suggest a pause: on a real cube, long sittings strain hands and
 * wrists. Time counts while the learner keeps tapping; a longer silence is a
 * pause already.
 *
 * Units: milliseconds of the page's running time.
 */

/** How long somebody has been turning a cube in their hands. */
export interface TurningTime {
  readonly turned: number;
  readonly last: number | undefined;
}

/** After so much turning a pause is suggested. */
export const PAUSE_AFTER = 20 * 60_000;

/** A silence as long as this is rest. */
const REST = 5 * 60_000;

/** Between two taps at most this much is taken for turning. */
const MOST_BETWEEN_TAPS = 60_000;

/** Nothing turned yet. */
export const RESTED: TurningTime = { turned: 0, last: undefined };

/** The time after another tap. */
export function afterTap(time: TurningTime, at: number): TurningTime {
  const since = time.last === undefined ? 0 : Math.max(0, at - time.last);
  if (since >= REST) return { turned: 0, last: at };
  return { turned: time.turned + Math.min(since, MOST_BETWEEN_TAPS), last: at };
}

/** Whether a pause is due. */
export function wantsPause(time: TurningTime): boolean {
  return time.turned >= PAUSE_AFTER;
}
