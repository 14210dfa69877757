/**
 * When a learner is stuck at a case: what practice alone has not put right,
 * and somebody should look at with them. Each rule is ours unless it says
 * otherwise; they are few and plain, so that a coach can say to a child why.
 *
 * One miss is no reason: a case comes back when one answer in ten is expected
 * to be missed, so each child of a class misses something every day.
 */
import type { CaseId } from "../cases/case-ids";
import type { LocalDay } from "../memory/review";
import type { CaseRecord } from "./member-summary";

/** Why a learner is stuck at a case. */
export type Stuck = (
  | {
      /** Missed on several of the last days. */
      readonly kind: "misses";
      readonly missed: number;
      /** How many days that is of, at most three. */
      readonly days: number;
    }
  /** Kept for weeks, and missed last time. */
  | { readonly kind: "lost" }
  | {
      /** Right, but far slower than it is to be. */
      readonly kind: "slow";
      /** How many times the target it takes, over 2. */
      readonly share: number;
    }
) & {
  /** The case that this one is taken for; absent: none, or nobody knows. */
  readonly takenFor?: CaseId;
};

/**
 * Missed on at least so many of the last three days on which it was asked
 * alone. By chance, where one in ten is missed, that is 1 case in 36: one
 * learner may be unlucky, several at the same case are not. Days, and not
 * answers: repeats in a round are made from what is still warm.
 */
const MISSED_DAYS = 2;

/** Over so many times its target a case stops the flow of a solve, though it is known. Common practice calls twice the target slow. */
const SLOW_SHARE = 2;

/** So many times it must have been timed: the first two are still looking for the way. */
const TIMED_ANSWERS = 3;

/**
 * What was missed, or slow, longer ago is not what somebody is stuck at now:
 * it is asked again within days by whoever practises its deck, so it was put
 * away. Days that the rule itself goes by: an answer chosen from pictures, or
 * a case looked up, says nothing of whether the misses before still hold.
 */
const CURRENT_DAYS = 28;

/** From so many days without an answer on somebody is away: more than a week, so that a weekly class is no absence. */
export const AWAY_DAYS = 8;

function isCurrent(day: LocalDay | undefined, today: LocalDay): boolean {
  return day !== undefined && today - day <= CURRENT_DAYS;
}

/** How far a case is above its target in its usual time, where that is slow: over twice, often enough, and not missed meanwhile. */
export function slowShare({
  times,
  memory,
}: Pick<CaseRecord, "times" | "memory">): number | undefined {
  if (times === undefined || times.answers < TIMED_ANSWERS) return undefined;
  if (memory?.missedLast === true) return undefined;
  const share = times.total / (1000 * times.target);
  return share > SLOW_SHARE ? share : undefined;
}

/** Whether and why a learner is stuck at a case, on a day. The first reason that holds, the gravest first. */
export function stuckAt(
  record: CaseRecord,
  today: LocalDay,
): Stuck | undefined {
  const [taken] = record.takenFor;
  const takenFor = taken === undefined ? {} : { takenFor: taken.case };
  const { memory, times } = record;
  const days = record.lastDays.filter(({ lastDay }) =>
    isCurrent(lastDay, today),
  );
  const missed = days.filter(({ wasRight }) => !wasRight).length;
  if (missed >= MISSED_DAYS)
    return { kind: "misses", missed, days: days.length, ...takenFor };
  if (record.wasKept && memory?.missedLast && isCurrent(memory.lastDay, today))
    return { kind: "lost", ...takenFor };
  const share = isCurrent(times?.lastDay, today)
    ? slowShare(record)
    : undefined;
  return share === undefined ? undefined : { kind: "slow", share };
}

/** How badly somebody is stuck: misses count each, what is lost or slow as one. */
export function gravity(stuck: Stuck): number {
  return stuck.kind === "misses" ? stuck.missed : 1;
}
