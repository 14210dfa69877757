import type fc from "fast-check";
import { type Cubies, SOLVED } from "../../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { arbitraryTurns } from "../notation/arbitrary-turns";

/** A solved cube, white centre and all, held as it comes. */
export const START: HeldCube<Cubies> = { cubies: SOLVED, hold: NO_ROTATION };

/** Any reachable cube, held in any way: a solved one after up to 40 turns. */
export const arbitraryCube: fc.Arbitrary<HeldCube<Cubies>> =
  arbitraryTurns().map((turns) => applyTurns(START, turns));

/** Any reachable state. */
export const arbitraryCubies: fc.Arbitrary<Cubies> = arbitraryCube.map(
  ({ cubies }) => cubies,
);
