/** The paper that sheets were last printed on here: a printer seldom changes. */
import * as v from "valibot";
import { PAPER_NAMES, type PaperName } from "../../../core/paper/paper-size";
import { ok, type Result } from "../../../core/result";
import type { TurnwiseDatabase } from "../../storage/database";
import { readSetting, saveSetting } from "../../storage/settings";
import type { StorageError } from "../../storage/storage-error";

/** Under which key the store keeps it. */
const PAPER_KEY = "paper";

const PAPER = v.picklist(PAPER_NAMES);

/** The paper; undefined where nothing was printed here yet, or a newer version has another. */
export async function usedPaper(
  database: TurnwiseDatabase,
): Promise<Result<PaperName | undefined, StorageError>> {
  const stored = await readSetting(database, PAPER_KEY);
  if (!stored.ok) return stored;
  const parsed = v.safeParse(PAPER, stored.value);
  return ok(parsed.success ? parsed.output : undefined);
}

/** Keeps the paper for the next sheet. */
export function keepUsedPaper(
  database: TurnwiseDatabase,
  paper: PaperName,
): Promise<Result<void, StorageError>> {
  return saveSetting(database, PAPER_KEY, paper);
}
