/**
 * The history of a case's memory, day by day: what was expected, what came,
 * and what was made of it.
 *
 * The same rules as in `core/memory/schedule`, which keeps only where they
 * lead; a test holds the last day here against the memory there.
 */
import type { FSRSState } from "ts-fsrs";
import { algorithm, ratingOf } from "../memory/library-settings";
import { dayAfter } from "../memory/local-day";
import {
  DEFAULT_LEVEL,
  type Memory,
  type ScheduleSettings,
} from "../memory/schedule";
import type { GradedAnswer } from "./answer-log";

/** A day on which a case was recalled, or not, and the memory it left. */
export interface RecallDay extends Pick<
  Memory,
  "stability" | "lastDay" | "lastsUntil" | "missedLast" | "days"
> {
  /** The chance that the answer that counts would be right; absent on the first day. Units: 0–1. */
  readonly chance?: number;
  /** Whether it was. */
  readonly wasRight: boolean;
}

/** Shape: `answers` are those to one case, in the order of replay; the days come oldest first. */
export function recallDays(
  answers: readonly GradedAnswer[],
  settings: ScheduleSettings = {},
): readonly RecallDay[] {
  const library = algorithm(settings.level ?? DEFAULT_LEVEL, settings.weights);
  const isQuickCounted = settings.weights !== undefined;
  const days: RecallDay[] = [];
  let state: FSRSState | null = null;
  for (const { answer, graded } of answers) {
    const { recall } = graded;
    if (recall === undefined) continue;
    const day = answer.localDay;
    const elapsed = day - (days.at(-1)?.lastDay ?? day);
    const chance =
      state === null
        ? undefined
        : library.forgetting_curve(elapsed, state.stability);
    state = library.next_state(
      state,
      elapsed,
      ratingOf(recall, isQuickCounted),
    );
    days.push({
      ...(chance === undefined ? {} : { chance }),
      wasRight: recall !== "missed",
      stability: state.stability,
      lastDay: day,
      lastsUntil: dayAfter(
        day,
        library.next_interval(state.stability, elapsed),
      ),
      missedLast: recall === "missed",
      days: days.length + 1,
    });
  }
  return days;
}
