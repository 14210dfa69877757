/** How somebody's runs of one kind have gone: the numbers, and day by day. */
import type { LocalDay, Milliseconds } from "../memory/review";
import { averageOfFive, bestOf, meanOfThree, usualOf } from "./run-averages";
import type { Run, RunKind, RunRules } from "./run";
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

/**
 * The averages of runs of one kind by one set of rules: by others a run that
 * counts here would not, or has seconds added, and a mixture would be neither.
 */
export interface RunAverages {
  readonly rules: RunRules;
  /** Of the last five; undefined: there are not five. */
  readonly ofFive: RunResult | undefined;
  /** Of the last three; undefined: there are not three. */
  readonly ofThree: RunResult | undefined;
  /** How many of the last five did not finish. */
  readonly notDone: number;
}

/** What the runs of a kind come to. */
export interface RunHistory {
  /** Oldest first. */
  readonly runs: readonly RunWithResult[];
  readonly best: Milliseconds | undefined;
  /** The middle one of the newest. */
  readonly usual: Milliseconds | undefined;
  readonly averages: RunAverages;
  /** Whether there are runs by other rules than the averages'. */
  readonly isMixed: boolean;
  /** Newest day first. */
  readonly days: readonly RunDay[];
}

function averagesOf(
  runs: readonly RunWithResult[],
  rules: RunRules,
): RunAverages {
  const results = runs
    .filter(({ run }) => run.rules === rules)
    .map(({ result }) => result);
  return {
    rules,
    ofFive: averageOfFive(results),
    ofThree: meanOfThree(results),
    notDone: results.slice(-5).filter((one) => one === "did-not-finish").length,
  };
}

/**
 * How the runs of a kind have gone, with the averages of those by some rules.
 *
 * Shape: `runs` oldest first, none struck out.
 */
export function runHistory(
  runs: readonly Run[],
  kind: RunKind,
  rules: RunRules,
): RunHistory {
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
    averages: averagesOf(ofKind, rules),
    isMixed: ofKind.some(({ run }) => run.rules !== rules),
    days: [...byDay]
      .sort(([a], [b]) => b - a)
      .map(([day, ofDay]) => ({
        day,
        runs: ofDay,
        best: bestOf(ofDay.map(({ result }) => result)),
      })),
  };
}
