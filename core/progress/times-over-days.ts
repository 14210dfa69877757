/** "Am I getting faster?" as data. */
import { isMissed } from "../memory/grade";
import { dayNumber } from "../memory/local-day";
import type { AnswerWay, LocalDay } from "../memory/review";
import { type Attempt, resultOf } from "./averages";
import {
  type AskedCase,
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
  /** The last five attempts on one's own, oldest first; a miss is unfinished. */
  readonly lastAttempts: readonly Attempt[];
}

interface Timed {
  readonly localDay: LocalDay;
  readonly total: number;
  readonly thinking?: number | undefined;
}

function overDays(timed: readonly Timed[]): TimesOverDays {
  const days = new Set(timed.map(({ localDay }) => localDay));
  const periodDays =
    PERIODS.find(
      (length) =>
        new Set([...days].map((day) => Math.floor(day / length))).size <=
        MOST_POINTS,
    ) ?? LONGEST_PERIOD;
  const periods = new Map<number, Timed[]>();
  for (const answer of timed) {
    const period = Math.floor(answer.localDay / periodDays);
    const own = periods.get(period);
    if (own === undefined) periods.set(period, [answer]);
    else own.push(answer);
  }
  return {
    periodDays,
    periods: [...periods]
      .toSorted(([a], [b]) => a - b)
      .map(([period, own]) => {
        const thinking = median(own.flatMap((one) => one.thinking ?? []));
        return {
          day: dayNumber(period * periodDays),
          answers: own.length,
          total: median(own.map(({ total }) => total)) ?? 0,
          ...(thinking === undefined ? {} : { thinking }),
        };
      }),
  };
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
  return {
    case: first.case,
    hold: first.hold,
    answerWay,
    ...overDays(inThatWay.filter(isTimed)),
    lastAttempts: inThatWay
      .filter(
        ({ asking, interrupted }) =>
          (asking === "alone" || asking === "again") && !interrupted,
      )
      .slice(-5)
      .map((answer) =>
        isMissed(answer) ? "unfinished" : resultOf(answer.total),
      ),
  };
}

/**
 * How the times of all cases went, each as so many times its target: seconds
 * of different cases say nothing together.
 */
export function allOverDays(answers: readonly ProgressAnswer[]): TimesOverDays {
  return overDays(
    answers.filter(isTimed).map(({ localDay, total, thinking, target }) => ({
      localDay,
      total: total / (1000 * target),
      thinking: thinking === undefined ? undefined : thinking / (1000 * target),
    })),
  );
}
