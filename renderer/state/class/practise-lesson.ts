/** A lesson's deck given to those who practise on this machine: before their other decks, as a newly ticked one is. */
import { FIRST_COURSE } from "../../../core/deck/starter-decks";
import { ok, type Result } from "../../../core/result";
import { tellOtherWindows } from "../../platform/other-windows";
import type { TurnwiseDatabase } from "../../storage/database";
import { learnerSettingsKey } from "../../storage/learners";
import { changeSetting } from "../../storage/settings";
import type { StorageError } from "../../storage/storage-error";
import { parseLearnerSettings } from "../learner-settings";

function withDeckFirst(stored: unknown, deck: string): unknown {
  const fields = typeof stored === "object" ? stored : {};
  const { decks = FIRST_COURSE.map(({ id }) => id) } =
    parseLearnerSettings(stored);
  return { ...fields, decks: [deck, ...decks.filter((id) => id !== deck)] };
}

/** Has learners practise a deck. What could not be stored is said; those before it have it. */
export async function practiseLesson(
  database: TurnwiseDatabase,
  learners: readonly string[],
  deck: string,
): Promise<Result<void, StorageError>> {
  for (const id of learners) {
    const changed = await changeSetting(
      database,
      learnerSettingsKey(id),
      (stored) => withDeckFirst(stored, deck),
    );
    if (!changed.ok) return changed;
    tellOtherWindows({ changed: "learner", id });
  }
  return ok(undefined);
}
