/** From the way that a deck advises to turns as the learner sees them. */
import type { CaseId } from "../cases/case-ids";
import { caseEntry, wayOfSchool } from "../cases/case-table";
import { holdFor } from "../cases/hold-in-stage";
import type { Hold } from "../cases/variant";
import type { Hand } from "../cases/way";
import { rotationAbout } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { turnsThroughSymmetry } from "../notation/mirror";
import type { DeckWay } from "./deck";
import { readTypedWay } from "./deck-contradiction";

/** The same turns on the cube turned over about its front–back axis: from one hold to the other, and back. */
export function turnedOver(turns: readonly Turn[]): readonly Turn[] {
  return turnsThroughSymmetry(turns, rotationAbout("z", 2));
}

/** How the cube is held for a way that a deck writes down: first layer up for its own cases, down for all others. */
export function writtenHold(id: CaseId): Hold {
  return holdFor(caseEntry(id).stage, "up");
}

/**
 * The turns that a deck advises for a case, from a lined-up position with the
 * home in front, as the learner sees it in their hold; `hand` is the learner's
 * own, and counts where the deck names none. Undefined for two corners, which
 * no one sequence answers.
 */
export function turnsOfDeckWay(
  id: CaseId,
  way: DeckWay,
  hold: Hold,
  hand: Hand,
): readonly Turn[] | undefined {
  if (way.kind === "school")
    return wayOfSchool(id, way.school, hold, way.hand ?? hand)?.turns;
  const read = readTypedWay(id, way.turns);
  if (!read.ok) return undefined;
  // Whatever somebody chose for the first layer, all else is held down.
  return holdFor(caseEntry(id).stage, hold) === writtenHold(id)
    ? read.value
    : turnedOver(read.value);
}
