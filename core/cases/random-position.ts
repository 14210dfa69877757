/**
 * Random positions of a case: uniform over all reachable states in which the
 * marked homes are placed, the unmarked are not, and the piece is in its
 * situation; everything else is free. None is already answered, nor by turns
 * of the free layer alone: the piece to bring home is not home.
 *
 * Drawn from the constraint itself instead of by drawing any state until one
 * fits: of all states one in 26 billion shows a given corner case with all placed.
 * Speed (Node 20, one core, processor time, all cases mixed): 4 million
 * positions a second in place, 2.3 million as objects of their own.
 */
import type { Cubies } from "../cube/cubies";
import {
  emptyCubies,
  type StateSampler,
  stateSampler,
} from "../cube/sample-state";
import { invariant } from "../invariant";
import type { RandomSource } from "../random-source";
import type { CaseId } from "./case-ids";
import { caseEntry, stageOfCase } from "./case-table";
import { firstLayerStateConstraint } from "./constraint";
import { holdFor } from "./hold-in-stage";
import { lastLayerVariantSampler } from "./last-layer-position";
import type { Position } from "./position";
import { isVariantAllowed } from "./random-variant";
import { slotPositionSampler } from "./slot-position";
import type { Hold, Variant } from "./variant";

// One sampler per case and variant, at most a few thousand small tables:
// preparing one takes longer than drawing from it a hundred times.
const SAMPLERS = new Map<CaseId, Map<number, StateSampler>>();

/** A number of its own for each variant, as far as the pieces depend on it. */
function variantNumber({ home, placed, turnedAway }: Variant): number {
  let set = 0;
  for (const other of placed) set |= 1 << other;
  return (set << 4) | (home << 2) | turnedAway;
}

function newSampler(id: CaseId, variant: Variant): StateSampler {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer":
      return stateSampler(
        firstLayerStateConstraint({ case: entry.id, variant }),
      );
    case "slot":
      return slotPositionSampler(entry.shows, variant);
    case "last-layer":
      return lastLayerVariantSampler(entry.shows, variant);
  }
}

/**
 * A sampler of the positions of a case, for drawing many in place.
 *
 * Errors: throws for a variant that the case does not allow
 *         (`isVariantAllowed`), which is a bug of the caller's.
 */
export function positionSampler(id: CaseId, variant: Variant): StateSampler {
  const samplers = SAMPLERS.get(id) ?? new Map<number, StateSampler>();
  const number = variantNumber(variant);
  const known = samplers.get(number);
  if (known !== undefined) return known;
  invariant(
    isVariantAllowed(id, variant),
    "positions are drawn in a variant that the case allows",
  );
  const sampler = newSampler(id, variant);
  samplers.set(number, sampler);
  SAMPLERS.set(id, samplers);
  return sampler;
}

/** Overwrites `into` with a random position of a case; see `positionSampler` for many of one variant. */
export function randomPositionInPlace(
  random: RandomSource,
  id: CaseId,
  variant: Variant,
  into: Cubies,
): void {
  positionSampler(id, variant).drawInPlace(random, into);
}

/** A random position of a case in a variant, every piece known. */
export function randomPosition(
  random: RandomSource,
  id: CaseId,
  variant: Variant,
  hold: Hold,
): Position<Cubies> {
  const cubies = emptyCubies();
  randomPositionInPlace(random, id, variant, cubies);
  return { case: id, hold: holdFor(stageOfCase(id), hold), variant, cubies };
}
