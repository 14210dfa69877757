/**
 * Whose turn it is in a round: picked anew after every answer rather than
 * queued at the start, so that the rules hold whatever was missed on the way.
 *
 * The rules, first one that applies:
 * 1. a step that must follow at once (a new case being introduced);
 * 2. a repeat that has waited long enough, the longest overdue first;
 * 3. the next case of the plan that has not been asked;
 * 4. with nothing else left, a repeat before its time: spaced ones before
 *    returns after a miss, the nearest to its time first;
 * 5. the case just asked, when only that one is left.
 */
import type { RoundStep, RoundTrack } from "./round-track";

interface Waiting {
  readonly index: number;
  readonly step: RoundStep;
  /** How many others have stood since, beyond those it wants; negative: too few. */
  readonly over: number;
}

function longestOver(waiting: readonly Waiting[]): number | undefined {
  return waiting.toSorted((a, b) => b.over - a.over)[0]?.index;
}

/** Tracks without those spaced repeats that nothing could stand before any more. */
export function withoutUnspaced(
  tracks: readonly RoundTrack[],
  lastAsked: number | undefined,
): readonly RoundTrack[] {
  const areOthersLeft = tracks.some(
    ({ steps }, index) => index !== lastAsked && steps.length > 0,
  );
  if (areOthersLeft) return tracks;
  return tracks.map((track, index) => {
    if (index !== lastAsked || track.steps[0]?.gap === 0) return track;
    return {
      ...track,
      steps: track.steps.filter((step) => step.kind !== "spaced"),
    };
  });
}

/**
 * The index of the track whose turn it is, or undefined at the end.
 *
 * Shape: `asked` counts the askings so far; `lastAsked` is the track of the
 *        last one.
 */
export function nextTrack(
  tracks: readonly RoundTrack[],
  asked: number,
  lastAsked: number | undefined,
): number | undefined {
  const last = lastAsked === undefined ? undefined : tracks[lastAsked];
  if (last?.steps[0]?.gap === 0) return lastAsked;
  const waiting = tracks.flatMap((track, index): readonly Waiting[] => {
    const step = track.steps[0];
    if (step === undefined || track.lastAsked === undefined) return [];
    if (index === lastAsked) return [];
    const others = asked - track.lastAsked - 1;
    return [{ index, step, over: others - step.gap }];
  });
  const fresh = tracks.findIndex(
    (track) => track.lastAsked === undefined && track.steps.length > 0,
  );
  return (
    longestOver(waiting.filter(({ over }) => over >= 0)) ??
    (fresh >= 0 ? fresh : undefined) ??
    longestOver(waiting.filter(({ step }) => step.kind !== "return")) ??
    longestOver(waiting) ??
    (last !== undefined && last.steps.length > 0 ? lastAsked : undefined)
  );
}
