import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compose, type Cubies, SOLVED } from "../../../core/cube/cubies";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import { applyTurns } from "../../../core/cube/held-cube";
import { ROTATIONS } from "../../../core/cube/symmetries";
import {
  type FaceTurnSequence,
  faceTurnsOf,
  inverseSequence,
  normalised,
  turnSeen,
  withoutEndsOf,
} from "../../../core/solver/face-turn-sequence";
import { arbitraryTurns } from "../notation/arbitrary-turns";

const arbitrarySequence: fc.Arbitrary<FaceTurnSequence> = fc.array(fc.nat(17), {
  maxLength: 12,
});

function effect(turns: FaceTurnSequence): Cubies {
  return turns.reduce(
    (state, turn) => compose(state, FACE_TURNS[turn] ?? SOLVED),
    SOLVED,
  );
}

describe("sequences of face turns", () => {
  it("do what the learner's turns do, however the cube is held", () => {
    fc.assert(
      fc.property(
        arbitraryTurns(),
        fc.constantFrom(...ROTATIONS),
        (turns, hold) => {
          const after = applyTurns({ cubies: SOLVED, hold }, turns);
          expect(effect(faceTurnsOf(hold, turns))).toEqual(after.cubies);
        },
      ),
    );
  });

  it("are seen as the turns that they are", () => {
    fc.assert(
      fc.property(
        arbitrarySequence,
        fc.constantFrom(...ROTATIONS),
        (turns, hold) => {
          const seen = turns.map((turn) => turnSeen(hold, turn));
          expect(faceTurnsOf(hold, seen)).toEqual(turns);
        },
      ),
    );
  });

  it("followed by their inverse change nothing", () => {
    fc.assert(
      fc.property(arbitrarySequence, (turns) => {
        expect(effect([...turns, ...inverseSequence(turns)])).toEqual(SOLVED);
      }),
    );
  });

  it("keep their effect when normalised, and once is enough", () => {
    fc.assert(
      fc.property(arbitrarySequence, (turns) => {
        const normal = normalised(turns);
        expect(effect(normal)).toEqual(effect(turns));
        expect(normalised(normal)).toEqual(normal);
      }),
    );
  });

  it("are the same when normalised if they differ by an exchange of opposite faces", () => {
    fc.assert(
      fc.property(
        arbitrarySequence,
        fc.nat(2),
        fc.nat(2),
        fc.nat(2),
        arbitrarySequence,
        (before, axis, first, second, after) => {
          const near = 3 * axis + first;
          const far = 3 * (axis + 3) + second;
          expect(normalised([...before, near, far, ...after])).toEqual(
            normalised([...before, far, near, ...after]),
          );
        },
      ),
    );
  });

  it("lose turns of a face at their ends only: D2 U R D F D' loses the first and the last", () => {
    const [u, r, f, d, d2, dBack] = [0, 3, 6, 9, 10, 11];
    expect(withoutEndsOf("D", normalised([d2, u, r, d, f, dBack]))).toEqual([
      u,
      r,
      d,
      f,
    ]);
    expect(withoutEndsOf("D", [d])).toEqual([]);
  });
});
