/**
 * The taps of a run under way. Instants are the page's running time, which no
 * clock that is set moves; every tap can be taken back, for a tap slips easily
 * with a cube in the hands.
 */
import type { Milliseconds } from "../memory/review";

/** A run while its clock runs, or ran. Units: milliseconds of running time. */
export interface TappedRun {
  readonly startedAt: number;
  /** When parts were done, rising. */
  readonly splits: readonly number[];
  /** Undefined: it is under way. */
  readonly endedAt?: number;
}

/**
 * Two taps as close as this are one, made by a finger that bounced (ours: two
 * pieces that come home at once are tapped further apart).
 * Units: milliseconds.
 */
export const BOUNCE = 200;

/** A run at its first tap. */
export function startRun(at: number): TappedRun {
  return { startedAt: at, splits: [] };
}

function lastTap({ startedAt, splits }: TappedRun): number {
  return splits.at(-1) ?? startedAt;
}

/** The run after another tap: a part is done, or with the last part the run. */
export function tapRun(run: TappedRun, at: number, parts: number): TappedRun {
  if (run.endedAt !== undefined || at - lastTap(run) < BOUNCE) return run;
  return run.splits.length < parts - 1
    ? { ...run, splits: [...run.splits, at] }
    : { ...run, endedAt: at };
}

/** The run ended by a tap, whatever parts are left: they came together. */
export function endRun(run: TappedRun, at: number): TappedRun {
  if (run.endedAt !== undefined || at - lastTap(run) < BOUNCE) return run;
  return { ...run, endedAt: at };
}

/** The run without its last tap: it goes on, as if nobody had tapped. The first tap is not taken back by this. */
export function takeTapBack({
  startedAt,
  splits,
  endedAt,
}: TappedRun): TappedRun {
  return endedAt === undefined
    ? { startedAt, splits: splits.slice(0, -1) }
    : { startedAt, splits };
}

/** What a run that ended measured. Undefined: it is under way. */
export function measuredRun({
  startedAt,
  splits,
  endedAt,
}: TappedRun):
  | { readonly time: Milliseconds; readonly splits: readonly Milliseconds[] }
  | undefined {
  if (endedAt === undefined) return undefined;
  return {
    time: (endedAt - startedAt) as Milliseconds,
    splits: splits.map((at) => (at - startedAt) as Milliseconds),
  };
}
