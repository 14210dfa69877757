/**
 * Today: what of a learner's day fits the minutes they want to give it, and
 * what that costs.
 *
 * Due cases come first, in the order in which their chance has sunk; after a
 * long absence the same rule makes a catch-up that fits the minutes. New cases
 * come in only where they fit as well, and where the coming week has room for
 * them: over every stretch of days from tomorrow on, what comes back must fit
 * the minutes of those days.
 *
 * Loads ahead count each case that is known once, and new ones as often as
 * they come back within the week: about what happens when most is recalled.
 */
import type { CaseId } from "../cases/case-ids";
import {
  countThatFits,
  daysAfterTaught,
  daysToCatchUp,
  type KnownCase,
  recalledCase,
} from "./catch-up";
import { type DayPlan, dayOf, plannedOf, sortedCandidates } from "./day-plan";
import { type AreAlike, freshInOrder } from "./fresh-order";
import { dayAfter } from "./local-day";
import type { Candidate, DayPlanInput, PlannedCase } from "./plan-candidates";
import { chanceNow } from "./schedule";

/** How many minutes a day is practised unless the learner chooses otherwise. */
export const DEFAULT_MINUTES = 15;

/** Over how many days the load of new cases is looked at. */
const WEEK = 7;

/** What today is planned from. */
export interface TodayInput extends DayPlanInput {
  /** How long the learner wants to practise a day. */
  readonly minutes: number;
  /** How long they have today. Units: seconds. */
  readonly practised: number;
  /** How long asking a case takes. Units: seconds. */
  readonly secondsFor: (planned: PlannedCase) => number;
  /** Which cases are not to be met together; absent: any may. */
  readonly areAlike?: AreAlike;
}

/** Why no more new cases come in today. */
export type FreshHeldBy = "minutes" | "coming-days";

/** A day with what fits: `due` and `fresh` hold only that. */
export interface TodayPlan extends DayPlan {
  /** How long was practised today. Units: seconds. */
  readonly practised: number;
  /** How long what fits should take. Units: seconds. */
  readonly seconds: number;
  /** Due cases that do not fit, the most urgent first. */
  readonly waiting: readonly PlannedCase[];
  /** How long those would take. Units: seconds. */
  readonly waitingSeconds: number;
  /** How many of those would not be known any more tomorrow, as the memory model expects. */
  readonly forgottenTomorrow: number;
  /** In how many days at these minutes nothing waits any more: 0 where nothing does, undefined beyond two months. */
  readonly caughtUpIn: number | undefined;
  /** How many new cases of the decks wait for another day. */
  readonly freshWaiting: number;
  /** Why; absent where none waits. */
  readonly freshHeldBy?: FreshHeldBy;
  /** For how many days the case that is due longest has been; 0 where none is. */
  readonly longestOverdue: number;
}

/** What comes back on each of the days ahead, the first being tomorrow. Units: seconds. */
type Loads = readonly number[];

function withMore(
  loads: Loads,
  daysAhead: readonly number[],
  seconds: number,
): Loads {
  return loads.map((load, i) =>
    daysAhead.includes(i + 1) ? load + seconds : load,
  );
}

/** Whether what comes back by each day fits the minutes up to it. */
function canBear(loads: Loads, budget: number): boolean {
  let sum = 0;
  return loads.every((load, i) => {
    sum += load;
    return sum <= budget * (i + 1);
  });
}

/** A known case with how long it takes. */
type TimedCandidate = Candidate & KnownCase;

function timed(
  candidates: readonly Candidate[],
  secondsFor: TodayInput["secondsFor"],
): readonly TimedCandidate[] {
  return candidates.flatMap((candidate) => {
    const { planned, memory, due } = candidate;
    return memory === undefined || due === undefined
      ? []
      : { ...candidate, memory, due, seconds: secondsFor(planned) };
  });
}

function secondsOf(cases: readonly KnownCase[]): number {
  return cases.reduce((sum, { seconds }) => sum + seconds, 0);
}

/** What the week brings back of what is asked today and of what rests. */
function loadsOfWeek(
  { today, settings }: TodayInput,
  due: readonly TimedCandidate[],
  resting: readonly TimedCandidate[],
): Loads {
  const loads = Array<number>(WEEK).fill(0);
  const add = (day: number, seconds: number) => {
    const before = loads[day - today - 1];
    if (before !== undefined) loads[day - today - 1] = before + seconds;
  };
  for (const one of resting) add(one.due, one.seconds);
  for (const one of due)
    add(recalledCase(one, today, settings).due, one.seconds);
  return loads;
}

