/**
 * What the class page knows of one learner: a few numbers for each case they
 * have met, small enough to be kept.
 *
 * Nothing in it depends on the day. A summary stays right until its learner
 * answers again, so that a coach who opens the page on Monday reads what was
 * computed on Friday; what fades meanwhile is worked out when it is looked at
 * (`class-grid.ts`).
 */
import type { CaseId } from "../cases/case-ids";
import { invariant } from "../invariant";
import { isMissed } from "../memory/grade";
import type { LocalDay } from "../memory/review";
import {
  KEPT_DAYS,
  type Memory,
  type ScheduleSettings,
} from "../memory/schedule";
import {
  type AnswerList,
  type AskedCase,
  gradedByCase,
  isTimed,
  type ProgressAnswer,
} from "../progress/answer-log";
import { type CaseTimes, caseTimes } from "../progress/case-times";
import { type RecallDay, recallDays } from "../progress/recall-days";

/** Changes with every rule that changes what is computed here from a log. */
export const SUMMARY_VERSION = 2;

/** How many of the last days that counted are told apart. */
export const LAST_DAYS = 3;

/** Over how many of the last answers to a case it is told what it was taken for: what was cured long ago teaches nothing. */
const CONFUSED_OVER = 10;

/** A day that counted for a memory: asked alone, the first answer of the day. */
export type CountedDay = Pick<RecallDay, "lastDay" | "wasRight">;

/** Another case that one was taken for. */
export interface TakenFor {
  readonly case: CaseId;
  readonly times: number;
}

/** How long a case takes. Units: milliseconds, the target in seconds. */
export interface RecordTimes extends Pick<
  CaseTimes,
  "answers" | "total" | "target"
> {
  /** The day of the newest answer that this is taken from. */
  readonly lastDay: LocalDay;
}

/** What a learner's answers to a case say. */
export interface CaseRecord extends AskedCase {
  /** The day of the newest answer, however it was asked. */
  readonly lastDay: LocalDay;
  /** Absent: not asked alone yet, so there is nothing to remember. */
  readonly memory?: Pick<
    Memory,
    "stability" | "lastDay" | "lastsUntil" | "missedLast" | "days"
  >;
  /** Whether the case was kept until the newest day that counted. */
  readonly wasKept: boolean;
  /** The last days that counted, the oldest first, at most `LAST_DAYS`. */
  readonly lastDays: readonly CountedDay[];
  /** Absent: no answer whose time counts. */
  readonly times?: RecordTimes;
  /** Of late, the most frequent first. */
  readonly takenFor: readonly TakenFor[];
}

/** What a learner's log says to their coach. */
export interface MemberSummary {
  /** Showings are no answers. */
  readonly answers: number;
  /** The day of the newest answer; absent without one. */
  readonly lastDay?: LocalDay;
  readonly cases: readonly CaseRecord[];
}

function takenForOf(answers: readonly ProgressAnswer[]): readonly TakenFor[] {
  const times = new Map<CaseId, number>();
  for (const answer of answers.slice(-CONFUSED_OVER)) {
    const { answeredAs } = answer;
    // The right case played for another home is no confusion of cases.
    if (answeredAs === undefined || answeredAs === answer.case) continue;
    if (isMissed(answer))
      times.set(answeredAs, (times.get(answeredAs) ?? 0) + 1);
  }
  return [...times]
    .map(([id, count]) => ({ case: id, times: count }))
    .toSorted((a, b) => b.times - a.times);
}

function isKept({ lastsUntil, lastDay }: RecallDay): boolean {
  return lastsUntil - lastDay >= KEPT_DAYS;
}

function memoryFrom({
  stability,
  lastDay,
  lastsUntil,
  missedLast,
  days,
}: RecallDay): NonNullable<CaseRecord["memory"]> {
  return { stability, lastDay, lastsUntil, missedLast, days };
}

function timesOf(answers: readonly ProgressAnswer[]): RecordTimes | undefined {
  const times = caseTimes(answers);
  if (times === undefined) return undefined;
  const { answers: count, total, target, answerWay } = times;
  const newest = answers.findLast(
    (answer) => isTimed(answer) && answer.answerWay === answerWay,
  );
  invariant(newest !== undefined, "a time is that of an answer");
  return { answers: count, total, target, lastDay: newest.localDay };
}

/**
 * What a learner's log says to their coach.
 *
 * Shape: `log` is one learner's, in the order of replay.
 */
export function memberSummary(
  log: AnswerList,
  settings: ScheduleSettings = {},
): MemberSummary {
  const cases: CaseRecord[] = [];
  let answers = 0;
  let newest: LocalDay | undefined;
  for (const ofCase of gradedByCase(log)) {
    const graded = ofCase();
    const own = graded.map(({ answer }) => answer);
    const [first] = own;
    if (first === undefined) continue;
    // A clock set back must not make somebody look as if they were away.
    const lastDay = own.reduce(
      (day, { localDay }) => (localDay > day ? localDay : day),
      first.localDay,
    );
    const days = recallDays(graded, settings);
    const last = days.at(-1);
    const before = days.at(-2);
    const times = timesOf(own);
    answers += own.length;
    if (newest === undefined || lastDay > newest) newest = lastDay;
    cases.push({
      case: first.case,
      hold: first.hold,
      lastDay,
      ...(last === undefined ? {} : { memory: memoryFrom(last) }),
      wasKept: before !== undefined && isKept(before),
      lastDays: days
        .slice(-LAST_DAYS)
        .map(({ lastDay: day, wasRight }) => ({ lastDay: day, wasRight })),
      ...(times === undefined ? {} : { times }),
      takenFor: takenForOf(own),
    });
  }
  return {
    answers,
    ...(newest === undefined ? {} : { lastDay: newest }),
    cases,
  };
}
