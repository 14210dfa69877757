import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { deducedStickers } from "../../../core/cube/deduced-stickers";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import type { ColourName } from "../../../core/picture/colour-sets";
import {
  anyHeldCube,
  anyScheme,
  colouredStickers,
  FACE_COLOURS,
} from "./entered-cubes";

const SOLVED_STICKERS = colouredStickers(
  { cubies: SOLVED, hold: NO_ROTATION },
  FACE_COLOURS,
);

/** Only the middles, and these. */
function only(
  ...facelets: readonly number[]
): readonly (ColourName | undefined)[] {
  return SOLVED_STICKERS.map((colour, at) =>
    at % 9 === 4 || facelets.includes(at) ? colour : undefined,
  );
}

describe("stickers that must follow", () => {
  it("are what the cube shows, whatever was told of it", () => {
    fc.assert(
      fc.property(
        anyHeldCube,
        anyScheme,
        fc.uniqueArray(fc.nat(53), { maxLength: 48 }),
        (cube, scheme, open) => {
          const stickers = colouredStickers(cube, scheme);
          const entered = stickers.map((colour, at) =>
            at % 9 !== 4 && open.includes(at) ? undefined : colour,
          );
          const deduced = deducedStickers(entered);
          for (const [at, colour] of deduced) {
            expect(entered[at]).toBeUndefined();
            expect(colour).toBe(stickers[at]);
          }
          // One open sticker can always be told from the other 53.
          if (entered.filter((colour) => colour === undefined).length === 1)
            expect(deduced.size).toBe(1);
        },
      ),
    );
  });

  it("are the third sticker of a corner when two are told", () => {
    expect([...deducedStickers(only(8, 9))]).toEqual([[20, "green"]]);
    // Which way round decides: white and red the other way have blue beside them.
    const other = only().map((colour, at) =>
      at === 8 ? "red" : at === 9 ? "white" : colour,
    );
    expect([...deducedStickers(other)]).toEqual([[20, "blue"]]);
  });

  it("are none beside a single sticker of an edge", () => {
    expect(deducedStickers(only(7)).size).toBe(0);
  });

  it("are the last pieces of a colour when all the others lie elsewhere", () => {
    // Three white-and-something edges lie whole; the fourth shows its white.
    expect([...deducedStickers(only(5, 10, 7, 19, 3, 37, 1))]).toEqual([
      [46, "blue"],
    ]);
  });

  it("are not what only turning would rule out: a twisted last corner could then never be found out", () => {
    const last = SOLVED_STICKERS.map((colour, at) =>
      [8, 9, 20].includes(at) ? undefined : colour,
    );
    expect(deducedStickers(last).size).toBe(0);
  });

  it("are none without all middles, or where the stickers contradict each other", () => {
    const noMiddle = only(8, 9).map((colour, at) =>
      at === 4 ? undefined : colour,
    );
    expect(deducedStickers(noMiddle).size).toBe(0);
    const mirrored = only(8, 9, 7).map((colour, at) =>
      at === 20 ? "blue" : colour,
    );
    expect(deducedStickers(mirrored).size).toBe(0);
  });
});
