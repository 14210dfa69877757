/** "Can I trust the forecast?" as data. */
import type { RecallDay } from "./recall-days";

/** Bounds between the bins of foretold chances; the best ones are finer, because most forecasts are there. */
const BOUNDS = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95] as const;

/** Fewer answers make no group of their own; they go with those above. */
const LEAST_IN_BIN = 5;

/** The normal deviate of a 95% interval. */
const Z = 1.959964;

/** A share with what it may well be in truth. Units: 0–1. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * The 95% interval of a share by Wilson's score method, which stays within
 * 0 and 1 and holds for few trials.
 *
 * Units: `successes` of `trials`, at least one.
 * Source: Wilson 1927; Newcombe, Statistics in Medicine 17 (1998), 857–872,
 *         method 3.
 */
export function wilsonInterval(successes: number, trials: number): Interval {
  const share = successes / trials;
  const scale = 1 + Z ** 2 / trials;
  const centre = (share + Z ** 2 / (2 * trials)) / scale;
  const half =
    (Z / scale) *
    Math.sqrt((share * (1 - share)) / trials + Z ** 2 / (4 * trials ** 2));
  return {
    low: successes === 0 ? 0 : centre - half,
    high: successes === trials ? 1 : centre + half,
  };
}

/** Forecasts that were about alike, and what came of them. */
export interface ForecastBin {
  /** The mean chance that was foretold. Units: 0–1. */
  readonly foretold: number;
  readonly right: number;
  readonly answers: number;
}

/** What was foretold and what came, over a learner's whole log. */
export interface Forecast {
  /** The lowest chances first; small bins are joined. */
  readonly bins: readonly ForecastBin[];
  readonly answers: number;
  readonly right: number;
  /** How many right answers were expected. */
  readonly expected: number;
  /** How far from that chance alone would lead two times out of three. Units: answers. */
  readonly spread: number;
}

interface Bin {
  chances: number;
  right: number;
  answers: number;
}

function emptyBin(): Bin {
  return { chances: 0, right: 0, answers: 0 };
}

/** The bins with small ones joined to the next; the last few may stay small. */
function joined(bins: readonly Bin[]): readonly Bin[] {
  const made: Bin[] = [];
  let open = emptyBin();
  for (const bin of bins) {
    open.chances += bin.chances;
    open.right += bin.right;
    open.answers += bin.answers;
    if (open.answers < LEAST_IN_BIN) continue;
    made.push(open);
    open = emptyBin();
  }
  return open.answers === 0 ? made : [...made, open];
}

/** Compares what memory foretold for every day after a case's first with what was answered. */
export function forecastOf(days: Iterable<RecallDay>): Forecast {
  const bins = Array.from({ length: BOUNDS.length + 1 }, emptyBin);
  let variance = 0;
  for (const { chance, wasRight } of days) {
    if (chance === undefined) continue;
    const above = BOUNDS.findIndex((bound) => chance < bound);
    const bin = bins.at(above);
    if (bin === undefined) continue;
    bin.chances += chance;
    bin.answers += 1;
    if (wasRight) bin.right += 1;
    variance += chance * (1 - chance);
  }
  const sum = (of: (bin: Bin) => number) =>
    bins.reduce((total, bin) => total + of(bin), 0);
  return {
    bins: joined(bins).map(({ chances, right, answers }) => ({
      foretold: chances / answers,
      right,
      answers,
    })),
    answers: sum(({ answers }) => answers),
    right: sum(({ right }) => right),
    expected: sum(({ chances }) => chances),
    spread: Math.sqrt(variance),
  };
}

/** From how many forecasts on something is said about them. */
export const ENOUGH_FORECASTS = 20;

/** What is to be thought of the forecasts: that there are too few, that they hold, or which way they are off. */
export type ForecastVerdict = "too-few" | "holds" | "too-careful" | "too-bold";

/** Whether what came could well have come by chance if the forecasts are right. */
export function forecastVerdict(forecast: Forecast): ForecastVerdict {
  const { answers, right, expected, spread } = forecast;
  if (answers < ENOUGH_FORECASTS) return "too-few";
  if (Math.abs(right - expected) <= Z * spread) return "holds";
  return right > expected ? "too-careful" : "too-bold";
}