interface FreshThatFits {
  readonly count: number;
  /** Units: seconds, today. */
  readonly seconds: number;
  readonly heldBy?: FreshHeldBy;
}

/** How many new cases fit what is left of today and what is coming. */
function freshThatFits(
  { today, minutes, secondsFor, settings }: TodayInput,
  fresh: readonly Candidate[],
  left: number,
  loads: Loads,
): FreshThatFits {
  let ahead = loads;
  let seconds = 0;
  for (const [count, { planned, ceiling }] of fresh.entries()) {
    const more = seconds + secondsFor(planned);
    if (more > left) return { count, seconds, heldBy: "minutes" };
    ahead = withMore(
      ahead,
      daysAfterTaught(today, WEEK, { ceiling, settings }),
      secondsFor({ ...planned, memory: "settling" }),
    );
    if (!canBear(ahead, minutes * 60))
      return { count, seconds, heldBy: "coming-days" };
    seconds = more;
  }
  return { count: fresh.length, seconds };
}

/**
 * One new case comes in where this share of its time is left: alone in a round
 * it takes two thirds of it, for its spaced repeats have nothing before them,
 * and half of that may run over. With less, somebody who is slow and has five
 * minutes practised two of them.
 */
const ENOUGH = 1 / 3;

/** How much of today is left for new cases. Units: seconds. */
function leftForFresh(
  { practised, secondsFor }: TodayInput,
  left: number,
  due: readonly TimedCandidate[],
  fresh: readonly Candidate[],
): number {
  const [first] = fresh;
  const rest = left - secondsOf(due);
  if (first === undefined) return rest;
  const wanted = secondsFor(first.planned);
  // A day has room for one case, however long it takes.
  const isRoom =
    rest >= ENOUGH * wanted || (due.length === 0 && practised === 0);
  return isRoom ? Math.max(rest, wanted) : rest;
}

/** The cases that are not settled enough for a look-alike to join them. */
function metLately(
  due: readonly TimedCandidate[],
  resting: readonly TimedCandidate[],
): readonly CaseId[] {
  const young = [
    ...due.filter(({ planned }) => planned.memory !== "kept"),
    ...resting.filter(({ memory }) => memory.days === 1),
  ];
  return young.map(({ planned }) => planned.case);
}

/** What fits today, what waits, and what that costs. */
export function planToday(input: TodayInput): TodayPlan {
  const { today, settings, secondsFor } = input;
  const budget = input.minutes * 60;
  const left = Math.max(0, budget - input.practised);
  const sorted = sortedCandidates(input);
  const allDue = timed(sorted.due, secondsFor);
  const resting = timed(sorted.resting, secondsFor);
  const count = left > 0 ? countThatFits(allDue, left) : 0;
  const due = allDue.slice(0, count);
  const waiting = allDue.slice(count);
  const inOrder = freshInOrder(
    sorted.fresh,
    ({ planned }) => planned.case,
    metLately(allDue, resting),
    input.areAlike ?? (() => false),
  );
  const fresh = freshThatFits(
    input,
    inOrder,
    // Nothing new before what is due.
    waiting.length > 0 ? 0 : leftForFresh(input, left, due, inOrder),
    loadsOfWeek(input, due, resting),
  );
  const tomorrow = dayAfter(today, 1);
  return {
    ...dayOf(today, {
      ...sorted,
      due,
      fresh: inOrder.slice(0, fresh.count),
    }),
    practised: input.practised,
    seconds: secondsOf(due) + fresh.seconds,
    waiting: plannedOf(waiting),
    waitingSeconds: secondsOf(waiting),
    forgottenTomorrow: waiting.reduce(
      (sum, { memory }) => sum + 1 - chanceNow(memory, tomorrow, settings),
      0,
    ),
    caughtUpIn: daysToCatchUp({
      today,
      asked: due,
      waiting,
      resting,
      budget,
      settings,
    }),
    freshWaiting: sorted.fresh.length - fresh.count,
    ...(fresh.heldBy === undefined ? {} : { freshHeldBy: fresh.heldBy }),
    longestOverdue: Math.max(0, ...allDue.map((one) => today - one.due)),
  };
}
