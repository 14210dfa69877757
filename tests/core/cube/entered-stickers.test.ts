import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isSameState, SOLVED } from "../../../core/cube/cubies";
import type { EnteredFault } from "../../../core/cube/entered-fault";
import {
  type EnteredStickers,
  heldAsColoured,
  readEnteredStickers,
} from "../../../core/cube/entered-stickers";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import type { ColourName } from "../../../core/picture/colour-sets";
import {
  anyHeldCube,
  anyScheme,
  changedAt,
  colouredStickers,
  FACE_COLOURS,
  randomCubies,
  SIX_COLOURS,
} from "./entered-cubes";

const SOLVED_CUBE = { cubies: SOLVED, hold: NO_ROTATION };
const SOLVED_STICKERS = colouredStickers(SOLVED_CUBE, FACE_COLOURS);

function faultOf(
  entered: EnteredStickers<ColourName>,
): EnteredFault<ColourName> {
  const read = readEnteredStickers(entered);
  if (read.ok) throw new Error("these stickers were taken for a cube");
  return read.error;
}

function without(...facelets: readonly number[]): (ColourName | undefined)[] {
  return changedAt<ColourName | undefined>(
    SOLVED_STICKERS,
    facelets.map((at) => [at, undefined]),
  );
}

describe("stickers of a cube", () => {
  it("any random state, of any colours and in any hold, reads back as the same state", () => {
    fc.assert(
      fc.property(anyHeldCube, anyScheme, (cube, scheme) => {
        const read = readEnteredStickers(colouredStickers(cube, scheme));
        expect(read.ok).toBe(true);
        if (!read.ok) return;
        const held = heldAsColoured(read.value, scheme);
        expect(held?.hold).toBe(cube.hold);
        expect(held && isSameState(held.cubies, cube.cubies)).toBe(true);
      }),
    );
  });

  it("are of no colouring that has two colours exchanged: that is the mirror image", () => {
    fc.assert(
      fc.property(anyHeldCube, anyScheme, (cube, scheme) => {
        const read = readEnteredStickers(colouredStickers(cube, scheme));
        const mirrored = { ...scheme, R: scheme.L, L: scheme.R };
        expect(read.ok && heldAsColoured(read.value, mirrored)).toBe(undefined);
      }),
    );
  });
});

describe("faults are found in the order in which a person can act on them", () => {
  it("two middles of one colour are named with their places, before any count", () => {
    fc.assert(
      fc.property(
        randomCubies,
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 2, maxLength: 2 }),
        (cubies, [a = 0, b = 1]) => {
          const stickers = colouredStickers(
            { cubies, hold: NO_ROTATION },
            FACE_COLOURS,
          );
          const [from, to] = [9 * a + 4, 9 * b + 4];
          const colour = SIX_COLOURS[a] ?? "white";
          expect(faultOf(changedAt(stickers, [[to, colour]]))).toMatchObject({
            code: "centres-alike",
            colour,
            facelets: [from, to].sort((p, q) => p - q),
            slips: [{ kind: "sticker", facelets: [to] }],
          });
        },
      ),
    );
  });

  it("a colour that no middle has is named with its places", () => {
    expect(
      faultOf(
        changedAt<ColourName>(SOLVED_STICKERS, [
          [50, "pink"],
          [7, "pink"],
        ]),
      ),
    ).toEqual({
      code: "colour-of-no-centre",
      colour: "pink",
      facelets: [7, 50],
    });
  });

  it("a colour told too often is named with the one told too seldom", () => {
    expect(
      faultOf(changedAt<ColourName>(SOLVED_STICKERS, [[0, "red"]])),
    ).toMatchObject({
      code: "colour-count",
      tooMany: [{ colour: "red", count: 10 }],
      tooFew: [{ colour: "white", count: 8 }],
      facelets: [0, 9, 10, 11, 12, 13, 14, 15, 16, 17],
      slips: [{ kind: "sticker", facelets: [0] }],
    });
  });

  it("a colour told too often is named while stickers are missing, and nothing is then too seldom", () => {
    expect(
      faultOf(changedAt<ColourName | undefined>(without(30, 31), [[0, "red"]])),
    ).toMatchObject({ code: "colour-count", tooFew: [], slips: [] });
  });

  it("a piece with two stickers of one colour is named where it lies", () => {
    // The top's sticker of the piece at the front right, and one of the right's middle row.
    const entered = changedAt<ColourName>(SOLVED_STICKERS, [
      [8, "red"],
      [12, "white"],
    ]);
    expect(faultOf(entered)).toMatchObject({
      code: "colours-never-meet",
      kind: "corner",
      colours: ["red", "red"],
      facelets: [8, 9, 20],
    });
  });

  it("an edge of two opposite colours is named with both", () => {
    const entered = changedAt<ColourName>(SOLVED_STICKERS, [
      [19, "yellow"],
      [32, "green"],
    ]);
    expect(faultOf(entered)).toMatchObject({
      code: "colours-never-meet",
      kind: "edge",
      colours: ["white", "yellow"],
      facelets: [7, 19],
    });
  });

  it("a corner whose colours go round the wrong way is its mirror image", () => {
    const entered = changedAt<ColourName>(SOLVED_STICKERS, [
      [9, "green"],
      [20, "red"],
    ]);
    expect(faultOf(entered)).toMatchObject({
      code: "corner-mirrored",
      colours: ["white", "green", "red"],
      facelets: [8, 9, 20],
      slips: [{ kind: "piece-turned", facelets: [8, 9, 20] }],
    });
  });

  it("a piece that is there twice is named with both places and the piece that is missing instead", () => {
    // The front sticker of the top's edge exchanged with the right one of the bottom's.
    const entered = changedAt<ColourName>(SOLVED_STICKERS, [
      [19, "red"],
      [16, "green"],
    ]);
    const fault = faultOf(entered);
    expect(fault).toMatchObject({
      code: "piece-twice",
      kind: "edge",
      colours: ["white", "red"],
      places: [
        [5, 10],
        [7, 19],
      ],
      facelets: [5, 7, 10, 19],
      missing: undefined,
    });
    // Here a corner is there twice and only one is nowhere.
    const twice = changedAt<ColourName>(SOLVED_STICKERS, [
      [18, "red"],
      [38, "green"],
      [10, "orange"],
    ]);
    expect(faultOf(twice)).toMatchObject({
      code: "piece-twice",
      kind: "corner",
      colours: ["white", "red", "green"],
      missing: ["white", "green", "orange"],
    });
  });

  it("faults of told pieces come before missing stickers, and those before what turning cannot do", () => {
    expect(faultOf(without(0, 53))).toEqual({
      code: "stickers-missing",
      facelets: [0, 53],
    });
    expect(
      faultOf(
        changedAt<ColourName | undefined>(without(0), [
          [9, "green"],
          [20, "red"],
        ]),
      ).code,
    ).toBe("corner-mirrored");
    const flipped = changedAt<ColourName | undefined>(without(0), [
      [7, "green"],
      [19, "white"],
    ]);
    expect(faultOf(flipped).code).toBe("stickers-missing");
  });

  it("without all middles nothing is said of pieces", () => {
    expect(
      faultOf(
        changedAt<ColourName | undefined>(without(4), [
          [9, "green"],
          [20, "red"],
        ]),
      ),
    ).toEqual({ code: "stickers-missing", facelets: [4] });
  });
});
