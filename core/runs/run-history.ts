/** How somebody's runs of one kind have gone: the numbers, and day by day. */
import type { LocalDay, Milliseconds } from "../memory/review";
import { averageOfFive, bestOf, meanOfThree, usualOf } from "./run-averages";
import type { Run, RunKind } from "./run";
import { resultOf, type RunResult } from "./run-result";

/** A run with what it came to. */
export interface RunWithResult {
  readonly run: Run;
  readonly result: RunResult;
}

/** The runs of a day, oldest first. */
export interface RunDay {
  readonly day: LocalDay;
  readonly runs: readonly RunWithResult[];
  /** Undefined: none finished. */
  readonly best: Milliseconds | undefined;
}

/** What the runs of a kind come to. */
export interface RunHistory {
  /** Oldest first. */
  readonly runs: readonly RunWithResult[];
  readonly best: Milliseconds | undefined;
  /** The middle one of the newest. */
  readonly usual: Milliseconds | undefined;
  /** Of the last five; undefined: there are not five. */
  readonly averageOfFive: RunResult | undefined;
  /** Of the last three; undefined: there are not three. */
  readonly meanOfThree: RunResult | undefined;
  /** Newest day first. */
  readonly days: readonly RunDay[];
}

/** How the runs of a kind have gone. Shape: `runs` oldest first, none struck out. */
export function runHistory(runs: readonly Run[], kind: RunKind): RunHistory {
  const ofKind = runs
    .filter((run) => run.kind === kind)
    .map((run) => ({ run, result: resultOf(run) }));
  const results = ofKind.map(({ result }) => result);
  // By the day that was written down, which no other zone moves.
  const byDay = new Map<LocalDay, RunWithResult[]>();
  for (const one of ofKind) {
    const { localDay } = one.run;
    byDay.set(localDay, [...(byDay.get(localDay) ?? []), one]);
  }
  return {
    runs: ofKind,
    best: bestOf(results),
    usual: usualOf(results),
    averageOfFive: averageOfFive(results),
    meanOfThree: meanOfThree(results),
    days: [...byDay]
      .sort(([a], [b]) => b - a)
      .map(([day, ofDay]) => ({
        day,
        runs: ofDay,
        best: bestOf(ofDay.map(({ result }) => result)),
      })),
  };
}
