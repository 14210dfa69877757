/**
 * Everything on the progress page that needs the whole log: computed in a
 * worker, small enough to be handed back and kept.
 */
import { isMissed } from "../memory/grade";
import { dayAfter, dayNumber } from "../memory/local-day";
import type { LocalDay } from "../memory/review";
import type { ScheduleSettings } from "../memory/schedule";
import {
  type AnswerList,
  gradedByCase,
  type LoggedAnswer,
  type ProgressAnswer,
} from "./answer-log";
import { type CaseTimes, caseTimes } from "./case-times";
import { type Confusions, confusionsOf } from "./confusions";
import { type Forecast, forecastOf } from "./forecast";
import { type KeptOnDay, keptOverTime } from "./kept";
import { type RecallDay, recallDays } from "./recall-days";
import {
  addShares,
  type CaseOverDays,
  caseOverDays,
  TimesByDay,
  type TimesOverDays,
} from "./times-over-days";
import { TurningSpeed } from "./turning-speed";

/** Changes with every rule in this folder that changes what is computed from a log. */
export const PROGRESS_VERSION = 5;

/** For how many days a confusion is shown: what was cured long ago teaches nothing. */
export const CONFUSION_DAYS = 90;

/** What the questions of the page are answered from. */
export interface ProgressFacts {
  /** How many answers there are; showings are none. */
  readonly answers: number;
  /** The day of the first answer; absent without one. */
  readonly firstDay?: LocalDay;
  readonly times: readonly CaseTimes[];
  readonly allOverDays: TimesOverDays;
  readonly casesOverDays: readonly CaseOverDays[];
  readonly confusions: Confusions;
  readonly forecast: Forecast;
  readonly kept: readonly KeptOnDay[];
}

function timesWithTurns(
  answers: readonly LoggedAnswer[],
  speed: TurningSpeed,
): readonly CaseTimes[] {
  const times = caseTimes(answers);
  if (times === undefined) return [];
  const turns = speed.turnsOf(answers, times.answerWay);
  return [turns === undefined ? times : { ...times, turns }];
}

/**
 * What a learner's log says, on a day.
 *
 * Shape: `log` is one learner's, in the order of replay.
 */
export function progressFacts(
  log: AnswerList,
  today: LocalDay,
  settings: ScheduleSettings = {},
): ProgressFacts {
  const since = dayAfter(today, -CONFUSION_DAYS);
  const speed = new TurningSpeed(log);
  const all = new TimesByDay();
  const histories: (readonly RecallDay[])[] = [];
  const times: CaseTimes[] = [];
  const casesOverDays: CaseOverDays[] = [];
  const misses: ProgressAnswer[] = [];
  const firstDays: LocalDay[] = [];
  let count = 0;
  for (const ofCase of gradedByCase(log)) {
    const graded = ofCase();
    const answers = graded.map(({ answer }) => answer);
    count += answers.length;
    firstDays.push(...answers.slice(0, 1).map(({ localDay }) => localDay));
    histories.push(recallDays(graded, settings));
    times.push(...timesWithTurns(answers, speed));
    casesOverDays.push(...[caseOverDays(answers) ?? []].flat());
    addShares(all, answers);
    for (const answer of answers)
      if (answer.localDay >= since && isMissed(answer)) misses.push(answer);
  }
  return {
    answers: count,
    ...(count === 0 ? {} : { firstDay: dayNumber(Math.min(...firstDays)) }),
    times,
    allOverDays: all.overDays(),
    casesOverDays,
    confusions: confusionsOf(misses, since),
    forecast: forecastOf(histories.flat()),
    kept: keptOverTime(histories, today, settings),
  };
}
