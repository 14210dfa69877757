import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import { targetAt } from "../../../core/picture/pointing";
import { type CubeView, usualView } from "../../../core/picture/projection";
import { ALL_TURNS, pathsOf, pictureOf, pointsOn } from "./pictures-for-tests";

const VIEWS: readonly (readonly [string, CubeView])[] = [
  ["the right", usualView(73)],
  ["the left", usualView(73, "left")],
  ["underneath", { ...usualView(73), pitch: -50 }],
  ["behind", { ...usualView(73), yaw: 205 }],
];

/** The ribbons without their casings: tail and tip of each. */
function ribbons(turn: Turn, view: CubeView) {
  const paths = pathsOf(pictureOf({ arrow: turn, view }), ["arrow"]);
  return paths
    .filter((path) => path.stroke === undefined)
    .map((path) => {
      const points = pointsOn(path);
      const at = (i: number) => points.at(i) ?? { x: NaN, y: NaN };
      const middle = (a: number, b: number) => ({
        x: (at(a).x + at(b).x) / 2,
        y: (at(a).y + at(b).y) / 2,
      });
      return {
        points,
        tail: middle(0, -1),
        // Half a cubie on: the very tail floats beside a side seen edge on.
        start: middle(8, -9),
        next: middle(10, -11),
        tip: at((points.length - 1) / 2),
      };
    });
}

describe("a turn's arrow", () => {
  for (const [name, view] of VIEWS)
    it.each(ALL_TURNS)(
      `$layer $quarters, seen from ${name}, lies on its layer and starts the way the layer goes`,
      (turn) => {
        const drawn = ribbons(turn, view);
        expect(drawn.length).toBeGreaterThan(0);
        const still = pictureOf({ view });
        const moving = pictureOf({ view, turning: { turn, progress: 0.08 } });
        for (const { start, next } of drawn) {
          const under = targetAt(still, start);
          const before = under;
          const after = moving.targets.find(
            (target) => target.facelet === under?.facelet,
          );
          if (before === undefined || after === undefined)
            throw new Error("the arrow does not start on the cube");
          // How the sticker's corner nearest to the tail goes.
          const corners = before.corners.map((corner, i) => ({
            corner,
            moved: after.corners[i] ?? corner,
          }));
          const along = corners.reduce(
            (sum, { corner, moved }) =>
              sum +
              (moved.x - corner.x) * (next.x - start.x) +
              (moved.y - corner.y) * (next.y - start.y),
            0,
          );
          expect(along).toBeGreaterThan(0);
        }
      },
    );

  it.each([73, 92, 12.4])(
    "leaves the piece's outline and its home to be seen, at %s pixels a cubie",
    (size) => {
      const picture = pictureOf({
        view: usualView(size),
        arrow: { layer: "R", quarters: 3 },
        pieces: [[26, 15, 29]],
        home: [8, 9, 20],
      });
      const shapes = picture.layers.flatMap((layer) => layer.shapes);
      const last = (role: string) =>
        shapes.findLastIndex((shape) => shape.role === role);
      expect(last("arrow")).toBeGreaterThan(0);
      expect(last("outline")).toBeGreaterThan(last("arrow"));
      expect(last("home")).toBeGreaterThan(last("arrow"));
    },
  );

  it("is one ribbon for a layer or the whole cube and two for a wide turn", () => {
    const count = (turn: Turn) => ribbons(turn, usualView(73)).length;
    expect(count({ layer: "R", quarters: 1 })).toBe(1);
    expect(count({ layer: "F", quarters: 1 })).toBe(1);
    expect(count({ layer: "E", quarters: 1 })).toBe(1);
    expect(count({ layer: "y", quarters: 1 })).toBe(1);
    expect(count({ layer: "Rw", quarters: 1 })).toBe(2);
  });

  it("has a second head and the word “twice” for a half turn, and only then", () => {
    const words = (turn: Turn) =>
      pictureOf({ arrow: turn })
        .layers.flatMap((layer) => layer.shapes)
        .flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
    expect(words({ layer: "F", quarters: 2 })).toEqual(["twice"]);
    expect(words({ layer: "R", quarters: 2 })).toEqual(["twice"]);
    expect(words({ layer: "R", quarters: 3 })).toEqual([]);
    const points = (turn: Turn) =>
      ribbons(turn, usualView(73))[0]?.points.length ?? 0;
    const once = points({ layer: "R", quarters: 1 });
    expect(points({ layer: "R", quarters: 2 })).not.toBe(once);
  });

  it("ends where the design's picture of a set-up has it", () => {
    // practise-mycube: 92 pixels a cubie, centre at 344, 320; R' ends on the
    // front at about 367, 510 and starts on top at about 473, 160.
    const [ribbon] = ribbons({ layer: "R", quarters: 3 }, usualView(92));
    expect(Math.abs((ribbon?.tip.x ?? NaN) + 344 - 367)).toBeLessThan(4);
    expect(Math.abs((ribbon?.tip.y ?? NaN) + 320 - 510)).toBeLessThan(4);
    expect(Math.abs((ribbon?.tail.x ?? NaN) + 344 - 473)).toBeLessThan(5);
    expect(Math.abs((ribbon?.tail.y ?? NaN) + 320 - 160)).toBeLessThan(5);
  });
});
