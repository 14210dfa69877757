import { describe, expect, it } from "vitest";
import { lastLayerCases } from "../../../core/cases/last-layer-cases";
import { stateOfLook } from "../../../core/cases/last-layer-look";
import { lastLayerMoves } from "../../../core/cases/last-layer-moves";
import { CORNER_FACELETS } from "../../../core/cube/facelets";
import { FACES, type Face } from "../../../core/cube/faces";
import { rotationAbout } from "../../../core/cube/symmetries";
import { COLOUR_SETS, USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { faceletPlace } from "../../../core/picture/cube-layout";
import { cubePalette } from "../../../core/picture/palette";
import { planInWords } from "../../../core/picture/plan-in-words";
import {
  planPicture,
  type PlanPictureInput,
  planPixelsPerCubie,
} from "../../../core/picture/plan-picture";
import { faceletPoint, targetAt } from "../../../core/picture/pointing";
import type { Point } from "../../../core/picture/projection";
import {
  isInside,
  pathsOf,
  pointsOn,
  SOLVED_STICKERS,
} from "./pictures-for-tests";

const PALETTE = cubePalette({ scheme: USUAL_SCHEME, theme: "light" });
const SIZES = [64, 96, 140, 240] as const;

function plan(changes: Partial<PlanPictureInput> = {}) {
  return planPicture({
    stickers: SOLVED_STICKERS,
    pixelsPerCubie: 20,
    palette: PALETTE,
    ...changes,
  });
}

// The top, and the upper row of each side.
const SHOWN = Array.from({ length: 54 }, (_, facelet) => facelet).filter(
  (facelet) => faceletPlace(facelet).cubie.y === 1,
);

function middleOf(points: readonly Point[]): Point {
  const mean = (of: (point: Point) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) };
}

function cornersOf(facelet: number): readonly Point[] {
  const target = plan().targets.find((one) => one.facelet === facelet);
  if (target === undefined) throw new Error(`${facelet} is not in the plan`);
  return target.corners;
}

describe("a plan of the last layer", () => {
  it("shows the top and the upper row of each side, once each, and nothing else", () => {
    expect(SHOWN).toHaveLength(21);
    for (const pixelsPerCubie of [13, 20, 48]) {
      const { targets } = plan({ pixelsPerCubie });
      expect(
        targets.map(({ facelet }) => facelet).toSorted((a, b) => a - b),
      ).toEqual(SHOWN);
      for (const { facelet } of targets) {
        const at = faceletPoint(plan({ pixelsPerCubie }), facelet);
        expect(at && targetAt(plan({ pixelsPerCubie }), at)?.facelet).toBe(
          facelet,
        );
      }
    }
  });

  it("is seen from above with the front at the bottom: every sticker lies to the side that it faces", () => {
    const towards: Readonly<Record<Face, (at: Point) => number>> = {
      F: ({ y }) => y,
      B: ({ y }) => -y,
      R: ({ x }) => x,
      L: ({ x }) => -x,
      U: () => 100,
      D: () => 0,
    };
    for (const facelet of SHOWN) {
      const { face, cubie } = faceletPlace(facelet);
      const at = middleOf(cornersOf(facelet));
      if (face !== "U") expect(towards[face](at)).toBeGreaterThan(1.5 * 20);
      else
        expect(Math.max(Math.abs(at.x), Math.abs(at.y))).toBeLessThan(1.5 * 20);
      // Left and right, back and front stay where they are on the cube.
      expect(Math.sign(Math.round(at.x))).toBe(Math.sign(cubie.x));
      expect(Math.sign(Math.round(at.y))).toBe(Math.sign(cubie.z));
    }
  });

  it("keeps the stickers of a piece together: a corner's three squares share their corner", () => {
    const tops = CORNER_FACELETS.filter((facelets) =>
      facelets.every((facelet) => SHOWN.includes(facelet)),
    );
    expect(tops).toHaveLength(4);
    const near = (a: Point, b: Point) =>
      Math.hypot(a.x - b.x, a.y - b.y) < 0.01;
    for (const [a = -1, b = -1, c = -1] of tops) {
      const shared = cornersOf(a).filter(
        (point) =>
          cornersOf(b).some((other) => near(point, other)) &&
          cornersOf(c).some((other) => near(point, other)),
      );
      expect(shared).toHaveLength(1);
      // The two side stickers meet along the slope between them as well.
      expect(
        cornersOf(b).filter((point) =>
          cornersOf(c).some((other) => near(point, other)),
        ),
      ).toHaveLength(2);
    }
  });

  it.each(SIZES)("fills a square of %d pixels and keeps within it", (size) => {
    for (const theme of ["light", "dark", "print"] as const) {
      const palette = cubePalette({ scheme: USUAL_SCHEME, theme });
      const { bounds, layers } = plan({
        pixelsPerCubie: planPixelsPerCubie(size),
        palette,
      });
      expect(bounds.right - bounds.left).toBeCloseTo(size, 9);
      expect(bounds.bottom - bounds.top).toBeCloseTo(size, 9);
      let reach = 0;
      for (const { shapes } of layers)
        for (const shape of shapes) {
          if (shape.kind !== "path") continue;
          const line =
            shape.stroke === undefined ? 0 : (shape.strokeWidth ?? 0);
          for (const { x, y } of pointsOn(shape))
            reach = Math.max(
              reach,
              Math.abs(x) + line / 2,
              Math.abs(y) + line / 2,
            );
        }
      expect(reach).toBeLessThanOrEqual(size / 2 + 0.01);
      // Print's body has a thinner line, and a dark ground a line around it.
      expect(reach).toBeGreaterThan(
        theme === "print" ? (size / 2) * 0.94 : size / 2 - 1.01,
      );
    }
  });

  it("has the same colours on its rim as on its top, so that only what a sticker carries tells it apart", () => {
    for (const face of FACES) {
      const fills = pathsOf(
        plan({ stickers: SOLVED_STICKERS.map(() => face) }),
        ["sticker"],
      ).flatMap(({ fill }) => fill ?? []);
      expect(new Set(fills)).toEqual(new Set([PALETTE.faces[face]]));
    }
  });

  it("shows bare plastic where a sticker does not matter", () => {
    const stickers = SOLVED_STICKERS.map((face) =>
      face === "U" ? face : undefined,
    );
    const paths = (role: "sticker" | "tile") =>
      pathsOf(plan({ stickers }), [role]).map(({ facelet }) => facelet);
    expect(paths("sticker")).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(paths("tile")).toHaveLength(12);
  });

  it("writes letters upright, within their stickers", () => {
    const palette = cubePalette({
      ...COLOUR_SETS.greys,
      scheme: USUAL_SCHEME,
      theme: "print",
    });
    const texts = plan({ palette }).layers.flatMap(({ shapes }) =>
      shapes.flatMap((shape) => (shape.kind === "text" ? [shape] : [])),
    );
    expect(texts).toHaveLength(21);
    for (const { matrix, facelet, fontSize } of texts) {
      const [a, b, c, d, x, y] = matrix;
      expect([a, b, c, d]).toEqual([1, 0, 0, 1]);
      const half = fontSize * 0.36;
      for (const [dx, dy] of [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ] as const)
        expect(
          isInside(cornersOf(facelet ?? -1), {
            x: x + dx * half,
            y: y + dy * half,
          }),
          `${facelet ?? ""}`,
        ).toBe(true);
    }
  });

  it("draws a thumbnail with few shapes, because a shelf shows hundreds", () => {
    const shapes = plan().layers.flatMap((layer) => layer.shapes);
    expect(shapes.length).toBeLessThanOrEqual(26);
    expect(plan().gradients).toEqual([]);
  });
});

