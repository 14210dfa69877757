/** A learner's log as CSV, for a spreadsheet. */
import Papa from "papaparse";
import { logRows } from "../../core/backup/log-export";
import type { Review } from "../../core/memory/review";

/**
 * Beginnings by which a spreadsheet takes text for a formula and runs it. The
 * library's own pattern lets a cell with a line feed in it through.
 * Source: OWASP, "CSV Injection".
 */
const FORMULA = /^[=+\-@\t\r\n]/;

/** Before the first column, so that a spreadsheet reads letters beyond ASCII as they are. */
const BYTE_ORDER_MARK = "\uFEFF";

/**
 * The log as CSV: a row of names, then a row for each answer, lines ended as
 * RFC 4180 says. Text that begins like a formula has an apostrophe in front;
 * numbers below zero stay numbers.
 */
export function logAsCsv(reviews: readonly Review[]): string {
  const rows = Papa.unparse(logRows(reviews), {
    escapeFormulae: FORMULA,
    newline: "\r\n",
  });
  return `${BYTE_ORDER_MARK}${rows}\r\n`;
}
