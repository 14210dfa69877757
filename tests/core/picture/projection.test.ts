import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { faceletPoint } from "../../../core/picture/pointing";
import type { CubeView } from "../../../core/picture/projection";
import { solvedStickers } from "../../oracles/geometric-cube";
import { pictureOf } from "./pictures-for-tests";

type Matrix = readonly (readonly number[])[];

const radians = (degrees: number) => (degrees * Math.PI) / 180;

function multiply(a: Matrix, b: Matrix): Matrix {
  return a.map((row) =>
    row.map((_, k) =>
      row.reduce((sum, part, i) => sum + part * (b[i]?.[k] ?? NaN), 0),
    ),
  );
}

/** The textbook way: turn the world under a camera that looks along −z. */
function worldToCamera(view: CubeView): Matrix {
  const y = radians(-view.yaw);
  const p = radians(view.pitch);
  const aboutY = [
    [Math.cos(y), 0, Math.sin(y)],
    [0, 1, 0],
    [-Math.sin(y), 0, Math.cos(y)],
  ];
  const aboutX = [
    [1, 0, 0],
    [0, Math.cos(p), -Math.sin(p)],
    [0, Math.sin(p), Math.cos(p)],
  ];
  return multiply(aboutX, aboutY);
}

function onPaper(view: CubeView, point: readonly number[]) {
  const [x = NaN, y = NaN, z = NaN] = worldToCamera(view).map((row) =>
    row.reduce((sum, part, i) => sum + part * (point[i] ?? NaN), 0),
  );
  const size = (view.pixelsPerCubie * view.distance) / (view.distance - z);
  return { x: x * size, y: -y * size };
}

// Whole numbers, because fast-check's doubles crowd around zero.
const views = fc.record({
  yaw: fc.integer({ min: -180, max: 180 }),
  pitch: fc.integer({ min: -75, max: 75 }),
  distance: fc.integer({ min: 8, max: 40 }),
  pixelsPerCubie: fc.integer({ min: 5, max: 100 }),
});

describe("projection", () => {
  it("puts the middle of each of the 54 facelets where plain matrices put it, and shows those that face the eye", () => {
    fc.assert(
      fc.property(views, (view) => {
        const picture = pictureOf({ view });
        solvedStickers().forEach((sticker, facelet) => {
          const middle = sticker.at.map(
            (part, i) => part + 0.5 * (sticker.facing[i] ?? NaN),
          );
          const shown = faceletPoint(picture, facelet);
          const towards = worldToCamera(view)[2] ?? [];
          const eye = towards.map((part) => part * view.distance);
          const facing = sticker.facing.reduce(
            (sum, part, i) =>
              sum + part * ((eye[i] ?? NaN) - (middle[i] ?? NaN)),
            0,
          );
          if (Math.abs(facing) < 1e-3) return;
          expect(shown !== undefined).toBe(facing > 0);
          if (shown === undefined) return;
          const expected = onPaper(view, middle);
          expect(shown.x).toBeCloseTo(expected.x, 4);
          expect(shown.y).toBeCloseTo(expected.y, 4);
        });
      }),
      { numRuns: 60 },
    );
  });

  it("puts the corners of the cube where the design's picture of a question has them", () => {
    // Read off the picture (73 pixels a cubie, centre at 648, 318): the body's
    // rim is about three pixels outside the corner.
    const picture = pictureOf({});
    const corner = (facelet: number, k: number) => {
      const target = picture.targets.find((t) => t.facelet === facelet);
      const point = target?.corners[k] ?? { x: NaN, y: NaN };
      return [point.x + 648, point.y + 318];
    };
    const near = (at: readonly number[], expected: readonly number[]) =>
      at.forEach((value, i) => {
        expect(Math.abs(value - (expected[i] ?? NaN))).toBeLessThan(5);
      });
    near(corner(18, 0), [490, 235]);
    near(corner(26, 2), [706, 490]);
    near(corner(0, 0), [597, 164]);
    near(corner(2, 1), [796, 194]);
  });
});
