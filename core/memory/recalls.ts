/**
 * A log as the days that counted: what memories, forecasts and the fit are
 * made from.
 */
import type { RecallGrade } from "./grade";
import type { GradableReview, GradedReview } from "./grader";
import { algorithm, ratingOf } from "./library-settings";
import type { Review } from "./review";
import { DEFAULT_LEVEL, memoryKey, type ScheduleSettings } from "./schedule";

/** What of a review the model reads: the rest is in its grade. */
export type DatedReview = Pick<Review, "localDay">;

/** A day on which a case was asked, and counted. */
export interface RecalledDay<R extends DatedReview = DatedReview> {
  readonly review: R;
  readonly grade: RecallGrade;
  /** The day before it that counted for the same memory; absent for the first. */
  readonly before?: RecalledDay<R>;
}

/** Links every day to the one before it of the same memory. */
export class RecalledDays<R extends DatedReview> {
  readonly #last = new Map<string, RecalledDay<R>>();

  /** The next day that counted, in the order of replay. Shape: `key` is one for each memory. */
  add(key: string, review: R, grade: RecallGrade): RecalledDay<R> {
    const before = this.#last.get(key);
    const recalled: RecalledDay<R> = {
      review,
      grade,
      ...(before === undefined ? {} : { before }),
    };
    this.#last.set(key, recalled);
    return recalled;
  }
}

/** The days that counted. Shape: `answers` as `gradeLog` makes them, the result in the same order. */
export function recalledDays<R extends GradableReview>(
  answers: readonly GradedReview<R>[],
): readonly RecalledDay<R>[] {
  const days = new RecalledDays<R>();
  return answers.flatMap(({ review, recall }) =>
    recall === undefined
      ? []
      : [
          days.add(
            memoryKey(review.learner, review.case, review.hold),
            review,
            recall,
          ),
        ],
  );
}

/** How many days lie between a day and the one before it; 0 for the first. */
export function daysSinceBefore({ review, before }: RecalledDay): number {
  return before === undefined ? 0 : review.localDay - before.review.localDay;
}

/** What was foretold of an answer, and what came. */
export interface Forecast<R extends DatedReview = DatedReview> {
  readonly review: R;
  /** The chance of recall that the memory gave just before. Units: 0–1. */
  readonly chance: number;
  readonly isRecalled: boolean;
}

/**
 * Every forecast that the schedule has made, tested by the answer that came:
 * one a case and day, those that were the first of their case apart.
 *
 * Shape: `days` as `recalledDays` makes them; the result in the same order.
 */
export function forecastsOf<R extends DatedReview>(
  days: readonly RecalledDay<R>[],
  settings: ScheduleSettings = {},
): readonly Forecast<R>[] {
  const library = algorithm(settings.level ?? DEFAULT_LEVEL, settings.weights);
  const isQuickCounted = settings.weights !== undefined;
  const states = new Map<
    RecalledDay<R>,
    ReturnType<typeof library.next_state>
  >();
  return days.flatMap((recalled) => {
    const { before, review, grade } = recalled;
    const elapsed = daysSinceBefore(recalled);
    const state = before === undefined ? undefined : states.get(before);
    states.set(
      recalled,
      library.next_state(
        state ?? null,
        elapsed,
        ratingOf(grade, isQuickCounted),
      ),
    );
    if (before !== undefined) states.delete(before);
    if (state === undefined) return [];
    return [
      {
        review,
        chance: library.forgetting_curve(elapsed, state.stability),
        isRecalled: grade !== "missed",
      },
    ];
  });
}
