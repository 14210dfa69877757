import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cubies, isSameState } from "../../../core/cube/cubies";
import { FACES } from "../../../core/cube/faces";
import {
  applyTurn,
  bodyFace,
  type HeldCube,
} from "../../../core/cube/held-cube";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import {
  ENTRY_ORDER,
  StickerEntry,
} from "../../../renderer/state/practise/sticker-entry.svelte";
import {
  facingInWords,
  stickerPlace,
  turningToInWords,
} from "../../../renderer/state/practise/sticker-entry-words";
import {
  anyHeldCube,
  anyScheme,
  colouredStickers,
  FACE_COLOURS,
} from "../../core/cube/entered-cubes";
import { START } from "../../core/cube/arbitrary-cubes";

function enterAll(
  entry: StickerEntry,
  stickers: ReturnType<typeof colouredStickers>,
): void {
  stickers.forEach((colour, at) => entry.set(at, colour));
}

describe("a cube entered sticker by sticker", () => {
  it("is the cube in the hands, whatever its colours and however it is held", () => {
    fc.assert(
      fc.property(anyHeldCube, anyScheme, (cube, scheme) => {
        const entry = new StickerEntry(scheme, cube.hold);
        expect(entry.cube).toBeUndefined();
        enterAll(entry, colouredStickers(cube, scheme));
        expect(entry.fault).toBeUndefined();
        expect(entry.cube?.hold).toBe(cube.hold);
        expect(entry.cube && isSameState(entry.cube.cubies, cube.cubies)).toBe(
          true,
        );
      }),
      { numRuns: 20 },
    );
  });

  it("begins with its middles, which stay as they are", () => {
    const entry = new StickerEntry(FACE_COLOURS, NO_ROTATION);
    for (const face of FACES) expect(entry.toldOn(face)).toBe(1);
    entry.set(4, "red");
    entry.set(4, undefined);
    expect(entry.stickers[4]).toBe("white");
    expect(entry.canUndo).toBe(false);
  });

  it("goes on to the side's next open place with each typed colour, past the middle, and stops at the last", () => {
    const entry = new StickerEntry(FACE_COLOURS, NO_ROTATION);
    const met: number[] = [];
    for (let n = 0; n < 9; n++) {
      met.push(entry.at);
      entry.type("red");
    }
    expect(met).toEqual([18, 19, 20, 21, 23, 24, 25, 26, 26]);
    expect(entry.toldOn("F")).toBe(9);
  });

  it("takes back one change at a time, whole sides and filled in stickers included", () => {
    const entry = new StickerEntry(FACE_COLOURS, NO_ROTATION);
    const solved = colouredStickers(START, FACE_COLOURS);
    enterAll(entry, solved);
    const whole = entry.stickers;
    entry.clear("U");
    expect(entry.toldOn("U")).toBe(1);
    // Each piece of the top is the only one left that has its other colours.
    expect(entry.deducible).toBe(8);
    entry.fillIn();
    expect(entry.toldOn("U")).toBe(9);
    entry.undo();
    expect(entry.toldOn("U")).toBe(1);
    entry.undo();
    expect(entry.stickers).toEqual(whole);
    for (let n = 0; n < 48; n++) entry.undo();
    expect(entry.canUndo).toBe(false);
    expect(entry.toldOn("F")).toBe(1);
  });

  it("points at the one sticker that is wrong", () => {
    const entry = new StickerEntry(FACE_COLOURS, NO_ROTATION);
    enterAll(entry, colouredStickers(START, FACE_COLOURS));
    entry.set(20, "blue");
    expect(entry.fault?.code).toBe("colour-count");
    expect(entry.pointedAt).toEqual([20]);
    expect(entry.cube).toBeUndefined();
  });

  it("points at all stickers of a colour told too often, but not at its middle", () => {
    const entry = new StickerEntry(FACE_COLOURS, NO_ROTATION);
    for (const at of [18, 19, 20, 21, 23, 24, 25, 26]) entry.set(at, "white");
    expect(entry.fault).toBeUndefined();
    entry.set(9, "white");
    expect(entry.fault?.code).toBe("colour-count");
    expect(entry.pointedAt).toEqual([9, 18, 19, 20, 21, 23, 24, 25, 26]);
  });

  it("points at a whole piece that no cube has while stickers are missing", () => {
    const entry = new StickerEntry(FACE_COLOURS, NO_ROTATION);
    entry.set(8, "white");
    entry.set(9, "green");
    expect(entry.fault).toBeUndefined();
    expect(entry.pointedAt).toEqual([]);
    entry.set(20, "red");
    expect(entry.fault?.code).toBe("corner-mirrored");
    expect(entry.pointedAt).toEqual([8, 9, 20]);
  });
});

describe("the words for each side", () => {
  it("lead a cube round so that each side faces the learner as its stickers are read", () => {
    // The cube itself is turned as the words say; what then faces is what is entered.
    let cube: HeldCube<Cubies> = START;
    const turn = (layer: "x" | "y", quarters: 1 | 2 | 3) => {
      cube = applyTurn(cube, { layer, quarters });
    };
    const colours = FACES.map((face) => FACE_COLOURS[face]);
    for (const face of ENTRY_ORDER) {
      if (["R", "B", "L"].includes(face)) turn("y", 1);
      if (face === "U") {
        turn("y", 1);
        turn("x", 3);
      }
      if (face === "D") turn("x", 2);
      const [front = "", top = ""] = (["F", "U"] as const).map(
        (seen) => FACE_COLOURS[bodyFace(cube.hold, seen)],
      );
      expect(facingInWords(face, colours)).toBe(
        `${front} facing you, ${top} on top`,
      );
      if (face !== "F")
        expect(turningToInWords(face, colours)).toContain(`${front} faces you`);
    }
  });

  it("name every sticker differently", () => {
    const names = Array.from({ length: 54 }, (_, at) => stickerPlace(at));
    expect(new Set(names).size).toBe(54);
    expect(names[18]).toBe("Front, top left");
  });
});
