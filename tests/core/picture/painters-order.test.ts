/**
 * The painter's order against ray casting.
 *
 * The picture is asked which shape is on top at a point; the check shoots a
 * ray through the same point at 27 real boxes, turned by a matrix of its own,
 * and looks what it meets first. Nothing of the projection, of the slabs or of
 * their order is used in the check.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import type { CubeView } from "../../../core/picture/projection";
import {
  ALL_TURNS,
  isInside,
  pathsOf,
  pictureOf,
  pointsOn,
} from "./pictures-for-tests";
import { solvedStickers } from "../../oracles/geometric-cube";

type Triple = [number, number, number];

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Rotates about a coordinate axis, right-handed. */
function about(axis: 0 | 1 | 2, degrees: number, v: Triple): Triple {
  const c = Math.cos(radians(degrees));
  const s = Math.sin(radians(degrees));
  const i = ((axis + 1) % 3) as 0 | 1 | 2;
  const j = ((axis + 2) % 3) as 0 | 1 | 2;
  const out: Triple = [...v];
  out[i] = v[i] * c - v[j] * s;
  out[j] = v[i] * s + v[j] * c;
  return out;
}

// WCA 12a: clockwise as seen from the named face; M, E, S with L, D, F.
const LAYERS: Readonly<
  Record<
    string,
    readonly [axis: 0 | 1 | 2, coordinates: number[], clockwise: number]
  >
> = {
  R: [0, [1], -90],
  M: [0, [0], 90],
  L: [0, [-1], 90],
  U: [1, [1], -90],
  E: [1, [0], 90],
  D: [1, [-1], 90],
  F: [2, [1], -90],
  S: [2, [0], -90],
  B: [2, [-1], 90],
  Rw: [0, [0, 1], -90],
  Lw: [0, [-1, 0], 90],
  Uw: [1, [0, 1], -90],
  Dw: [1, [-1, 0], 90],
  Fw: [2, [0, 1], -90],
  Bw: [2, [-1, 0], 90],
  x: [0, [-1, 0, 1], -90],
  y: [1, [-1, 0, 1], -90],
  z: [2, [-1, 0, 1], -90],
};

interface Scene {
  readonly view: CubeView;
  readonly turn: Turn;
  readonly progress: number;
}

/** The facelet a ray meets first, "inside" for a cut face, "beside" for none. */
function firstMet({ view, turn, progress }: Scene, x: number, y: number) {
  const toWorld = (v: Triple) => about(1, view.yaw, about(0, -view.pitch, v));
  const eye = toWorld([0, 0, view.distance]);
  const ray = toWorld([
    x / view.pixelsPerCubie,
    -y / view.pixelsPerCubie,
    -view.distance,
  ]);
  const [axis, coordinates, clockwise] = LAYERS[turn.layer] ?? [0, [], 0];
  const degrees =
    clockwise * (turn.quarters === 3 ? -1 : turn.quarters) * progress;
  let nearest = Infinity;
  let met: number | "inside" | "beside" = "beside";
  for (const turns of [false, true]) {
    const back = turns ? -degrees : 0;
    const from = about(axis, back, eye);
    const along = about(axis, back, ray);
    for (const cx of [-1, 0, 1])
      for (const cy of [-1, 0, 1])
        for (const cz of [-1, 0, 1]) {
          const cubie: Triple = [cx, cy, cz];
          if (coordinates.includes(cubie[axis]) !== turns) continue;
          for (const i of [0, 1, 2] as const)
            for (const side of [-1, 1] as const) {
              const plane = cubie[i] + side * 0.5;
              const t = (plane - from[i]) / along[i];
              if (!(t > 0 && t < nearest)) continue;
              const inBox = ([0, 1, 2] as const).every(
                (k) =>
                  k === i || Math.abs(from[k] + t * along[k] - cubie[k]) <= 0.5,
              );
              if (!inBox) continue;
              nearest = t;
              met =
                side === cubie[i]
                  ? (FACELET_AT.get(`${cubie.join()} ${i} ${side}`) ?? NaN)
                  : "inside";
            }
        }
  }
  return met;
}

