/** "Am I getting faster?" as data. */
import { present } from "../invariant";
import { isMissed } from "../memory/grade";
import { dayNumber } from "../memory/local-day";
import type { AnswerWay, LocalDay } from "../memory/review";
import { recordedTime, type RunResult } from "../runs/run-result";
import {
  type AskedCase,
  isOnOnesOwn,
  isTimed,
  type ProgressAnswer,
  usualWay,
} from "./answer-log";
import { median } from "./median";

/** How many days are taken together: as few as make no more points than a picture holds. */
const PERIODS = [1, 7, 28, 91] as const;

/** The longest: a learner of sixty years still fits. */
const LONGEST_PERIOD = 364;

/** The most points of a picture. */
const MOST_POINTS = 60;

/** The answers of one day, or of a few taken together. */
export interface PeriodTimes {
  /** The first day of them. */
  readonly day: LocalDay;
  readonly answers: number;
  /** The median whole time. Units: milliseconds, or times the target where cases are taken together. */
  readonly total: number;
  /** The median thinking time, in the same unit; absent where it is not known. */
  readonly thinking?: number;
}

/** Times by day. */
export interface TimesOverDays {
  /** How many days each entry of `periods` takes together. */
  readonly periodDays: number;
  /** Oldest first; days without an answer are left out. */
  readonly periods: readonly PeriodTimes[];
}

/** How the times of one case went, in the way it is usually answered. */
export interface CaseOverDays extends AskedCase, TimesOverDays {
  readonly answerWay: AnswerWay;
  /** The last five attempts on one's own, oldest first; timed as whole runs are; a miss did not finish. */
  readonly lastAttempts: readonly RunResult[];
}

interface DayOfTimes {
  readonly totals: number[];
  readonly thinkings: number[];
}

/** How many days are to be taken together. */
function periodFor(days: readonly LocalDay[]): number {
  const periods = (length: number) =>
    new Set(days.map((day) => Math.floor(day / length))).size;
  return (
    PERIODS.find((length) => periods(length) <= MOST_POINTS) ?? LONGEST_PERIOD
  );
}

/** Gathers times by day. */
export class TimesByDay {
  readonly #days = new Map<LocalDay, DayOfTimes>();

  /** One more answer's times. */
  add(day: LocalDay, total: number, thinking: number | undefined): void {
    let own = this.#days.get(day);
    if (own === undefined) {
      own = { totals: [], thinkings: [] };
      this.#days.set(day, own);
    }
    own.totals.push(total);
    if (thinking !== undefined) own.thinkings.push(thinking);
  }

  /** Their medians, by day or by a few days together. */
  overDays(): TimesOverDays {
    const periodDays = periodFor([...this.#days.keys()]);
    const periods = new Map<number, DayOfTimes[]>();
    for (const [day, own] of this.#days) {
      const period = Math.floor(day / periodDays);
      const together = periods.get(period);
      if (together === undefined) periods.set(period, [own]);
      else together.push(own);
    }
    return {
      periodDays,
      periods: [...periods]
        .toSorted(([a], [b]) => a - b)
        .map(([period, days]) => {
          const totals = days.flatMap((day) => day.totals);
          const thinking = median(days.flatMap((day) => day.thinkings));
          return {
            day: dayNumber(period * periodDays),
            answers: totals.length,
            total: present(median(totals), "a period has an answer"),
            ...(thinking === undefined ? {} : { thinking }),
          };
        }),
    };
  }
}

/**
 * How a case's times went; undefined before the first answer whose time
 * counts. Interruptions and misses are left out.
 *
 * Shape: `answers` are those to one case, oldest first.
 */
export function caseOverDays(
  answers: readonly ProgressAnswer[],
): CaseOverDays | undefined {
  const timed = answers.filter(isTimed);
  const answerWay = usualWay(timed);
  const [first] = timed;
  if (first === undefined || answerWay === undefined) return undefined;
  const inThatWay = answers.filter((one) => one.answerWay === answerWay);
  const byDay = new TimesByDay();
  for (const answer of timed)
    if (answer.answerWay === answerWay)
      byDay.add(answer.localDay, answer.total, answer.thinking);
  return {
    case: first.case,
    hold: first.hold,
    answerWay,
    ...byDay.overDays(),
    lastAttempts: inThatWay
      .filter(
        (answer) =>
          isOnOnesOwn(answer) && !answer.interrupted && answer.untimed !== true,
      )
      .slice(-5)
      .map((answer) =>
        isMissed(answer) ? "did-not-finish" : recordedTime(answer.total),
      ),
  };
}

/**
 * Adds the times of one case's answers to those of all, each as so many times
 * its target: seconds of different cases say nothing together.
 */
export function addShares(
  all: TimesByDay,
  answers: readonly ProgressAnswer[],
): void {
  for (const answer of answers) {
    if (!isTimed(answer)) continue;
    const { localDay, total, thinking, target } = answer;
    const share = 1 / (1000 * target);
    all.add(
      localDay,
      total * share,
      thinking === undefined ? undefined : thinking * share,
    );
  }
}
