/**
 * Blocks of results whose rows were found damaged. Whoever reads them notes
 * it, and the next look at the folder reads their files again: to find the
 * damage at the look itself, all rows would have to be read there.
 */
import * as v from "valibot";
import type { Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import { changeSetting, readSetting } from "./settings";
import type { StorageError } from "./storage-error";

const KEY = "damaged-results";

const IDS = v.fallback(v.array(v.string()), []);

/** The ids of the blocks that were found damaged and not yet read again. */
export async function readDamagedResults(
  database: TurnwiseDatabase,
): Promise<Result<readonly string[], StorageError>> {
  const stored = await readSetting(database, KEY);
  return stored.ok ? { ok: true, value: v.parse(IDS, stored.value) } : stored;
}

/** Notes that some blocks are damaged. */
export function noteDamagedResults(
  database: TurnwiseDatabase,
  ids: readonly string[],
): Promise<Result<void, StorageError>> {
  return changeSetting(database, KEY, (stored) => [
    ...new Set([...v.parse(IDS, stored), ...ids]),
  ]);
}

/** Forgets what was noted of blocks that were read again. */
export function forgetDamagedResults(
  database: TurnwiseDatabase,
  ids: ReadonlySet<string>,
): Promise<Result<void, StorageError>> {
  return changeSetting(database, KEY, (stored) =>
    v.parse(IDS, stored).filter((id) => !ids.has(id)),
  );
}