describe("the arrows of a plan", () => {
  const CUBES = lastLayerCases("last-layer-placed").map((one) => ({
    code: one.code,
    cube: { cubies: stateOfLook(one.lookAt(0)), hold: rotationAbout("z", 2) },
  }));

  it.each(CUBES)("of $code lie on the top, none along another", ({ cube }) => {
    const arrows = lastLayerMoves("last-layer-placed", cube);
    const picture = plan({ arrows });
    const paths = pathsOf(picture, ["arrow"]);
    for (const path of paths)
      for (const { x, y } of pointsOn(path))
        expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThan(1.5 * 20);
    // Two that change places are one arrow: as many as there are rounds of two
    // less. Each is there twice, as casing and as itself.
    const exchanges = arrows.filter(({ from, to }) =>
      arrows.some((other) => other.from === to && other.to === from),
    ).length;
    expect(paths).toHaveLength(2 * (arrows.length - exchanges / 2));
    expect(new Set(paths.map(({ d }) => d)).size).toBe(paths.length / 2);
  });

  it("point from where a piece is to where it goes", () => {
    const [path] = pathsOf(plan({ arrows: [{ from: 6, to: 2 }] }), ["arrow"]);
    if (path === undefined) throw new Error("there is an arrow");
    const points = pointsOn(path);
    const far = points.map(({ x, y }) => x - y);
    // The one point furthest along is the tip; the tail ends bluntly.
    expect(far.filter((one) => one > Math.max(...far) - 1)).toHaveLength(1);
    expect(far.filter((one) => one < Math.min(...far) + 1)).toHaveLength(2);
  });

  it("have two tips where places change their pieces", () => {
    const [path] = pathsOf(
      plan({
        arrows: [
          { from: 6, to: 2 },
          { from: 2, to: 6 },
        ],
      }),
      ["arrow"],
    );
    if (path === undefined) throw new Error("there is an arrow");
    const far = pointsOn(path).map(({ x, y }) => x - y);
    expect(far.filter((one) => one > Math.max(...far) - 1)).toHaveLength(1);
    expect(far.filter((one) => one < Math.min(...far) + 1)).toHaveLength(1);
  });
});

describe("a plan in words", () => {
  it("reads out the top, the upper row of each side as one faces it, and the arrows", () => {
    const stickers: (Face | undefined)[] = [...SOLVED_STICKERS];
    stickers[0] = undefined;
    stickers[18] = "R";
    stickers[47] = "L";
    expect(
      planInWords(
        {
          stickers,
          arrows: [
            { from: 6, to: 2 },
            { from: 1, to: 7 },
            { from: 7, to: 1 },
          ],
        },
        USUAL_SCHEME,
      ),
    ).toBe(
      "The top, row by row: bare white white; white white white; white white white. " +
        "The front, upper row: red green green. " +
        "The right side, upper row: red red red. " +
        "The back, upper row: blue blue orange. " +
        "The left side, upper row: orange orange orange. " +
        "Arrows: top front left goes to top back right; top back and top front change places.",
    );
  });

  it("names no arrows where there are none", () => {
    expect(
      planInWords({ stickers: SOLVED_STICKERS }, USUAL_SCHEME),
    ).not.toContain("Arrows");
  });
});
