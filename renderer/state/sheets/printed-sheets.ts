/** Which sheets were printed here, for the pages that print them and that take their ticks in. */
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import type { SheetCode } from "../../../core/paper/sheet-code";
import { localDay } from "../../../core/memory/local-day";
import type { LocalDay } from "../../../core/memory/review";
import { ok, type Result } from "../../../core/result";
import { now, utcOffset } from "../../platform/clock";
import type { TurnwiseDatabase } from "../../storage/database";
import { keepSheet, readSheet, readSheets } from "../../storage/sheets";
import type { StorageError } from "../../storage/storage-error";

/** Who prints, and where it is kept. */
export interface PrintingApp {
  readonly database: TurnwiseDatabase;
  readonly isGuest: boolean;
}

/** Keeps a sheet that is printed now. Resolves with whether it is kept: a guest's is not, and nobody knows its code afterwards. */
export async function keepPrinted(
  { database, isGuest }: PrintingApp,
  coded: Omit<KeptSheet, "printedAt">,
): Promise<Result<boolean, StorageError>> {
  if (isGuest) return ok(false);
  const kept = await keepSheet(database, { ...coded, printedAt: now() });
  return kept.ok ? ok(true) : kept;
}

/** The sheet with a code; undefined where none was printed here. */
export function printedSheet(
  database: TurnwiseDatabase,
  code: SheetCode,
): Promise<Result<KeptSheet | undefined, StorageError>> {
  return readSheet(database, code);
}

/** The sheets that were printed here, the last first. */
export function printedSheets(
  database: TurnwiseDatabase,
): Promise<Result<readonly KeptSheet[], StorageError>> {
  return readSheets(database);
}

/** The day on which a sheet was printed, on this machine's calendar. Units: `turnsOverAt` in hours, the learner's at the desk. */
export function printedDay(
  { printedAt }: Pick<KeptSheet, "printedAt">,
  turnsOverAt: number,
): LocalDay {
  return localDay(printedAt, utcOffset(printedAt), turnsOverAt);
}
