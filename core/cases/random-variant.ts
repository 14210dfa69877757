import { pick, type RandomSource } from "../random-source";
import type { CaseId } from "./case-ids";
import {
  allowedPlacedSets,
  hasHomes,
  isInFreeLayer,
  mostPlaced,
} from "./constraint";
import { HOME_INDICES, type HomeIndex, type Variant } from "./variant";

/** How far a deck opens a case up; each absent choice keeps to the easiest. */
export interface VariantOptions {
  /** The homes to draw from; absent or empty: all four. */
  readonly homes?: readonly HomeIndex[];
  /** How many other homes are placed; absent, or more than the case allows: as many as it allows. */
  readonly placedCount?: 0 | 1 | 2 | 3;
  /** Whether a piece in the free layer may be turned away from lined up. */
  readonly turnedAway?: boolean;
  /** Whether the cube may be held with the home at another side. */
  readonly seenFromAnywhere?: boolean;
}

const QUARTERS = [0, 1, 2, 3] as const;

/**
 * A variant of a case drawn at random, every choice uniform over what the
 * options and the case allow: of the sets of placed homes, each of the wanted
 * size is as likely as any other.
 */
export function randomVariant(
  random: RandomSource,
  id: CaseId,
  options: VariantOptions = {},
): Variant {
  const { homes = HOME_INDICES } = options;
  const home = pick(random, homes.length > 0 ? homes : HOME_INDICES);
  const most = mostPlaced(id);
  const count = Math.min(options.placedCount ?? most, most);
  const placed = pick(random, allowedPlacedSets(id, home, count));
  const isTurned = options.turnedAway === true && isInFreeLayer(id);
  return {
    home,
    placed,
    turnedAway: isTurned ? pick(random, QUARTERS) : 0,
    seenFrom:
      options.seenFromAnywhere === true && hasHomes(id)
        ? pick(random, QUARTERS)
        : 0,
  };
}

/** Whether a case can be asked in this variant: outside input passes here before a position is drawn. */
export function isVariantAllowed(id: CaseId, variant: Variant): boolean {
  const isTurnAllowed = variant.turnedAway === 0 || isInFreeLayer(id);
  const isSeenAllowed = variant.seenFrom === 0 || hasHomes(id);
  const isSetAllowed = allowedPlacedSets(
    id,
    variant.home,
    variant.placed.length,
  ).some((set) => set.every((home, i) => home === variant.placed[i]));
  return isTurnAllowed && isSeenAllowed && isSetAllowed;
}
