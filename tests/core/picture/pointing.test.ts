import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import {
  faceletPoint,
  targetAt,
  turnForDrag,
} from "../../../core/picture/pointing";
import { perspective, usualView } from "../../../core/picture/projection";
import { afterTurns, solvedStickers } from "../../oracles/geometric-cube";
import { pictureOf } from "./pictures-for-tests";

const FROM_RIGHT = pictureOf({ mirrors: { floor: true, left: true } });

function dragged(
  facelet: number,
  x: number,
  y: number,
  mirrored = false,
): Turn {
  const target = FROM_RIGHT.targets.find(
    (candidate) =>
      candidate.facelet === facelet &&
      (candidate.mirror !== undefined) === mirrored,
  );
  if (target === undefined) throw new Error(`${facelet} is not seen`);
  return turnForDrag(target, { x, y });
}

describe("pointing", () => {
  it("finds each facelet at its own middle, directly or in its mirror", () => {
    for (let facelet = 0; facelet < 54; facelet++) {
      const direct = faceletPoint(FROM_RIGHT, facelet);
      if (direct !== undefined)
        expect(targetAt(FROM_RIGHT, direct)?.facelet).toBe(facelet);
      // U, F, R are seen; D and L are in mirrors; B is not.
      expect(direct !== undefined).toBe(facelet < 27);
    }
    const below = faceletPoint(FROM_RIGHT, 29, true);
    const found = below && targetAt(FROM_RIGHT, below);
    expect(found).toMatchObject({ facelet: 29, mirror: "floor" });
  });

  it("finds nothing beside the cube", () => {
    expect(targetAt(FROM_RIGHT, { x: 170, y: -170 })).toBeUndefined();
    expect(targetAt(FROM_RIGHT, { x: 0, y: 400 })).toBeUndefined();
  });
});

describe("dragging a sticker", () => {
  it("turns the layer as a hand would (directions of WCA 12a)", () => {
    // On the front: down on the right is R', up is R; to the right along the
    // bottom is D, along the top U'; the middle moves with the slices.
    expect(dragged(26, 0, 40)).toEqual({ layer: "R", quarters: 3 });
    expect(dragged(26, 0, -40)).toEqual({ layer: "R", quarters: 1 });
    expect(dragged(26, 40, 10)).toEqual({ layer: "D", quarters: 1 });
    expect(dragged(26, -40, -10)).toEqual({ layer: "D", quarters: 3 });
    expect(dragged(18, 40, 10)).toEqual({ layer: "U", quarters: 3 });
    expect(dragged(18, 0, 40)).toEqual({ layer: "L", quarters: 1 });
    expect(dragged(22, 0, 40)).toEqual({ layer: "M", quarters: 1 });
    expect(dragged(22, 40, 10)).toEqual({ layer: "E", quarters: 1 });
    // On the right side: up along its front is F', along its back B.
    expect(dragged(9, 0, -40)).toEqual({ layer: "F", quarters: 3 });
    expect(dragged(11, 0, -40)).toEqual({ layer: "B", quarters: 1 });
    // On top, to the right along the front edge is F.
    expect(dragged(7, 40, 8)).toEqual({ layer: "F", quarters: 1 });
  });

  it("works in the floor's mirror", () => {
    // Down there, the front of the bottom to the right turns the front layer:
    // its bottom goes right, which is F'.
    expect(dragged(28, 40, 10, true)).toEqual({ layer: "F", quarters: 3 });
  });

  it("takes the sticker to the side that the drag points to, whatever sticker, way and view", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: -60, max: 60 }),
        fc.integer({ min: 0, max: 53 }),
        fc.integer({ min: 0, max: 359 }),
        (yaw, pitch, facelet, degrees) => {
          const view = { ...usualView(73), yaw, pitch };
          const angle = (degrees * Math.PI) / 180;
          const drag = { x: 40 * Math.cos(angle), y: 40 * Math.sin(angle) };
          const target = pictureOf({ view }).targets.find(
            (candidate) => candidate.facelet === facelet,
          );
          const sticker = solvedStickers()[facelet];
          fc.pre(target !== undefined && sticker !== undefined);
          const { layer, quarters } = turnForDrag(target, drag);
          // Where the independent cube has the sticker after that turn: it
          // faces the way it went.
          const after = afterTurns(
            [sticker],
            `${layer}${quarters === 3 ? "'" : ""}`,
          );
          const way = after[0]?.facing ?? sticker.facing;
          const { project } = perspective(view);
          const step = (sign: number) => {
            const [x = 0, y = 0, z = 0] = sticker.at.map(
              (part, i) =>
                part +
                0.5 * (sticker.facing[i] ?? 0) +
                sign * 0.5 * (way[i] ?? 0),
            );
            return project({ x, y, z });
          };
          const from = step(-1);
          const to = step(1);
          expect(way).not.toEqual(sticker.facing);
          expect(
            (to.x - from.x) * drag.x + (to.y - from.y) * drag.y,
          ).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 200 },
    );
  });
});
