/**
 * A whole run: a stretch of a solve on the cube in somebody's hands, timed by
 * taps, up to a whole solve. It is kept as it was measured and never edited;
 * results, averages and penalties are computed from it (`run-result.ts`).
 *
 * A run is no part of memory: it answers no case, so the review log does not
 * hear of it, and it is kept in a table of its own.
 */
import type { Hold } from "../cases/variant";
import type { LocalDay, Milliseconds } from "../memory/review";

/** What a run goes up to. Stored: never renamed. */
export const RUN_KINDS = [
  "cross",
  "first-layer",
  "two-layers",
  "solve",
] as const;

/** What a run goes up to. */
export type RunKind = (typeof RUN_KINDS)[number];

/** A piece or a stage that a tap may end. */
export const RUN_PARTS = {
  cross: ["edge-1", "edge-2", "edge-3", "edge-4"],
  "first-layer": ["cross", "corner-1", "corner-2", "corner-3", "corner-4"],
  "two-layers": ["cross", "corners", "second-layer"],
  solve: ["cross", "corners", "second-layer", "last-layer"],
} as const satisfies Readonly<Record<RunKind, readonly string[]>>;

/** The name of a part. */
export type RunPart = (typeof RUN_PARTS)[RunKind][number];

/**
 * By which rules: `plain` knows done and not done; `competition` has 15 seconds
 * to look at the cube and the penalties of the WCA Regulations.
 */
export const RUN_RULES = ["plain", "competition"] as const;

/** By which rules a run goes. */
export type RunRules = (typeof RUN_RULES)[number];

/** What the cube showed at the end, as its holder reported. `one-turn-off` is asked by competition rules alone. */
export const RUN_ENDINGS = ["done", "one-turn-off", "not-done"] as const;

/** How a run ended. */
export type RunEnding = (typeof RUN_ENDINGS)[number];

/** A run as it is kept. Fields are never renamed; absent means not measured. */
export interface Run {
  /** A random UUID: lists of runs merge in any order as a union. */
  readonly id: string;
  readonly learner: string;
  readonly kind: RunKind;
  readonly rules: RunRules;
  /** When it ended, UTC. */
  readonly at: Milliseconds;
  /** Minutes east of UTC on the learner's machine then. */
  readonly utcOffset: number;
  readonly localDay: LocalDay;
  /** How the first layer is held. */
  readonly hold: Hold;
  /** The turns that mixed the solved cube, in WCA notation. Absent: the learner mixed it. */
  readonly mix?: string;
  /** How long the cube was looked at before. Absent: not measured. */
  readonly inspection?: Milliseconds;
  /** First tap to last tap, by a clock that nobody sets; not rounded. */
  readonly time: Milliseconds;
  /** When each part but the last was done, since the first tap, in rising order. Empty: not tapped; too few: the last of them are one. */
  readonly splits: readonly Milliseconds[];
  readonly ending: RunEnding;
  /** Whether the window was out of sight meanwhile: a machine that sleeps may stop the clock. */
  readonly wasHidden?: boolean;
}

/** A run is struck out by a row of its own: what was measured stays as it was. */
export interface RunStrike {
  readonly id: string;
  readonly learner: string;
  /** When it was struck out, UTC. */
  readonly at: Milliseconds;
  /** The id of the run. */
  readonly strikes: string;
}

/** What a row of the table of runs holds. */
export type RunRow = Run | RunStrike;

/** Whether a row strikes a run out. */
export function isStrike(row: RunRow): row is RunStrike {
  return "strikes" in row;
}

/** A part of a run with how long it took. The last stands for several where fewer taps were made than there are parts. */
export interface TimedPart {
  readonly parts: readonly RunPart[];
  readonly time: Milliseconds;
}

/** The parts of a run that its taps tell apart, in order; one part where none was tapped. */
export function timedParts({
  kind,
  splits,
  time,
}: Pick<Run, "kind" | "splits" | "time">): readonly TimedPart[] {
  const names: readonly RunPart[] = RUN_PARTS[kind];
  const ends = [...splits, time];
  return ends.map((end, n) => ({
    parts: n === ends.length - 1 ? names.slice(n) : names.slice(n, n + 1),
    time: (end - (ends[n - 1] ?? 0)) as Milliseconds,
  }));
}

/** The runs that count: each once, those struck out left out, oldest first. */
export function standingRuns(rows: readonly RunRow[]): readonly Run[] {
  const struck = new Set(rows.filter(isStrike).map(({ strikes }) => strikes));
  const runs = new Map<string, Run>();
  for (const row of rows)
    if (!isStrike(row) && !struck.has(row.id)) runs.set(row.id, row);
  return [...runs.values()].sort(
    (a, b) => a.at - b.at || (a.id < b.id ? -1 : 1),
  );
}
