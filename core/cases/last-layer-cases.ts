/**
 * The cases of the last layer's stages as they are shown and practised: each
 * with its twin and, where there is one, its inverse, found by computation.
 */
import { type Cubies, invert } from "../cube/cubies";
import { conjugate, LEFT_RIGHT_MIRROR } from "../cube/symmetries";
import { present } from "../invariant";
import { type ComputedId, computedId } from "./case-ids";
import { lookIn, stateOfLook } from "./last-layer-look";
import { type LastLayerOrbit, lastLayerOrbits } from "./last-layer-orbits";
import {
  LAST_LAYER_RULES,
  type LastLayerRule,
  type LastLayerStage,
} from "./last-layer-stages";

/** A case of a stage of the last layer. */
export interface LastLayerCase extends LastLayerOrbit {
  readonly id: ComputedId;
  readonly stage: LastLayerStage;
  /** Its place in `lastLayerCases`. */
  readonly index: number;
}

const CASES = new Map<LastLayerStage, readonly LastLayerCase[]>();

/** All cases of a stage without the solved one, by their codes ascending; always the same list. */
export function lastLayerCases(
  stage: LastLayerStage,
): readonly LastLayerCase[] {
  const known = CASES.get(stage);
  if (known !== undefined) return known;
  const cases = lastLayerOrbits(stage).orbits.map((orbit, index) => ({
    ...orbit,
    id: computedId(stage, orbit.code),
    stage,
    index,
  }));
  CASES.set(stage, cases);
  return cases;
}

/** The case of the same stage that a state of a case turns into. */
function caseAfter(
  { stage, lookAt }: LastLayerCase,
  change: (state: Cubies) => Cubies,
): LastLayerCase {
  const changed = change(stateOfLook(lookAt(0)));
  const shown = lastLayerOrbits(stage).caseOf(lookIn(changed));
  return present(
    typeof shown === "number" ? lastLayerCases(stage)[shown] : undefined,
    "a mirror or an inverse of a case is a case",
  );
}

/** The case that a case shows in a mirror, left and right exchanged. */
export function lastLayerTwinOf(one: LastLayerCase): LastLayerCase {
  return caseAfter(one, (state) => conjugate(state, LEFT_RIGHT_MIRROR));
}

/**
 * Whether the turns that answer one state of a case always make, on a solved
 * cube, the same other case of the stage. It is so where the stage knows which
 * piece it is whose turning it asks about: of the 57 there is no inverse, for
 * how the answer's inverse turns a place depends on the piece that came there.
 */
export function hasInverses(stage: LastLayerStage): boolean {
  const { done, asks }: LastLayerRule = LAST_LAYER_RULES[stage];
  const seen = [...done, ...asks];
  return (
    (!asks.includes("cornerTwists") || seen.includes("cornerPlaces")) &&
    (!asks.includes("edgeFlips") || seen.includes("edgePlaces"))
  );
}

/** The case that the answers of a case make on a solved cube; undefined where its stage has no inverses. */
export function lastLayerInverseOf(
  one: LastLayerCase,
): LastLayerCase | undefined {
  return hasInverses(one.stage) ? caseAfter(one, invert) : undefined;
}
