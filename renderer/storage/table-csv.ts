/** A table as CSV, for a spreadsheet. */
import { csvFormatRow } from "d3-dsv";
import type { Cell } from "../../core/backup/table";

/**
 * Beginnings by which a spreadsheet takes text for a formula and runs it.
 * Source: OWASP, "CSV Injection".
 */
const FORMULA = /^[=+\-@\t\r\n]/;

/** Before the first column, so that a spreadsheet reads letters beyond ASCII as they are. */
const BYTE_ORDER_MARK = "\uFEFF";

function cellText(cell: Cell): string {
  return typeof cell === "string" && FORMULA.test(cell)
    ? `'${cell}`
    : String(cell);
}

/**
 * Rows as CSV, each ended as RFC 4180 says. Text that begins like a formula has
 * an apostrophe in front; numbers below zero stay numbers.
 */
export function tableAsCsv(rows: readonly (readonly Cell[])[]): string {
  const lines = rows.map((row) => `${csvFormatRow(row.map(cellText))}\r\n`);
  return BYTE_ORDER_MARK + lines.join("");
}
