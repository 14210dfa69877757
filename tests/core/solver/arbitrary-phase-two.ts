import fc from "fast-check";
import { type Cubies, compose, SOLVED } from "../../../core/cube/cubies";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import { PHASE_TWO_TURNS } from "../../../core/solver/move-tables";

/** Any state of the group of U D R2 L2 F2 B2: a solved one after up to 40 of its turns. */
export const arbitraryPhaseTwoCubies: fc.Arbitrary<Cubies> = fc
  .array(fc.constantFrom(...PHASE_TWO_TURNS), { maxLength: 40 })
  .map((turns) =>
    turns.reduce(
      (state, turn) => compose(state, FACE_TURNS[turn] ?? SOLVED),
      SOLVED,
    ),
  );
