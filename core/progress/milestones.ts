/** What has been reached, in plain numbers. */
import type { Stage } from "../cases/stage";
import type { MemoryState } from "../memory/schedule";

/** Thinking times that are worth a word, slowest first. Units: milliseconds. */
const THINKING_STEPS = [
  10_000, 7000, 5000, 4000, 3000, 2500, 2000, 1500, 1000, 750, 500,
] as const;

/** A case that was met, as far as milestones go. */
export interface ReachedCase {
  readonly stage: Stage;
  readonly state: MemoryState;
  /** The usual thinking time; absent: not known. Units: milliseconds. */
  readonly thinking?: number | undefined;
}

/** So many of a stage's cases are thought about for less than some time. */
export interface ThinkingMilestone {
  /** Units: milliseconds. */
  readonly under: number;
  readonly cases: number;
}

/** What has been reached in a stage. */
export interface StageMilestones {
  readonly stage: Stage;
  /** How many of its cases were met. */
  readonly met: number;
  /** How many of those are kept. */
  readonly kept: number;
  /** The fastest step that at least half of the met cases have reached; absent where they have not reached the first. */
  readonly thinking?: ThinkingMilestone;
}

/** What has been reached, by stage, in the order in which the stages were given. */
export function milestonesOf(
  cases: readonly ReachedCase[],
): readonly StageMilestones[] {
  const stages = new Map<Stage, ReachedCase[]>();
  for (const one of cases) {
    if (one.state === "new") continue;
    const own = stages.get(one.stage);
    if (own === undefined) stages.set(one.stage, [one]);
    else own.push(one);
  }
  return [...stages].map(([stage, own]) => {
    const under = (time: number) =>
      own.filter(({ thinking }) => (thinking ?? Infinity) < time).length;
    const reached = THINKING_STEPS.findLast(
      (step) => under(step) >= own.length / 2,
    );
    return {
      stage,
      met: own.length,
      kept: own.filter(({ state }) => state === "kept").length,
      ...(reached === undefined
        ? {}
        : { thinking: { under: reached, cases: under(reached) } }),
    };
  });
}
