import { describe, expect, it } from "vitest";
import { FACES } from "../../../core/cube/faces";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { anyCubePalette } from "../../../core/picture/any-cube";
import { planPicture } from "../../../core/picture/plan-picture";
import { signPath, STICKER_SIGNS } from "../../../core/picture/sticker-signs";
import {
  isInside,
  pathsOf,
  pictureOf,
  pointsOn,
  SOLVED_STICKERS,
} from "./pictures-for-tests";

/** Twice the area within, holes taken off. Source: the shoelace formula. */
function doubledArea(d: string): number {
  return d
    .split("Z")
    .filter(Boolean)
    .map((outline) =>
      pointsOn({ kind: "path", role: "sign", d: outline }).reduce(
        (sum, a, i, all) => {
          const b = all[(i + 1) % all.length] ?? a;
          return sum + a.x * b.y - b.x * a.y;
        },
        0,
      ),
    )
    .reduce((a, b) => a + b, 0);
}

describe("signs on stickers", () => {
  const drawn = (sign: (typeof STICKER_SIGNS)[number]) =>
    signPath(sign, (x, y) => ({ x: 100 * x, y: 100 * y }));

  it("six are told apart, fill between a tenth and two fifths of a sticker, and a ring has its hole", () => {
    expect(new Set(STICKER_SIGNS.map(drawn)).size).toBe(6);
    for (const sign of STICKER_SIGNS) {
      const share = doubledArea(drawn(sign)) / 2 / 200 ** 2;
      expect(share, sign).toBeGreaterThan(0.1);
      expect(share, sign).toBeLessThan(0.4);
    }
    expect(doubledArea(drawn("ring"))).toBeLessThan(
      2 * Math.PI * 62 ** 2 * 0.9,
    );
  });

  it("look the same seen in a mirror", () => {
    for (const sign of STICKER_SIGNS) {
      const points = (flip: 1 | -1) =>
        pointsOn({
          kind: "path",
          role: "sign",
          d: signPath(sign, (x, y) => ({ x: 100 * flip * x, y: 100 * y })),
        })
          .map(({ x, y }) => `${Math.round(x)} ${Math.round(y)}`)
          .toSorted();
      expect(points(-1), sign).toEqual(points(1));
    }
  });

  const palette = anyCubePalette(NO_ROTATION, "light");

  it("stand on every sticker that is seen, each within it, and no letter does", () => {
    const picture = pictureOf({ palette });
    const signs = pathsOf(picture, ["sign"], "cube");
    expect(signs.map(({ facelet }) => facelet).toSorted()).toEqual(
      picture.targets.map(({ facelet }) => facelet).toSorted(),
    );
    for (const sign of signs) {
      const target = picture.targets.find(
        ({ facelet }) => facelet === sign.facelet,
      );
      for (const point of pointsOn(sign))
        expect(isInside(target?.corners ?? [], point)).toBe(true);
    }
    const texts = picture.layers.flatMap(({ shapes }) =>
      shapes.filter(({ kind }) => kind === "text"),
    );
    expect(texts).toEqual([]);
  });

  it("stand in mirrors and on the plan's rim, too", () => {
    const mirrors = { floor: true, left: true } as const;
    const reflected = pictureOf({ palette, mirrors });
    for (const layer of ["floor-reflection", "left-reflection"])
      expect(pathsOf(reflected, ["sign"], layer).length).toBeGreaterThan(8);
    const plan = planPicture({
      stickers: SOLVED_STICKERS,
      pixelsPerCubie: 40,
      palette,
    });
    const faces = pathsOf(plan, ["sign"]).map(({ facelet = -1 }) =>
      FACES.at(Math.floor(facelet / 9)),
    );
    expect(new Set(faces)).toEqual(new Set(["U", "R", "F", "L", "B"]));
    expect(faces).toHaveLength(21);
  });
});
