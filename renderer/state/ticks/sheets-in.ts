/** Whose sheets are in the store already: entered yesterday, or in another window. */
import type { LocalDay } from "../../../core/memory/review";
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import { ok, type Result } from "../../../core/result";
import type { TurnwiseDatabase } from "../../storage/database";
import { storedAmong } from "../../storage/entered-reviews";
import type { StorageError } from "../../storage/storage-error";
import { paperIds } from "./paper-reviews";

/** Of some learners those of whom answers on a sheet begun on a day are stored. */
export async function whoseIsIn(
  database: TurnwiseDatabase,
  sheet: KeptSheet,
  firstDay: LocalDay,
  learners: readonly { readonly id: string }[],
): Promise<Result<readonly string[], StorageError>> {
  const all = await Promise.all(
    learners.map(async ({ id }) => {
      const ids = await paperIds(sheet, firstDay, id);
      return { id, answers: [...ids.values()] };
    }),
  );
  const stored = await storedAmong(
    database,
    all.flatMap(({ answers }) => answers),
  );
  if (!stored.ok) return stored;
  return ok(
    all.flatMap(({ id, answers }) =>
      answers.some((answer) => stored.value.has(answer)) ? [id] : [],
    ),
  );
}
