import { present } from "../invariant";
import {
  inverseSymmetry,
  NO_ROTATION,
  type Rotation,
  rotationAbout,
  thenSymmetry,
} from "./symmetries";
import type { Axis, Quarters, Turn } from "./turns";

const AXES = ["y", "x", "z"] as const satisfies readonly Axis[];
const QUARTERS = [1, 3, 2] as const satisfies readonly Quarters[];

// Breadth first, turns about the upright axis before the others: the shortest
// sequence for each rotation, and of those the one that is easiest to follow.
const SEQUENCES: ReadonlyMap<Rotation, readonly Turn[]> = (() => {
  const sequences = new Map<Rotation, readonly Turn[]>([[NO_ROTATION, []]]);
  // A map keeps its order and also visits what is added on the way.
  for (const [rotation, turns] of sequences) {
    for (const quarters of QUARTERS) {
      for (const layer of AXES) {
        const next = thenSymmetry(rotation, rotationAbout(layer, quarters));
        if (!sequences.has(next))
          sequences.set(next, [...turns, { layer, quarters }]);
      }
    }
  }
  return sequences;
})();

/** The fewest whole-cube turns (at most two) after which a cube held one way is held another. */
export function wholeCubeTurnsBetween(
  from: Rotation,
  to: Rotation,
): readonly Turn[] {
  return present(
    SEQUENCES.get(thenSymmetry(inverseSymmetry(from), to)),
    "whole-cube turns reach every rotation",
  );
}
