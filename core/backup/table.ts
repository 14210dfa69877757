/**
 * What is kept of a learner for other programs: as rows of a table, and as JSON
 * lines.
 *
 * The columns carry the names that the fields have in JSON, inner ones with a
 * dot, so that one description serves both. It stands in README, held equal to
 * the columns by a test.
 */
import type { Milliseconds } from "../memory/review";

/** What stands in a cell; empty text for what was not measured. */
export type Cell = string | number | boolean;

/** A column of a table, as README tells it. */
export interface Column<T> {
  /** The field's name in JSON, dotted. */
  readonly name: string;
  /** The unit, or what kind of value it is. */
  readonly unit: string;
  readonly meaning: string;
  readonly cell: (row: T) => Cell;
}

/** A column in one line. */
export function columnOf<T>(
  name: string,
  unit: string,
  meaning: string,
  cell: (row: T) => Cell,
): Column<T> {
  return { name, unit, meaning, cell };
}

/** The last instant that a date can tell. Source: ECMA-262, "Time Values and Time Range". */
const LAST_INSTANT = 8.64e15;

/** An instant as people read it, by ISO 8601 in UTC; empty for one that no calendar has. */
export function readableInstant(at: Milliseconds): string {
  return at <= LAST_INSTANT ? new Date(at).toISOString() : "";
}

/** A table: the names of its columns, then a row for each entry, in the order given. */
export function tableRows<T>(
  columns: readonly Column<T>[],
  entries: readonly T[],
): readonly (readonly Cell[])[] {
  return [
    columns.map(({ name }) => name),
    ...entries.map((entry) => columns.map(({ cell }) => cell(entry))),
  ];
}

/** Entries as JSON lines: one a line, as it is stored, with fields of newer versions. */
export function asJsonLines(entries: readonly object[]): string {
  return entries.map((entry) => `${JSON.stringify(entry)}\n`).join("");
}
