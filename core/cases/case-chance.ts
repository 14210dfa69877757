/** How often a case comes up. */
import type { CaseId } from "./case-ids";
import { caseEntry } from "./case-table";
import { homesAllowed } from "./constraint";
import { lastLayerOrbits } from "./last-layer-orbits";
import { slotCasesBeside } from "./slot-cases";

/** A chance as a fraction in lowest terms: 1 in 54. */
export interface Chance {
  readonly part: number;
  readonly whole: number;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function lowest(part: number, whole: number): Chance {
  const shared = greatestCommonDivisor(part, whole);
  return { part: part / shared, whole: whole / shared };
}

/**
 * How often a case comes up in its stage, when every arrangement is as likely:
 * in the last layer of all looks, of a slot's cases of all that its pieces can
 * show while the slots that they do not stand in are placed. Undefined for the
 * first layer, where learners choose what to bring home next.
 */
export function caseChance(id: CaseId): Chance | undefined {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer":
      return undefined;
    case "slot": {
      const beside = slotCasesBeside(entry.stage, homesAllowed(id, 0));
      const sizes = beside.map(({ orbit }) => orbit.length);
      // The solved arrangement is one more.
      const whole = sizes.reduce((sum, size) => sum + size, 1);
      return lowest(entry.shows.orbit.length, whole);
    }
    case "last-layer":
      return lowest(entry.shows.size, lastLayerOrbits(entry.stage).looks);
  }
}
