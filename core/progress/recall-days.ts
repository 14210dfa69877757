/**
 * The history of a case's memory, day by day: what was expected, what came,
 * and what was made of it.
 *
 * The same rules as in `core/memory/schedule`, which keeps only where they
 * lead; a test holds the last day here against the memory there.
 */
import type { FSRSState } from "ts-fsrs";
import type { Grade } from "../memory/grade";
import { algorithm, RATING } from "../memory/library-settings";
import { dayAfter } from "../memory/local-day";
import type { LocalDay } from "../memory/review";
import {
  DEFAULT_LEVEL,
  type Memory,
  type ScheduleSettings,
} from "../memory/schedule";
import type { GradedAnswer } from "./answer-log";

/** A day on which a case was recalled, or not, and the memory it left. */
export interface RecallDay extends Pick<
  Memory,
  "stability" | "lastDay" | "lastsUntil" | "missedLast"
> {
  /** The chance that the first answer of the day would be right; absent on the first day. Units: 0–1. */
  readonly chance?: number;
  /** Whether it was. */
  readonly wasRight: boolean;
}

interface Day {
  readonly day: LocalDay;
  readonly first: Grade;
  worst: Grade;
}

/** The days that count, each with its first grade, and "missed" where one of the day was. */
function daysOf(answers: readonly GradedAnswer[]): readonly Day[] {
  const days: Day[] = [];
  for (const { answer, grade } of answers) {
    const { asking, interrupted, localDay } = answer;
    if (asking !== "alone" || interrupted) continue;
    const last = days.at(-1);
    if (last === undefined || localDay > last.day)
      days.push({ day: localDay, first: grade, worst: grade });
    else if (grade === "missed") last.worst = grade;
  }
  return days;
}

/** Shape: `answers` are those to one case, in the order of replay; the days come oldest first. */
export function recallDays(
  answers: readonly GradedAnswer[],
  settings: ScheduleSettings = {},
): readonly RecallDay[] {
  const library = algorithm(settings.level ?? DEFAULT_LEVEL, settings.weights);
  let state: FSRSState | null = null;
  let before: LocalDay | undefined;
  return daysOf(answers).map(({ day, first, worst }) => {
    const elapsed = before === undefined ? 0 : day - before;
    const chance =
      state === null
        ? undefined
        : library.forgetting_curve(elapsed, state.stability);
    state = library.next_state(state, elapsed, RATING[worst]);
    before = day;
    return {
      ...(chance === undefined ? {} : { chance }),
      wasRight: first !== "missed",
      stability: state.stability,
      lastDay: day,
      lastsUntil: dayAfter(
        day,
        library.next_interval(state.stability, elapsed),
      ),
      missedLast: worst === "missed",
    };
  });
}
