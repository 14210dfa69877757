/** Today's plan as sentences: what comes, what waits, and what that costs. */
import type { LocalDay } from "../../../core/memory/review";
import type { TodayPlan } from "../../../core/memory/today";
import { dayInWords } from "../../components/time-words";
import { dayAfter } from "../../../core/memory/local-day";

/** Fewer days without practice need no word. */
const AWAY_DAYS = 7;

/** Nothing was missed where nothing has been due for so long. */
const OVERDUE_DAYS = 4;

/** How long, as a person would say it: "about 4 minutes", "about a minute". Units: seconds. */
export function aboutMinutes(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  return minutes === 1 ? "about a minute" : `about ${minutes} minutes`;
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Whether the plan has something to ask. */
export function hasMore({ due, fresh }: TodayPlan): boolean {
  return due.length + fresh.length > 0;
}

/** From this share of the minutes on they are over. */
const OVER = 0.9;

/** Whether the learner's minutes were practised. Units: `minutes` a day. */
function areOver({ practised }: TodayPlan, minutes: number): boolean {
  return practised >= OVER * 60 * minutes;
}

/** The plan in a line. Units: `minutes` a day. */
export function todayTitle(plan: TodayPlan, minutes: number): string {
  if (hasMore(plan)) {
    const cases = plan.due.length + plan.fresh.length;
    return `Today: ${counted(cases, "case", "cases")}, ${aboutMinutes(plan.seconds)}.`;
  }
  const isMoreWaiting = plan.waiting.length + plan.freshWaiting > 0;
  return isMoreWaiting && areOver(plan, minutes)
    ? `Today’s ${minutes} minutes are over.`
    : "Nothing is due today.";
}

/** At a round's end: what is left of today. Units: `minutes` a day. */
export function leftToday(plan: TodayPlan, minutes: number): string {
  if (!hasMore(plan)) return todayTitle(plan, minutes);
  const cases = plan.due.length + plan.fresh.length;
  return `Left for today: ${counted(cases, "case", "cases")}, ${aboutMinutes(plan.seconds)}.`;
}

/** What comes today, part by part. */
export function todayParts({ due, fresh }: TodayPlan): readonly string[] {
  const fading = due.filter(({ memory }) => memory === "fading").length;
  const parts: string[] = [];
  if (due.length > 0)
    parts.push(
      `${counted(due.length, "comes", "come")} back` +
        (fading === 0 || due.length === 1
          ? ""
          : `, ${fading < due.length ? fading : fading === 2 ? "both" : "all"} of them fading`),
    );
  if (fresh.length > 0) parts.push(`${counted(fresh.length, "is", "are")} new`);
  return parts;
}

/** What waits for another day, and what that costs; undefined where nothing does. Units: `minutes` a day. */
export function waitingWords(
  plan: TodayPlan,
  minutes: number,
): string | undefined {
  const { waiting, waitingSeconds, forgottenTomorrow, caughtUpIn, today } =
    plan;
  if (waiting.length === 0) return undefined;
  const known = Math.round(waiting.length - forgottenTomorrow);
  const first = `${counted(waiting.length, "more is due and waits", "more are due and wait")} until tomorrow: ${aboutMinutes(waitingSeconds)}.`;
  const cost =
    waiting.length === 1
      ? `Tomorrow the chance you’d know it is ${Math.round(100 * (1 - forgottenTomorrow))} in 100.`
      : `You would then probably know ${known} of the ${waiting.length}.`;
  return `${first} ${cost} ${catchUpWords(today, caughtUpIn, minutes)}`;
}

function catchUpWords(
  today: LocalDay,
  caughtUpIn: number | undefined,
  minutes: number,
): string {
  if (caughtUpIn === undefined)
    return `With ${minutes} minutes a day something will wait for two months at least: more minutes help, or being a little less sure, under Settings.`;
  const day = dayInWords(dayAfter(today, caughtUpIn), today);
  return `With ${minutes} minutes a day nothing waits any more from about ${day} on.`;
}

/**
 * A word to somebody who comes back after a while; undefined where there is
 * nothing to catch up with. Units: `lastDay` the last with an answer.
 */
export function awayWords(
  { today, longestOverdue, waiting }: TodayPlan,
  lastDay: LocalDay | undefined,
): string | undefined {
  const days = lastDay === undefined ? 0 : today - lastDay;
  // Whose cases were not due meanwhile has missed nothing.
  if (days < AWAY_DAYS || longestOverdue < OVERDUE_DAYS) return undefined;
  const first = `It is ${days} days since you last practised: what has sunk furthest comes first.`;
  return waiting.length === 0
    ? first
    : `${first} Nothing new comes while something waits.`;
}

/** Why no new case comes today although some wait; undefined where that needs no word. Units: `minutes` a day. */
export function freshWords(
  plan: TodayPlan,
  minutes: number,
): string | undefined {
  if (plan.fresh.length > 0 || plan.freshWaiting === 0) return undefined;
  if (plan.freshHeldBy === "coming-days")
    return "New cases wait: what comes back in the next days fills your minutes.";
  if (plan.waiting.length > 0 || areOver(plan, minutes)) return undefined;
  return plan.due.length > 0
    ? "New cases wait for a day with more room."
    : `What is left of your ${minutes} minutes is too short for a new case.`;
}
