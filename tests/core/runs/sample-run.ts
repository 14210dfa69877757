import type { LocalDay, Milliseconds } from "../../../core/memory/review";
import type { Run } from "../../../core/runs/run";

/** A run as the store has one; 12.345 s for the first layer unless something else is said. */
export function sampleRun(changes: Partial<Run> = {}): Run {
  return {
    id: "run-1",
    learner: "7d9f3f0e-8a1c-4b8e-9d5e-0c5f6a7b8c9d",
    kind: "first-layer",
    rules: "plain",
    at: 1_800_000_000_000 as Milliseconds,
    utcOffset: 60,
    localDay: 20_833 as LocalDay,
    hold: "up",
    time: 12_345 as Milliseconds,
    splits: [],
    ending: "done",
    ...changes,
  };
}

/** A duration in milliseconds. */
export function ms(time: number): Milliseconds {
  return time as Milliseconds;
}
