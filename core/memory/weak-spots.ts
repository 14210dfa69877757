/**
 * Where a learner loses most in a solve: the cases that take longer than they
 * should or may not come back, weighed by how often a solve meets them.
 *
 * Everything is in one unit, seconds expected to be lost a solve, because slow
 * and unsure cases compete for the same minutes, and half a second at a case
 * that every solve meets is worth more than three at one in seventy.
 */
import { caseFrequency } from "../cases/case-frequency";
import type { DayPlan } from "./day-plan";
import type { PlannedCase } from "./plan-candidates";
import { EXTRA_TIMES } from "./round-plan";
import { DEFAULT_LEVEL } from "./schedule";

/**
 * How many targets a case takes beyond its usual time when it is forgotten.
 * Source: our guess, until it is measured: the wrong way is turned and seen to
 * be wrong, it is turned back, and then the right one is looked for.
 */
const FORGOTTEN_TARGETS = 3;

/** Fewer cases than this leave nothing to stand between the repeats of one. */
const FEWEST_CASES = 3;

/** What is known of a learner's cases. */
export interface CaseFacts {
  /**
   * How long the learner usually takes for a whole answer with a cube in the
   * hands, as targets are meant: a written answer's time comes divided by what
   * writing is given more. Undefined where it is not known. Units: seconds.
   */
  readonly usualSeconds: (planned: PlannedCase) => number | undefined;
  /** The chance that the case would be known today. Units: 0–1. */
  readonly chance: (planned: PlannedCase) => number;
  /** How sure the learner wants to be; the schedule's level where absent. */
  readonly level?: number;
}

/** A case at which something is lost. */
export interface WeakSpot {
  /** As a round asks it: beyond the schedule, unless it is due today. */
  readonly planned: PlannedCase;
  /** How often a solve meets it. */
  readonly frequency: number;
  /** By how much the chance is below what is wanted. Units: 0–1. */
  readonly unsure: number;
  /** What being slow costs. Units: seconds a solve. */
  readonly time: number;
  /** What not being as sure as wanted costs. Units: seconds a solve. */
  readonly certainty: number;
}

function weakSpot(
  planned: PlannedCase,
  { usualSeconds, chance, level = DEFAULT_LEVEL }: CaseFacts,
): WeakSpot {
  const frequency = caseFrequency(planned.case);
  const { target } = planned;
  const over = Math.max(0, (usualSeconds(planned) ?? 0) - target);
  const unsure = Math.max(0, level - chance(planned));
  return {
    planned,
    frequency,
    unsure,
    // Known or not: were it only lost where the case is known, a very slow case
    // would seem to cost the less the surer it is forgotten.
    time: frequency * over,
    certainty: frequency * unsure * FORGOTTEN_TARGETS * target,
  };
}

/** What a weak spot costs altogether. Units: seconds a solve. */
export function lossAt({ time, certainty }: WeakSpot): number {
  return time + certainty;
}

/**
 * The cases at which a learner loses anything, the most first; where two cost
 * the same, as the plan has them. Empty where every case is as quick and as
 * sure as wanted. Cases that were never met are not weak, only new.
 */
export function weakSpots(
  { due, resting }: Pick<DayPlan, "due" | "resting">,
  facts: CaseFacts,
): readonly WeakSpot[] {
  const beyond = resting.map((planned): PlannedCase => ({
    ...planned,
    asking: "extra",
  }));
  return [...due, ...beyond]
    .map((planned) => weakSpot(planned, facts))
    .filter((spot) => lossAt(spot) > 0)
    .toSorted((a, b) => lossAt(b) - lossAt(a));
}

/** What a round of weak spots has to fit. */
export interface WeakSpotsTime {
  readonly minutes: number;
  /** How long asking a case once takes, with what lies between answers. Units: seconds, above 0. */
  readonly secondsToAsk: (planned: PlannedCase) => number;
}

function filled(
  spots: readonly WeakSpot[],
  { minutes, secondsToAsk }: WeakSpotsTime,
  mostTimes: number,
): readonly PlannedCase[] {
  let left = minutes * 60;
  return spots.flatMap(({ planned }) => {
    const seconds = secondsToAsk(planned);
    const times = Math.min(mostTimes, Math.floor(left / seconds));
    if (times < 1) return [];
    left -= times * seconds;
    return [{ ...planned, times }];
  });
}

/**
 * A round of weak spots that fits some minutes, the worst first; empty where
 * not even one fits.
 *
 * The worst are asked as often as a case may be before another comes in: a
 * case gets quick by being repeated, so a few that are repeated win more than
 * many that are met once. Only where this left fewer than three cases is each
 * asked less often: with nothing between them, repeats need no recall.
 *
 * Shape: `spots` as `weakSpots` ranks them.
 */
export function weakSpotsRound(
  spots: readonly WeakSpot[],
  time: WeakSpotsTime,
): readonly PlannedCase[] {
  const wanted = Math.min(FEWEST_CASES, spots.length);
  for (let times = EXTRA_TIMES; times > 1; times -= 1) {
    const round = filled(spots, time, times);
    if (round.length >= wanted) return round;
  }
  return filled(spots, time, 1);
}
