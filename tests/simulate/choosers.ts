/** Ways of choosing what to ask: ours, and what it is held against. */
import { dayNumber } from "../../core/memory/local-day";
import { Grader, type GradedReview } from "../../core/memory/grader";
import {
  chanceNow,
  type Memory,
  memoryOf,
  type ScheduleSettings,
} from "../../core/memory/schedule";
import type { Chooser, LivedAnswer, SimulatedReview } from "./life";

/** The intervals that a wall chart gives. Units: days. */
const EXPANDING = [1, 3, 7, 16, 35];

/** Everything met, every day. */
export function everyDay(): Chooser {
  const met = new Set<number>();
  return {
    dueOn: () => [...met],
    hear: ({ id }) => void met.add(id),
  };
}

/** After 1, 3, 7, 16 and then every 35 days; from the start after a miss. */
export function fixedIntervals(): Chooser {
  const cases = new Map<number, { step: number; due: number }>();
  return {
    dueOn: (day) =>
      [...cases]
        .filter(([, { due }]) => due <= day)
        .toSorted(([, a], [, b]) => a.due - b.due)
        .map(([id]) => id),
    hear({ id, day, review, isRecalled }) {
      if (review.asking === "shown") return;
      const before = cases.get(id);
      if (before !== undefined && before.due > day) return;
      const step =
        before === undefined || !isRecalled
          ? 0
          : Math.min(before.step + 1, EXPANDING.length - 1);
      cases.set(id, { step, due: day + (EXPANDING[step] ?? 0) });
    },
  };
}

/** Our scheduler; `refit` may give it new weights before a day. */
export function ours(
  settings: ScheduleSettings,
  refit?: (
    day: number,
    log: readonly SimulatedReview[],
  ) => readonly number[] | undefined,
): Chooser {
  const grader = new Grader();
  const log: SimulatedReview[] = [];
  const answers = new Map<number, GradedReview<SimulatedReview>[]>();
  const memories = new Map<number, Memory>();
  let current = settings;
  const remember = (id: number) => {
    const memory = memoryOf(answers.get(id) ?? [], current);
    if (memory !== undefined) memories.set(id, memory);
  };
  return {
    begin(day) {
      const weights = refit?.(day, log);
      if (weights === undefined) return;
      current = { ...settings, weights };
      for (const id of answers.keys()) remember(id);
    },
    dueOn(day) {
      const today = dayNumber(day);
      const chance = (memory: Memory) => chanceNow(memory, today, current);
      return [...memories]
        .filter(([, { lastsUntil }]) => lastsUntil <= today)
        .toSorted(([, a], [, b]) => chance(a) - chance(b))
        .map(([id]) => id);
    },
    hear({ review, id }: LivedAnswer) {
      log.push(review);
      const own = answers.get(id) ?? [];
      own.push({ review, ...grader.grade(review) });
      answers.set(id, own);
      remember(id);
    },
  };
}
