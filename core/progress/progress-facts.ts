/**
 * Everything on the progress page that needs the whole log: computed in a
 * worker, small enough to be handed back and kept.
 */
import type { LocalDay } from "../memory/review";
import type { ScheduleSettings } from "../memory/schedule";
import {
  byAskedCase,
  gradedAnswers,
  isAnswer,
  type ProgressAnswer,
} from "./answer-log";
import { type CaseTimes, caseTimes } from "./case-times";
import { type Confusions, confusionsOf } from "./confusions";
import { type Forecast, forecastOf } from "./forecast";
import { type KeptOnDay, keptOverTime } from "./kept";
import { recallDays } from "./recall-days";
import {
  allOverDays,
  type CaseOverDays,
  caseOverDays,
  type TimesOverDays,
} from "./times-over-days";

/** Changes with every rule in this folder that changes what is computed from a log. */
export const PROGRESS_VERSION = 1;

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

/**
 * What a learner's log says, on a day.
 *
 * Shape: `log` is one learner's, in the order of replay.
 */
export function progressFacts(
  log: readonly ProgressAnswer[],
  today: LocalDay,
  settings: ScheduleSettings = {},
): ProgressFacts {
  const answers = gradedAnswers(log).filter(isAnswer);
  const cases = byAskedCase(answers);
  const histories = cases.map((own) => recallDays(own, settings));
  const firstDay = answers[0]?.localDay;
  return {
    answers: answers.length,
    ...(firstDay === undefined ? {} : { firstDay }),
    times: cases.flatMap((own) => caseTimes(own) ?? []),
    allOverDays: allOverDays(answers),
    casesOverDays: cases.flatMap((own) => caseOverDays(own) ?? []),
    confusions: confusionsOf(answers, (today - CONFUSION_DAYS) as LocalDay),
    forecast: forecastOf(histories.flat()),
    kept: keptOverTime(histories, today, settings),
  };
}
