/**
 * Fitting the memory model to one learner: which answers it learns from, which
 * are held back to test it, and whether what came of it is good enough.
 *
 * The fitting itself is a library's, handed in as a `Trainer`: it is compiled
 * code that the renderer loads in a worker, and tests in Node. Weights are
 * only taken where they foretell the newest answers, which they have not
 * seen, clearly better than those in use: a small log fits its own chance.
 */
import { ratingOf } from "./library-settings";
import {
  daysSinceBefore,
  type Forecast,
  forecastsOf,
  type RecalledDay,
} from "./recalls";
import type { ScheduleSettings } from "./schedule";

/** How many weights the model has. */
export const WEIGHT_COUNT = 21;

/** The share of the answers, the newest, that test a fit. */
const HELD_OUT = 0.3;

/** By which share log loss must fall on them. */
const GATE = 0.005;

/**
 * By how many of its standard errors it must fall as well: a chance of one in
 * twenty, one-sided. A hundred answers held out are few, and the share alone
 * let every second fit pass to learners like the defaults, who lost 0.6 to
 * 1.1% by it after 400 answers. With this, 1 to 4 of 24 pass and they lose
 * 0.0 to 0.2%; learners who remember much longer still gain 7.8% (10.7%
 * without it, 5.9% with 2.5 standard errors). Source: `npm run simulate`.
 */
const STANDARD_ERRORS = 1.64;

/**
 * How often the library is shown all items of a short log, and from how many
 * items on once is enough. It goes through them five times, 512 at a time: a
 * few hundred items are a handful of steps, too few for somebody unlike its
 * own weights. Four times as many took learners who forget faster from a gain
 * of 0.2% to one of 0.5% after 800 answers, and learners who remember longer
 * from 7.0 to 7.8% after 400. Source: `npm run simulate`.
 */
const SHOWN_TIMES = 4;
const ENOUGH_ITEMS = 3000;

/** The first stabilities: the library floors them at this when it schedules, so a fit may not go below. Units: days. */
const LEAST_FIRST_STABILITY = 0.1;
const FIRST_STABILITIES = 4;

/** No forecast is taken to be surer than this: one miss would cost everything. */
const SUREST = 0.9999;

/**
 * What the library learns from: each item is one answer with the days before
 * it of the same case, oldest first.
 *
 * Shape: `lengths[i]` entries of `ratings` and `days` belong to item i, the
 *        first of each with 0 days. Ratings 1–4.
 */
export interface TrainingItems {
  readonly ratings: Uint32Array;
  readonly days: Uint32Array;
  readonly lengths: Uint32Array;
}

/** Fits weights to items. Errors: throws where the library fails. */
export type Trainer = (items: TrainingItems) => ArrayLike<number>;

/** What came of fitting. Losses: mean log loss in nats on the answers held out. */
export type FitOutcome =
  | { readonly kind: "too-few"; readonly has: number; readonly needs: number }
  | {
      readonly kind: "fitted" | "kept";
      /** Those to use from now on: the new ones where fitted, else as before. */
      readonly weights: readonly number[] | undefined;
      readonly answers: number;
      readonly lossBefore: number;
      readonly lossAfter: number;
    };

/** From how many answers on, first ones of a case apart, fitting is tried. Source: `npm run simulate`. */
export const LEAST_ANSWERS = 400;

/** A day with all before it of the same case, oldest first. */
function history(last: RecalledDay): readonly RecalledDay[] {
  const days: RecalledDay[] = [];
  for (let day: RecalledDay | undefined = last; day; day = day.before)
    days.push(day);
  return days.reverse();
}

/** The items that days make; the first day of a case is in those of its later ones. */
function trainingItems(days: readonly RecalledDay[]): TrainingItems {
  const times = Math.min(
    SHOWN_TIMES,
    Math.max(1, Math.round(ENOUGH_ITEMS / days.length)),
  );
  const once = days.map(history);
  const histories = Array.from({ length: times }, () => once).flat();
  const all = histories.flat();
  return {
    ratings: Uint32Array.from(all, ({ grade }) => ratingOf(grade, true)),
    days: Uint32Array.from(all, daysSinceBefore),
    lengths: Uint32Array.from(histories, ({ length }) => length),
  };
}

/** The log loss of a forecast. Units: nats. */
function lossOf({ chance, isRecalled }: Forecast): number {
  const bounded = Math.min(SUREST, Math.max(1 - SUREST, chance));
  return -Math.log(isRecalled ? bounded : 1 - bounded);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The standard error of a mean. Units: as the values. */
function standardError(values: readonly number[]): number {
  const centre = mean(values);
  const squares = values.map((value) => (value - centre) ** 2);
  return Math.sqrt(mean(squares) / Math.max(1, values.length - 1));
}

function clamped(weights: ArrayLike<number>): readonly number[] {
  return Array.from(weights, (weight, i) =>
    i < FIRST_STABILITIES ? Math.max(LEAST_FIRST_STABILITY, weight) : weight,
  );
}

function areUsable(weights: readonly number[]): boolean {
  return weights.length === WEIGHT_COUNT && weights.every(Number.isFinite);
}

/**
 * Fits the model to a learner, if they have answered enough, and says whether
 * the new weights are to be used. The same answers give the same weights.
 *
 * Shape: `days` are one learner's, as `recalledDays` makes them; `inUse` are
 *        the weights in use, undefined for the library's own.
 * Errors: what the trainer throws.
 */
export function fitWeights(
  days: readonly RecalledDay[],
  inUse: readonly number[] | undefined,
  train: Trainer,
  needs = LEAST_ANSWERS,
): FitOutcome {
  const later = days.filter(({ before }) => before !== undefined);
  const answers = later.length;
  if (answers < needs) return { kind: "too-few", has: answers, needs };
  const seen = Math.floor(answers * (1 - HELD_OUT));
  const weights = clamped(train(trainingItems(later.slice(0, seen))));
  const lossesUnder = (settings: ScheduleSettings) =>
    forecastsOf(days, settings).slice(seen).map(lossOf);
  const before = lossesUnder(inUse === undefined ? {} : { weights: inUse });
  const lossBefore = mean(before);
  const after = areUsable(weights) ? lossesUnder({ weights }) : undefined;
  const gains = after?.map((loss, i) => (before[i] ?? 0) - loss) ?? [];
  const isBetter =
    after !== undefined &&
    mean(gains) >= GATE * lossBefore &&
    mean(gains) > STANDARD_ERRORS * standardError(gains);
  return {
    kind: isBetter ? "fitted" : "kept",
    weights: isBetter ? weights : inUse,
    answers,
    lossBefore,
    lossAfter: after === undefined ? Infinity : mean(after),
  };
}
