/**
 * How often a case is met in one real solve, so that seconds lost at it can be
 * added up to seconds lost in a solve.
 *
 * Counted and not measured: a stage's pieces are brought home one after the
 * other in random order, and each stands anywhere that is still free, every
 * way as likely. Somebody who looks for the easiest piece first meets easy
 * cases more often than this says, and hard ones less.
 */
import { present } from "../invariant";
import { caseChance } from "./case-chance";
import type { CaseEntry } from "./case-entry";
import type { CaseId } from "./case-ids";
import { caseEntry } from "./case-table";
import { allowedPlacedSets, caseConstraint, isInFreeLayer } from "./constraint";
import { CORNER_SWAP_ROWS } from "./corner-swaps";
import type { CaseConstraint } from "./orbits";
import { slotConstraint } from "./slot-stages";
import type { HomeIndex } from "./variant";

/** 0 to 3 homes beside the reference one: any set of a size leaves its pieces as many places. */
const OTHERS_PLACED = [[], [1], [1, 2], [1, 2, 3]] as const;

/** In how many ways so many others can be chosen from three. */
const SETS_OF = [1, 3, 3, 1] as const;

type HomedEntry = Exclude<CaseEntry, { readonly group: "last-layer" }>;

function constraintOf(
  entry: HomedEntry,
  placed: readonly HomeIndex[],
): CaseConstraint {
  return entry.group === "slot"
    ? slotConstraint(entry.stage, placed)
    : caseConstraint(entry.stage, placed);
}

/** In how many ways the pieces of one home can lie and be turned, being placed among them. */
function countArrangements(constraint: CaseConstraint): number {
  const { targetCorners, targetEdges, placedCorners, placedEdges } = constraint;
  // No home has more than one piece of a kind.
  return (
    (targetCorners.length === 0 ? 1 : 3 * (8 - placedCorners.length)) *
    (targetEdges.length === 0 ? 1 : 2 * (12 - placedEdges.length))
  );
}

// Counted once a stage. All 167 pairs, counted each time: 27 ms; so: 16 ms at
// first, then 2 (Node 20, a machine with more to do than it has cores).
const ARRANGEMENTS = new Map<HomedEntry["stage"], readonly number[]>();

/** The arrangements of a home's pieces with 0 to 3 others placed. */
function arrangementsOf(entry: HomedEntry): readonly number[] {
  const known = ARRANGEMENTS.get(entry.stage);
  if (known !== undefined) return known;
  const counts = OTHERS_PLACED.map((placed) =>
    countArrangements(constraintOf(entry, placed)),
  );
  ARRANGEMENTS.set(entry.stage, counts);
  return counts;
}

/**
 * In how many of the arrangements of a home's pieces they show a case: as many
 * as its orbit has. Of two corners in each other's homes: in how many the first
 * stands where the second belongs, times the chance that it is so the other
 * way round.
 */
function arrangementsShowing(entry: HomedEntry, othersPlaced: number): number {
  const swap = CORNER_SWAP_ROWS.find(({ id }) => id === entry.id);
  if (swap === undefined) return isInFreeLayer(entry.id) ? 4 : 1;
  // A partner may be next on either side, but there is only one across.
  const partners = swap.where.partner === 2 ? 1 : 2;
  return (3 * partners) / (7 - othersPlaced);
}

/**
 * How often a case is met in one solve that goes through its stage: the
 * expected number of times.
 *
 * In the first layer and in slots four times a stage, with 0 to 3 other homes
 * filled, any set of them as likely; in the last layer once. So the cases of a
 * stage and the chances to find a home filled already add up to 4, or to 1.
 * Two corners in each other's homes are met as cases of one of them too: their
 * tasks are not part of that sum.
 *
 * Stages of different methods never meet in one solve; which ones a learner
 * goes through is not known here.
 */
export function caseFrequency(id: CaseId): number {
  const entry = caseEntry(id);
  if (entry.group === "last-layer") {
    const { part, whole } = present(caseChance(id), "its looks are counted");
    return part / whole;
  }
  return arrangementsOf(entry).reduce((sum, arrangements, count) => {
    const sets = allowedPlacedSets(id, 0, count).length;
    const share = sets / (SETS_OF[count] ?? 1);
    return sum + (share * arrangementsShowing(entry, count)) / arrangements;
  }, 0);
}
