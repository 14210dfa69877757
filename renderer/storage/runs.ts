/** Whole runs in the store: written once, never edited; one is struck out by a row of its own. */
import { err, ok, type Result } from "../../core/result";
import type { RunRow } from "../../core/runs/run";
import { parseRunRow } from "../../core/runs/run-schema";
import type { DamagedRow } from "./damaged-row";
import type { TurnwiseDatabase } from "./database";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

/** A learner's rows as far as they could be read. */
export interface StoredRuns {
  /** In no order; `standingRuns` makes a list of them. */
  readonly rows: readonly RunRow[];
  readonly damaged: readonly DamagedRow[];
}

/**
 * Keeps a run, or strikes one out, and resolves once that is durable.
 *
 * Idempotent: a row that is stored already stays as it is.
 * Errors: `learner-gone` where the learner was deleted meanwhile.
 */
export async function keepRunRow(
  database: TurnwiseDatabase,
  row: RunRow,
): Promise<Result<void, StorageError>> {
  const { learners, runs } = database;
  const stored = await tryWriting(() =>
    database.transaction("rw", [learners, runs], async () => {
      if ((await learners.get(row.learner)) === undefined) return false;
      if ((await runs.get(row.id)) === undefined) await runs.add({ ...row });
      return true;
    }),
  );
  if (!stored.ok) return stored;
  return stored.value ? ok(undefined) : err({ code: "learner-gone" });
}

/** Reads a learner's runs. What cannot be read is reported and left as it is. */
export async function readRunRows(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<StoredRuns, StorageError>> {
  // By filter, not by index: a damaged instant drops a row from the index.
  const read = await tryReading(() =>
    database.runs.filter((row) => row["learner"] === learner).toArray(),
  );
  if (!read.ok) return read;
  const rows: RunRow[] = [];
  const damaged: DamagedRow[] = [];
  for (const row of read.value) {
    const parsed = parseRunRow(row);
    if (parsed.ok) rows.push(parsed.value);
    else
      damaged.push({
        table: "runs",
        key: String(row["id"]),
        field: parsed.error.field,
      });
  }
  return ok({ rows, damaged });
}
