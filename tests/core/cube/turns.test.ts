import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FACES } from "../../../core/cube/faces";
import { applyTurn, bodyFace, viewFace } from "../../../core/cube/held-cube";
import { rotationAbout } from "../../../core/cube/symmetries";
import {
  inverseTurn,
  isFaceTurn,
  isSliceTurn,
  isWholeCubeTurn,
  type Turn,
  TURN_LAYERS,
  turnAxis,
} from "../../../core/cube/turns";
import { arbitraryTurn } from "../notation/arbitrary-turns";
import { arbitraryCube, START } from "./arbitrary-cubes";

describe("turns of a cube in the hands", () => {
  it("a turn taken back leaves every cube and its hold unchanged", () => {
    fc.assert(
      fc.property(arbitraryCube, arbitraryTurn(), (cube, turn) => {
        expect(applyTurn(applyTurn(cube, turn), inverseTurn(turn))).toEqual(
          cube,
        );
      }),
    );
  });

  it("four quarter turns of anything change nothing", () => {
    for (const layer of TURN_LAYERS) {
      let cube = START;
      for (let i = 0; i < 4; i++)
        cube = applyTurn(cube, { layer, quarters: 1 });
      expect(cube).toEqual(START);
    }
  });

  it("turning the whole cube moves no piece", () => {
    fc.assert(
      fc.property(
        arbitraryCube,
        arbitraryTurn(["x", "y", "z"]),
        (cube, turn) => {
          const after = applyTurn(cube, turn);
          expect(after.cubies).toEqual(cube.cubies);
          expect(after.hold).not.toBe(cube.hold);
        },
      ),
    );
  });

  it("turning a face leaves the hold as it is, a slice or wide layer does not", () => {
    for (const layer of TURN_LAYERS) {
      const { hold } = applyTurn(START, { layer, quarters: 1 });
      expect(hold === START.hold).toBe(FACES.some((face) => face === layer));
    }
  });

  it("x turns as R, y as U, z as F (WCA 12a4)", () => {
    // R brings the front up, U brings the front to the left, F brings the top to the right.
    expect(viewFace(rotationAbout("x", 1), "F")).toBe("U");
    expect(viewFace(rotationAbout("y", 1), "F")).toBe("L");
    expect(viewFace(rotationAbout("z", 1), "U")).toBe("R");
  });

  it("where the holder sees a face and what they see there belong together", () => {
    fc.assert(
      fc.property(arbitraryCube, ({ hold }) => {
        for (const face of FACES)
          expect(bodyFace(hold, viewFace(hold, face))).toBe(face);
      }),
    );
  });

  it("every layer is a face, wide, a slice or the whole cube, about one axis", () => {
    const kinds = TURN_LAYERS.map((layer) => {
      const turn: Turn = { layer, quarters: 1 };
      const is = [isFaceTurn(turn), isSliceTurn(turn), isWholeCubeTurn(turn)];
      return is.map((yes) => (yes ? "1" : "0")).join("");
    });
    const [face, wide, slice, whole] = ["100", "000", "010", "001"];
    expect(kinds).toEqual([
      ...Array.from({ length: 6 }, () => face),
      ...Array.from({ length: 6 }, () => wide),
      ...Array.from({ length: 3 }, () => slice),
      ...Array.from({ length: 3 }, () => whole),
    ]);
    const layers = ["R", "Rw", "L", "Lw", "M", "x"] as const;
    for (const layer of layers)
      expect(turnAxis({ layer, quarters: 1 })).toBe("x");
  });
});
