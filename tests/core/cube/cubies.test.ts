import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  compose,
  cubiesFrom,
  invert,
  isFullyKnown,
  isOddPermutation,
  isSameState,
  order,
  SOLVED,
} from "../../../core/cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../../../core/cube/face-turns";
import { FACES } from "../../../core/cube/faces";
import { applyTurns } from "../../../core/cube/held-cube";
import { knownOnly } from "../../../core/cube/partly-known";
import { corner, CORNERS, EDGES } from "../../../core/cube/pieces";
import { validateCubies } from "../../../core/cube/validity";
import { arbitraryCubies, START } from "./arbitrary-cubes";
import { arbitraryTurns } from "../notation/arbitrary-turns";

describe("states under compose", () => {
  it("it does not matter which two of three are composed first", () => {
    fc.assert(
      fc.property(
        arbitraryCubies,
        arbitraryCubies,
        arbitraryCubies,
        (a, b, c) => {
          expect(compose(compose(a, b), c)).toEqual(compose(a, compose(b, c)));
        },
      ),
    );
  });

  it("the solved state changes nothing on either side", () => {
    fc.assert(
      fc.property(arbitraryCubies, (a) => {
        expect(compose(a, SOLVED)).toEqual(a);
        expect(compose(SOLVED, a)).toEqual(a);
      }),
    );
  });

  it("a state and its inverse cancel on both sides", () => {
    fc.assert(
      fc.property(arbitraryCubies, (a) => {
        expect(compose(a, invert(a))).toEqual(SOLVED);
        expect(compose(invert(a), a)).toEqual(SOLVED);
      }),
    );
  });

  it("the inverse of a product is the product of the inverses, turned round", () => {
    fc.assert(
      fc.property(arbitraryCubies, arbitraryCubies, (a, b) => {
        expect(invert(compose(a, b))).toEqual(compose(invert(b), invert(a)));
      }),
    );
  });

  it("two products of reachable states are reachable", () => {
    fc.assert(
      fc.property(arbitraryCubies, arbitraryCubies, (a, b) => {
        expect(validateCubies(compose(a, b)).ok).toBe(true);
      }),
    );
  });

  it("means the first, then the second: R then U brings the corner DFR to UFL", () => {
    const both = compose(
      FACE_TURNS[faceTurnIndex("R", 1)] ?? SOLVED,
      FACE_TURNS[faceTurnIndex("U", 1)] ?? SOLVED,
    );
    expect(both.cornerPermutation[corner("UFL")]).toBe(corner("DFR"));
  });

  it("turning after turning is composing", () => {
    const faces = arbitraryTurns(FACES);
    fc.assert(
      fc.property(faces, faces, (first, second) => {
        expect(applyTurns(START, [...first, ...second]).cubies).toEqual(
          compose(
            applyTurns(START, first).cubies,
            applyTurns(START, second).cubies,
          ),
        );
      }),
    );
  });
});

describe("questions about states", () => {
  it("every quarter turn has order 4 and every half turn order 2", () => {
    expect(FACE_TURNS.map(order)).toEqual(FACES.flatMap(() => [4, 2, 4]));
  });

  it("quarters beyond a full turn count as what is left of them", () => {
    expect(faceTurnIndex("F", -1)).toBe(faceTurnIndex("F", 3));
    expect(faceTurnIndex("F", 6)).toBe(faceTurnIndex("F", 2));
  });

  it("a difference in any one place is a difference", () => {
    fc.assert(
      fc.property(arbitraryCubies, fc.nat(39), (a, at) => {
        const b = cubiesFrom(
          [...a.cornerPermutation],
          [...a.cornerOrientation],
          [...a.edgePermutation],
          [...a.edgeOrientation],
        );
        expect(isSameState(a, b)).toBe(true);
        const arrays = [
          b.cornerPermutation,
          b.cornerOrientation,
          b.edgePermutation,
          b.edgeOrientation,
        ];
        let i = at;
        for (const array of arrays) {
          if (i >= 0 && i < array.length) array[i] = ((array[i] ?? 0) + 1) % 7;
          i -= array.length;
        }
        expect(isSameState(a, b)).toBe(false);
      }),
    );
  });

  it("one exchange turns even into odd", () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], { minLength: 8 }),
        fc.uniqueArray(fc.nat(7), { minLength: 2, maxLength: 2 }),
        (list, [i = 0, j = 1]) => {
          const before = Uint8Array.from(list);
          const after = Uint8Array.from(list);
          after[i] = before[j] ?? 0;
          after[j] = before[i] ?? 0;
          expect(isOddPermutation(after)).toBe(!isOddPermutation(before));
        },
      ),
    );
    expect(isOddPermutation(SOLVED.edgePermutation)).toBe(false);
  });

  it("a state is fully known unless a piece was forgotten", () => {
    const corners = new Set(CORNERS);
    const edges = new Set(EDGES);
    expect(isFullyKnown(knownOnly(SOLVED, corners, edges))).toBe(true);
    expect(
      isFullyKnown(knownOnly(SOLVED, new Set(CORNERS.slice(1)), edges)),
    ).toBe(false);
    expect(
      isFullyKnown(knownOnly(SOLVED, corners, new Set(EDGES.slice(1)))),
    ).toBe(false);
  });
});
