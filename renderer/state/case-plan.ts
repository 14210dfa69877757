/** The plan by which a case of the last layer is shown where it is looked up. */
import type { LastLayerEntry } from "../../core/cases/case-entry";
import type { CaseFamily } from "../../core/cases/case-families";
import { type CaseId, computedId } from "../../core/cases/case-ids";
import { caseEntry, parseCaseId } from "../../core/cases/case-table";
import { holdInStage } from "../../core/cases/hold-in-stage";
import { lastLayerMoves } from "../../core/cases/last-layer-moves";
import { startOf } from "../../core/cases/position";
import { lastLayerStickers } from "../../core/cases/stickers-that-matter";
import { SOLVED } from "../../core/cube/cubies";
import type { CubePalette } from "../../core/picture/palette";
import type { PlanPictureInput } from "../../core/picture/plan-picture";
import { showcasePosition } from "./case-showcase";

/** A plan, whatever its size. */
export type CasePlan = Omit<PlanPictureInput, "pixelsPerCubie">;

/** What else a plan shows. */
export interface PlanShowing {
  /** Which of the case's looks, as in `LookAlike`; absent: 0. */
  readonly look?: number;
  readonly rings?: readonly number[];
  /** Whether arrows tell which pieces change places: part of the answer. */
  readonly arrows?: boolean;
}

function planOf(
  { id, stage }: LastLayerEntry,
  palette: CubePalette,
  { look = 0, rings, arrows = true }: PlanShowing,
): CasePlan {
  const cube = startOf(showcasePosition(id, "down", look));
  return {
    stickers: lastLayerStickers(stage, cube),
    palette,
    rings,
    ...(arrows && { arrows: lastLayerMoves(stage, cube) }),
  };
}

/** The plan of a case; undefined below the last layer, where a plan tells nothing. */
export function casePlan(
  id: CaseId,
  palette: CubePalette,
  showing: PlanShowing = {},
): CasePlan | undefined {
  const entry = caseEntry(id);
  return entry.group === "last-layer"
    ? planOf(entry, palette, showing)
    : undefined;
}

/** The plan of what a family's cases show in a smaller stage; undefined for families of another kind. */
export function familyPlan(
  { group, family }: CaseFamily,
  palette: CubePalette,
): CasePlan | undefined {
  if (group !== "last-layer" || family.kind !== "shows") return undefined;
  const { stage, code } = family;
  const shown = parseCaseId(computedId(stage, code));
  if (shown !== undefined) return casePlan(shown, palette);
  // Nothing is left to do in the smaller stage.
  const hold = holdInStage(stage, { home: 0, seenFrom: 0 }, "down");
  return {
    stickers: lastLayerStickers(stage, { cubies: SOLVED, hold }),
    palette,
  };
}
