/** Which cases only a look at their stickers tells apart. */
import type { CaseId, FirstLayerId } from "./case-ids";
import { caseEntry, FIRST_LAYER_TABLE } from "./case-table";
import { situationOf } from "./situation";

function placeOf(id: FirstLayerId): string {
  const { corners, edges } = situationOf(id);
  return [...corners, ...edges]
    .map(({ piece, position }) => `${piece}@${position}`)
    .join(" ");
}

/** The cases whose piece is in the same place and faces another way: what only a look at its stickers tells apart. */
export function lookAlikes(id: CaseId): readonly CaseId[] {
  const entry = caseEntry(id);
  if (entry.group !== "first-layer") return [];
  const place = placeOf(entry.id);
  return FIRST_LAYER_TABLE.filter(
    (other) =>
      other.stage === entry.stage &&
      other.id !== entry.id &&
      placeOf(other.id) === place,
  ).map((other) => other.id);
}