/** Facelets by their cubie, the axis they face along, and which way. */
const FACELET_AT: ReadonlyMap<string, number> = new Map(
  solvedStickers().map((sticker, facelet) => {
    const axis = sticker.facing.findIndex((part) => part !== 0);
    return [
      `${sticker.at.join()} ${axis} ${sticker.facing[axis] ?? 0}`,
      facelet,
    ];
  }),
);

/** What is on top in the picture. */
function topmost(
  paths: readonly {
    facelet: number | undefined;
    role: string;
    points: readonly { x: number; y: number }[];
  }[],
  x: number,
  y: number,
) {
  const top = paths.findLast((path) => isInside(path.points, { x, y }));
  if (top === undefined) return "beside";
  return top.facelet ?? (top.role === "cut" ? "inside" : "body");
}

// Whole numbers, because fast-check's doubles crowd around zero.
const scenes = fc.record({
  view: fc.record({
    yaw: fc.integer({ min: -180, max: 180 }),
    pitch: fc.integer({ min: -75, max: 75 }),
    distance: fc.constant(19),
    pixelsPerCubie: fc.constant(73),
  }),
  turn: fc.constantFrom(...ALL_TURNS),
  progress: fc.integer({ min: 2, max: 98 }).map((n) => n / 100),
});

// Rims, rounded corners and the line around the body are left out: a point is
// judged only where the ray, moved a little to all sides, meets the same.
// Inside a cut there are no tiles, only the neighbour's line.
const around = (margin: number) =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((k) => [
    margin * 73 * Math.cos((k * Math.PI) / 4),
    margin * 73 * Math.sin((k * Math.PI) / 4),
  ]);
const AROUND_TILE = around(0.13);
const AROUND_INSIDE = around(0.05);

/** Asks the picture and the rays at each point, and counts what was asked. */
function judge(scene: Scene, points: readonly (readonly [number, number])[]) {
  const picture = pictureOf({
    view: scene.view,
    turning: { turn: scene.turn, progress: scene.progress },
  });
  const paths = pathsOf(picture, ["body", "cut", "tile", "sticker"], "cube")
    .filter((path) => path.fill !== undefined)
    .map((path) => ({
      facelet: path.facelet,
      role: path.role,
      points: pointsOn(path),
    }));
  const wrong: string[] = [];
  let judged = 0;
  let insides = 0;
  for (const [x, y] of points) {
    const met = firstMet(scene, x, y);
    const ring = met === "inside" ? AROUND_INSIDE : AROUND_TILE;
    const clear = ring.every(
      ([dx = 0, dy = 0]) => firstMet(scene, x + dx, y + dy) === met,
    );
    if (!clear) continue;
    judged += 1;
    if (met === "inside") insides += 1;
    const shown = topmost(paths, x, y);
    if (shown !== met) wrong.push(`${x} ${y}: ${shown}, not ${met}`);
  }
  return { wrong, judged, insides };
}

const GRID = Array.from({ length: 31 }, (_, i) =>
  Array.from(
    { length: 31 },
    (_unused, k) => [i * 11 - 165, k * 11 - 165] as const,
  ),
).flat();

describe("painter's order", () => {
  it("shows at every point what is nearest there, however a layer is turned", () => {
    let judged = 0;
    fc.assert(
      fc.property(
        scenes,
        fc.array(
          fc.tuple(
            fc.integer({ min: -180, max: 180 }),
            fc.integer({ min: -180, max: 180 }),
          ),
          { minLength: 12, maxLength: 12 },
        ),
        (scene, points) => {
          const found = judge(scene, points);
          judged += found.judged;
          expect(found.wrong).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
    // The claim would be empty if hardly a point had been judged.
    expect(judged).toBeGreaterThan(500);
  }, 20_000);

  it("shows the inside where a half-turned layer opens the cube, and nothing else there", () => {
    let insides = 0;
    for (const layer of ["R", "F", "D", "M", "E", "S", "Lw"] as const)
      for (const [yaw, pitch] of [
        [25, 25],
        [-25, 25],
        [25, -50],
      ] as const) {
        const found = judge(
          {
            view: { yaw, pitch, distance: 19, pixelsPerCubie: 73 },
            turn: { layer, quarters: 1 },
            progress: 0.45,
          },
          GRID,
        );
        insides += found.insides;
        expect(found.wrong).toEqual([]);
      }
    expect(insides).toBeGreaterThan(100);
  }, 20_000);
});
