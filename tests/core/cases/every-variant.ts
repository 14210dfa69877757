import type { CaseId } from "../../../core/cases/case-ids";
import { allowedPlacedSets, mostPlaced } from "../../../core/cases/constraint";
import { isInFreeLayer } from "../../../core/cases/constraint";
import { HOME_INDICES, type Variant } from "../../../core/cases/variant";

const QUARTERS = [0, 1, 2, 3] as const;

/** Every variant of a case with `count` others placed, absent: as many as it allows. */
export function everyVariant(
  id: CaseId,
  count: number = mostPlaced(id),
): readonly Variant[] {
  const away = isInFreeLayer(id) ? QUARTERS : ([0] as const);
  return HOME_INDICES.flatMap((home) =>
    allowedPlacedSets(id, home, count).flatMap((placed) =>
      away.flatMap((turnedAway) =>
        QUARTERS.map((seenFrom) => ({ home, placed, turnedAway, seenFrom })),
      ),
    ),
  );
}
