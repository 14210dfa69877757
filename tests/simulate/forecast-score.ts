/** How good forecasts are where the truth is known, with intervals over learners. */
import type { DatedReview, Forecast } from "../../core/memory/recalls";
import type { Review } from "../../core/memory/review";
import { randomSource } from "../../core/random-source";

/** A forecast beside the truth. */
export interface TestedForecast {
  readonly foretold: number;
  readonly truth: number;
}

/** Sums over the forecasts of one learner. Losses are expected ones, under the truth: chance of the draw is left out. */
interface Sums {
  readonly count: number;
  readonly loss: number;
  readonly oracle: number;
  readonly squares: number;
  readonly difference: number;
}

/** A figure with its 95% interval. */
export interface Figure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

const SUREST = 0.9999;
const BINS = 10;
const RESAMPLES = 1000;

/** Forecasts with what the chance truly was. */
export function tested(
  forecasts: readonly Forecast<DatedReview & Pick<Review, "id">>[],
  truths: ReadonlyMap<string, number>,
): readonly TestedForecast[] {
  return forecasts.flatMap(({ review, chance }) => {
    const truth = truths.get(review.id);
    return truth === undefined ? [] : [{ foretold: chance, truth }];
  });
}

function lossOf(truth: number, foretold: number): number {
  const q = Math.min(SUREST, Math.max(1 - SUREST, foretold));
  return -truth * Math.log(q) - (1 - truth) * Math.log(1 - q);
}

function sumsOf(forecasts: readonly TestedForecast[]): Sums {
  let [loss, oracle, squares, difference] = [0, 0, 0, 0];
  for (const { foretold, truth } of forecasts) {
    loss += lossOf(truth, foretold);
    oracle += lossOf(truth, truth);
    squares += (foretold - truth) ** 2;
    difference += foretold - truth;
  }
  return { count: forecasts.length, loss, oracle, squares, difference };
}

function total(list: readonly Sums[], key: keyof Sums): number {
  return list.reduce((sum, one) => sum + one[key], 0);
}

/** A figure of some learners and its interval, learners drawn anew with repeats. Source: Efron, the bootstrap, 1979. */
export function figureOver<T>(
  learners: readonly T[],
  figure: (drawn: readonly T[]) => number,
  seed = 1,
): Figure {
  const random = randomSource(seed);
  const drawn = Array.from({ length: RESAMPLES }, () =>
    figure(
      learners.flatMap(() => {
        const one = learners[random.below(learners.length)];
        return one === undefined ? [] : [one];
      }),
    ),
  ).toSorted((a, b) => a - b);
  const at = (share: number) =>
    drawn[Math.floor(share * (RESAMPLES - 1))] ?? NaN;
  return { value: figure(learners), low: at(0.025), high: at(0.975) };
}

/** The figures of one kind of learner under some weights. */
export interface Score {
  /** How many forecasts. */
  readonly forecasts: number;
  /** Log loss against the oracle's, which knows the memory: 1 is perfect. */
  readonly loss: Figure;
  readonly rmse: Figure;
  /** Mean distance between foretold and true chance in ten bins. */
  readonly calibration: Figure;
  /** Foretold less true, on average. */
  readonly bias: Figure;
}

/** The sums of each learner in ten bins, of equal count over all learners. */
function binned(
  learners: readonly (readonly TestedForecast[])[],
): readonly (readonly Sums[])[] {
  const all = learners
    .flat()
    .map(({ foretold }) => foretold)
    .toSorted((a, b) => a - b);
  const edges = Array.from(
    { length: BINS - 1 },
    (_, i) => all[Math.floor(((i + 1) * all.length) / BINS)] ?? 1,
  );
  return learners.map((forecasts) => {
    const bins = Array.from({ length: BINS }, (): TestedForecast[] => []);
    for (const one of forecasts)
      bins[edges.filter((edge) => one.foretold >= edge).length]?.push(one);
    return bins.map(sumsOf);
  });
}

/** The distance between foretold and true chance over the bins, each by its count. */
function calibrationOf(learners: readonly (readonly Sums[])[]): number {
  const gaps = Array.from({ length: BINS }, (_, bin) =>
    Math.abs(
      learners.reduce((sum, bins) => sum + (bins[bin]?.difference ?? 0), 0),
    ),
  );
  const count = learners.reduce((sum, bins) => sum + total(bins, "count"), 0);
  return gaps.reduce((sum, gap) => sum + gap, 0) / count;
}

/** How good the forecasts of some learners are, pooled. */
export function scoreOf(
  learners: readonly (readonly TestedForecast[])[],
): Score {
  const sums = learners.map(sumsOf);
  const over = (figure: (list: readonly Sums[]) => number) =>
    figureOver(sums, figure);
  return {
    forecasts: total(sums, "count"),
    loss: over((l) => total(l, "loss") / total(l, "oracle")),
    rmse: over((l) => Math.sqrt(total(l, "squares") / total(l, "count"))),
    bias: over((l) => total(l, "difference") / total(l, "count")),
    calibration: figureOver(binned(learners), calibrationOf),
  };
}

/** By how much the log loss of `after` is lower than that of `before`, pooled over the same learners. Units: a share of `before`. */
export function gainOf(
  before: readonly (readonly TestedForecast[])[],
  after: readonly (readonly TestedForecast[])[],
): Figure {
  const pairs = before.map((one, i) => ({
    before: sumsOf(one).loss,
    after: sumsOf(after[i] ?? []).loss,
  }));
  return figureOver(pairs, (drawn) => {
    const sum = (key: "before" | "after") =>
      drawn.reduce((all, one) => all + one[key], 0);
    return 1 - sum("after") / sum("before");
  });
}
