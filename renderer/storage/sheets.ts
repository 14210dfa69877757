/** Sheets that were printed here, by their codes, until their ticks come back. */
import { type KeptSheet, parseKeptSheet } from "../../core/paper/kept-sheet";
import type { SheetCode } from "../../core/paper/sheet-code";
import { ok, type Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

/** Keeps a sheet that is printed; printed again, it is kept as it is now. */
export function keepSheet(
  database: TurnwiseDatabase,
  sheet: KeptSheet,
): Promise<Result<string, StorageError>> {
  return tryWriting(() => database.sheets.put({ ...sheet }));
}

/** The sheet with a code; undefined where none was printed here, or its row cannot be read. */
export async function readSheet(
  database: TurnwiseDatabase,
  code: SheetCode,
): Promise<Result<KeptSheet | undefined, StorageError>> {
  const read = await tryReading(() => database.sheets.get(code));
  if (!read.ok) return read;
  const parsed = parseKeptSheet(read.value);
  return ok(parsed.ok ? parsed.value : undefined);
}

/** The sheets that were printed here, the last first. Those that cannot be read are left out: they can be made again. */
export async function readSheets(
  database: TurnwiseDatabase,
): Promise<Result<readonly KeptSheet[], StorageError>> {
  const read = await tryReading(() => database.sheets.toArray());
  if (!read.ok) return read;
  const sheets = read.value.flatMap((row) => {
    const parsed = parseKeptSheet(row);
    return parsed.ok ? [parsed.value] : [];
  });
  return ok(sheets.sort((a, b) => b.printedAt - a.printedAt));
}
