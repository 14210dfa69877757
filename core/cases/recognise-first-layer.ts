/**
 * Which case a piece of the first layer shows, from where it sits and how it is turned: the
 * orbits of its stage, each with the one id whose written situation lies in it.
 */
import type { PartlyKnownCubies } from "../cube/cubies";
import { isEdgePlaced } from "../cube/partly-known";
import { conjugate } from "../cube/symmetries";
import { invariant, present } from "../invariant";
import type { CornerSwapId, FirstLayerId } from "./case-ids";
import { FIRST_LAYER_TABLE } from "./case-table";
import { caseConstraint } from "./constraint";
import { CORNER_SWAP_ROWS } from "./corner-swaps";
import {
  type Arrangement,
  arrangementIn,
  arrangementKey,
  caseOrbits,
} from "./orbits";
import { situationOf } from "./situation";
import {
  cornerOfHome,
  FIRST_LAYER_EDGES,
  homeAfter,
  rotationToHome,
  type FirstLayerStage,
} from "./stage";
import type { HomeIndex } from "./variant";

/** A case of the first layer and how far its piece is turned away from lined up. */
export interface FirstLayerRecognition {
  readonly case: FirstLayerId;
  readonly turnedAway: 0 | 1 | 2 | 3;
}

function writtenArrangement(id: FirstLayerId): Arrangement {
  const { corners, edges } = situationOf(id);
  return [...corners, ...edges].map(({ position, orientation }) => ({
    position,
    orientation: present(orientation, "a case says how its piece is turned"),
  }));
}

/** Lays the ids of a stage over its orbits: each on exactly one, none left over. */
function bindToOrbits(
  stage: FirstLayerStage,
): ReadonlyMap<string, FirstLayerRecognition> {
  const written = FIRST_LAYER_TABLE.filter(
    (entry) => entry.stage === stage && entry.family !== "in-each-others-homes",
  ).map(({ id }) => ({ id, key: arrangementKey(writtenArrangement(id)) }));
  const orbits = caseOrbits(caseConstraint(stage, []));
  const bound = new Map<string, FirstLayerRecognition>();
  for (const orbit of orbits) {
    const keys = orbit.map(arrangementKey);
    const names = written.filter(({ key }) => keys.includes(key));
    const name = names[0];
    invariant(
      name !== undefined && names.length === 1,
      "each orbit is one case",
    );
    const linedUp = keys.indexOf(name.key);
    for (const quarters of [0, 1, 2, 3] as const) {
      if (quarters >= keys.length) break;
      const key = keys[(linedUp + quarters) % keys.length];
      bound.set(present(key, "an orbit is cyclic"), {
        case: name.id,
        turnedAway: quarters,
      });
    }
  }
  invariant(written.length === orbits.length, "each case is one orbit");
  return bound;
}

const BOUND: Readonly<
  Record<FirstLayerStage, ReadonlyMap<string, FirstLayerRecognition>>
> = {
  "first-layer-edges": bindToOrbits("first-layer-edges"),
  "first-layer-corners": bindToOrbits("first-layer-corners"),
};

/** Whether the four first-layer edges are placed: the constraint of the corner stage. */
export function isCrossPlaced(state: PartlyKnownCubies): boolean {
  return FIRST_LAYER_EDGES.every((piece) => isEdgePlaced(state, piece));
}

/**
 * Which case the piece of a home shows, judged by that piece alone: whether
 * the stage's constraint holds is `isCrossPlaced`'s to say. Undefined where
 * the piece is placed, or not known.
 *
 * Shape: `state` is in the body frame, fully or partly known.
 */
export function recogniseFirstLayer(
  state: PartlyKnownCubies,
  stage: FirstLayerStage,
  home: HomeIndex,
): FirstLayerRecognition | undefined {
  const seenFromHome = conjugate(state, rotationToHome(homeAfter(0, -home)));
  const arrangement = arrangementIn(seenFromHome, caseConstraint(stage, []));
  return arrangement === undefined
    ? undefined
    : BOUND[stage].get(arrangementKey(arrangement));
}

/** The task that the corner of a home and another one show, standing in each other's homes. */
export function recogniseSwap(
  state: PartlyKnownCubies,
  home: HomeIndex,
): CornerSwapId | undefined {
  return CORNER_SWAP_ROWS.find(({ where }) => {
    const here = cornerOfHome(home);
    const there = cornerOfHome(homeAfter(home, where.partner));
    return (
      state.cornerPermutation[here] === there &&
      state.cornerPermutation[there] === here
    );
  })?.id;
}
