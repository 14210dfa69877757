/** How a shelf is arranged: families in their order, and twins side by side. */
import type { Family } from "../../../core/cases/case-entry";
import type { CaseId } from "../../../core/cases/case-ids";
import { CASE_TABLE, caseEntry } from "../../../core/cases/case-table";
import { situationOf } from "../../../core/cases/situation";
import type { Stage } from "../../../core/cases/stage";

/** The families from left to right: the short ones share a board's row. */
const SHELF_ORDER = [
  "straight-up",
  "looks-from-below",
  "flipped-at-home",
  "go-down-first",
  "in-anothers-home",
  "on-a-side",
  "underneath",
  "twisted-at-home",
  "next-to-its-home",
  "across-from-its-home",
  "in-each-others-homes",
] as const satisfies readonly Family[];

/** A family on a shelf. */
export interface ShelfFamily {
  readonly family: Family;
  /** Groups of twins, each a case with its twin or a case that is its own. */
  readonly groups: readonly (readonly CaseId[])[];
}

/** A stage's cases by family and twins. Every case of the stage is in it once. */
export function shelfFamilies(stage: Stage): readonly ShelfFamily[] {
  return SHELF_ORDER.flatMap((family) => {
    const ids = CASE_TABLE.filter(
      (entry) => entry.stage === stage && entry.family === family,
    ).map(({ id }) => id);
    const groups = ids.flatMap((id) => {
      const { twin } = caseEntry(id);
      if (ids.indexOf(twin) < ids.indexOf(id) && ids.includes(twin)) return [];
      return [twin === id || !ids.includes(twin) ? [id] : [id, twin]];
    });
    return groups.length === 0 ? [] : [{ family, groups }];
  });
}

function placeOf(id: CaseId): string {
  const { corners, edges } = situationOf(id);
  return [...corners, ...edges]
    .map(({ piece, position }) => `${piece}@${position}`)
    .join(" ");
}

/** The cases whose piece is in the same place and faces another way: what only a look at its stickers tells apart. */
export function lookAlikes(id: CaseId): readonly CaseId[] {
  const { stage } = caseEntry(id);
  return CASE_TABLE.filter(
    (entry) =>
      entry.stage === stage &&
      entry.id !== id &&
      placeOf(entry.id) === placeOf(id),
  ).map((entry) => entry.id);
}
