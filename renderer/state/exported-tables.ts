/** What is kept of a learner, as the text of a file for other programs. */
import { LOG_COLUMNS } from "../../core/backup/log-export";
import { keptRuns, RUN_COLUMNS } from "../../core/backup/run-export";
import { asJsonLines, tableRows } from "../../core/backup/table";
import type { Review } from "../../core/memory/review";
import type { RunRow } from "../../core/runs/run";
import { tableAsCsv } from "../storage/table-csv";

/** How such a file may end. */
export type TableEnding = "csv" | "jsonl";

/** A learner's answers, in the order given. */
export function answersAs(
  ending: TableEnding,
  reviews: readonly Review[],
): string {
  return ending === "csv"
    ? tableAsCsv(tableRows(LOG_COLUMNS, reviews))
    : asJsonLines(reviews);
}

/** A learner's whole runs. As JSON every row is there as it is stored, also those that strike another out. */
export function runsAs(ending: TableEnding, rows: readonly RunRow[]): string {
  return ending === "csv"
    ? tableAsCsv(tableRows(RUN_COLUMNS, keptRuns(rows)))
    : asJsonLines(rows);
}
