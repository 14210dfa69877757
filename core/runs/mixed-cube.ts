/**
 * How a solved cube is mixed for a run: a uniformly random state, reached by
 * the inverse of the turns that solve it. Random turns would come near a
 * uniform state only after many more of them.
 */
import { type HomeIndex, HOME_INDICES } from "../cases/variant";
import { ANY_STATE, sampleState } from "../cube/sample-state";
import type { Cubies } from "../cube/cubies";
import type { RandomSource } from "../random-source";

/** The first layer's edges lie at the first four places. */
function isCrossPlaced(state: Cubies): boolean {
  return HOME_INDICES.every(
    (home: HomeIndex) =>
      state.edgePermutation[home] === home && state.edgeOrientation[home] === 0,
  );
}

/**
 * A random state in which something is left to do in every kind of run: one
 * in 190,080 has its first layer's edges placed, and is drawn again.
 */
export function mixedCube(random: RandomSource): Cubies {
  let state = sampleState(random, ANY_STATE);
  while (isCrossPlaced(state)) state = sampleState(random, ANY_STATE);
  return state;
}
