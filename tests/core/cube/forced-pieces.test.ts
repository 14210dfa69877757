import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SOLVED, UNKNOWN } from "../../../core/cube/cubies";
import { canBe, withForcedPieces } from "../../../core/cube/forced-pieces";
import { arbitraryCubies } from "./arbitrary-cubes";

describe("what follows about a partly known cube", () => {
  it("is the last piece of a kind and how it is turned, on any cube", () => {
    fc.assert(
      fc.property(
        arbitraryCubies,
        fc.nat(7),
        fc.nat(11),
        (cube, corner, edge) => {
          const without = (array: Uint8Array, at: number) =>
            array.map((value, i) => (i === at ? UNKNOWN : value));
          const partly = {
            cornerPermutation: without(cube.cornerPermutation, corner),
            cornerOrientation: without(cube.cornerOrientation, corner),
            edgePermutation: without(cube.edgePermutation, edge),
            edgeOrientation: without(cube.edgeOrientation, edge),
          };
          expect(withForcedPieces(partly)).toEqual(cube);
          expect(canBe(partly)).toBe(true);
        },
      ),
    );
  });

  it("is nothing where two are left open", () => {
    const partly = {
      ...SOLVED,
      edgePermutation: SOLVED.edgePermutation.map((piece) =>
        piece < 2 ? UNKNOWN : piece,
      ),
    };
    expect(withForcedPieces(partly)).toEqual(partly);
  });
});

describe("a cube cannot be", () => {
  it("with one twisted corner, one flipped edge, or one exchange", () => {
    const exchanged = (array: Uint8Array) =>
      Uint8Array.of(array[1] ?? 0, array[0] ?? 0, ...array.slice(2));
    expect(canBe(SOLVED)).toBe(true);
    for (const wrong of [
      { cornerOrientation: Uint8Array.of(1, 0, 0, 0, 0, 0, 0, 0) },
      { edgeOrientation: Uint8Array.of(1, ...new Array<number>(11).fill(0)) },
      { cornerPermutation: exchanged(SOLVED.cornerPermutation) },
      { edgePermutation: exchanged(SOLVED.edgePermutation) },
    ])
      expect(canBe({ ...SOLVED, ...wrong })).toBe(false);
  });

  it("but may be where an exchange of two unknown pieces would mend it", () => {
    const odd = {
      ...SOLVED,
      cornerPermutation: Uint8Array.of(1, 0, 2, 3, 4, 5, 6, 7),
      edgePermutation: SOLVED.edgePermutation.map((piece) =>
        piece < 2 ? UNKNOWN : piece,
      ),
    };
    expect(canBe(odd)).toBe(true);
  });
});
