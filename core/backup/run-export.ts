/** A learner's whole runs as a table for other programs. */
import { isStrike, type Run, type RunRow } from "../runs/run";
import { type Column, columnOf, readableInstant } from "./table";

/** A run, and whether it still counts. */
interface KeptRun {
  readonly run: Run;
  readonly isStruckOut: boolean;
}

const column = columnOf<KeptRun>;

/** The columns in their order. */
export const RUN_COLUMNS: readonly Column<KeptRun>[] = [
  column("id", "text", "the run’s own id, random", ({ run }) => run.id),
  column("learner", "text", "the learner’s id", ({ run }) => run.learner),
  column(
    "kind",
    "cross, first-layer, two-layers, solve",
    "how far the run went",
    ({ run }) => run.kind,
  ),
  column(
    "rules",
    "plain, competition",
    "by which rules",
    ({ run }) => run.rules,
  ),
  column("at", "ms since 1970, UTC", "when it ended", ({ run }) => run.at),
  column(
    "ended",
    "ISO 8601, UTC",
    "the same, to be read; in CSV only",
    ({ run }) => readableInstant(run.at),
  ),
  column(
    "utcOffset",
    "min",
    "how far the learner’s clock was ahead of UTC",
    ({ run }) => run.utcOffset,
  ),
  column(
    "localDay",
    "days since 1 January 1970",
    "the learner’s day",
    ({ run }) => run.localDay,
  ),
  column(
    "hold",
    "up, down",
    "whether the first layer was held up or down",
    ({ run }) => run.hold,
  ),
  column(
    "mix",
    "notation",
    "the turns that mixed the solved cube; absent where the learner mixed it",
    ({ run }) => run.mix ?? "",
  ),
  column(
    "inspection",
    "ms",
    "how long the cube was looked at before, by competition rules",
    ({ run }) => run.inspection ?? "",
  ),
  column("time", "ms", "first tap to last tap", ({ run }) => run.time),
  column(
    "splits",
    "ms",
    "when each part but the last was done, from the first tap; none where they were not tapped",
    ({ run }) => run.splits.join(" "),
  ),
  column(
    "ending",
    "done, one-turn-off, not-done",
    "what the learner said the cube showed",
    ({ run }) => run.ending,
  ),
  column(
    "wasHidden",
    "true",
    "the window was out of sight during the run; absent where it was not",
    ({ run }) => run.wasHidden ?? "",
  ),
  column(
    "struckOut",
    "true",
    "the run does not count; in CSV only",
    ({ isStruckOut }) => isStruckOut || "",
  ),
];

/** The runs of a learner's rows, oldest first, each once; those struck out say so. */
export function keptRuns(rows: readonly RunRow[]): readonly KeptRun[] {
  const struck = new Set(rows.filter(isStrike).map(({ strikes }) => strikes));
  return rows
    .filter((row): row is Run => !isStrike(row))
    .toSorted((a, b) => a.at - b.at)
    .map((run) => ({ run, isStruckOut: struck.has(run.id) }));
}
