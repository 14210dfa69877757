/** Where the mirrors stand, and how the cube comes onto their glass. */
import type { Face } from "../cube/faces";
import { FACE_FRAMES } from "./cube-layout";
import {
  type CubeView,
  HIGH_VIEW,
  type Projector,
  USUAL_VIEW,
} from "./projection";
import { dot, onPlane, times, turned, type Vector, vector } from "./vector";

/** The mirrors there can be. */
export const MIRRORS = ["floor", "left", "right", "back"] as const;

/** One mirror, by where it stands. */
export type Mirror = (typeof MIRRORS)[number];

/** The face a mirror shows. */
export const MIRRORED_FACE: Readonly<Record<Mirror, Face>> = {
  floor: "D",
  left: "L",
  right: "R",
  back: "B",
};

/** How mirrors stand at a size. Units: cubies, and shares of the cube. */
export interface MirrorMeasures {
  readonly floorScale: number;
  readonly floorDrop: number;
  readonly sideScale: number;
  readonly sideOut: number;
  /** Whether words and dotted rays are drawn. */
  readonly explained: boolean;
}

/** The measures for a size, in pixels per cubie. */
export function mirrorMeasures(
  pixelsPerCubie: number,
  print: boolean,
): MirrorMeasures {
  const explained = pixelsPerCubie >= 30 && !print;
  if (pixelsPerCubie >= 50 && !print)
    return {
      floorScale: 0.78,
      floorDrop: 1.95,
      sideScale: 0.72,
      sideOut: 1.75,
      explained,
    };
  if (pixelsPerCubie >= 38 && !print)
    return {
      floorScale: 0.78,
      floorDrop: 1.8,
      sideScale: 0.66,
      sideOut: 1.6,
      explained,
    };
  if (pixelsPerCubie >= 26 && !print)
    return {
      floorScale: 0.78,
      floorDrop: 1.85,
      sideScale: 0.66,
      sideOut: 1.6,
      explained,
    };
  return {
    floorScale: print ? 0.74 : 0.76,
    floorDrop: 1.7,
    sideScale: 0.58,
    sideOut: 1.5,
    explained,
  };
}

/** A mirror's glass in space. Units: cubies. */
export interface Glass {
  /** The middle of what it shows. */
  readonly centre: Vector;
  /** Where the mirrored face's own directions come to lie. */
  readonly column: Vector;
  readonly row: Vector;
  /** As the viewer looks at it: to the right, and down. */
  readonly across: Vector;
  readonly down: Vector;
  readonly scale: number;
  readonly half: number;
}

// The rim of the body, with half the line around it, from which mirrors are
// set out.
const BODY_EDGE = 1.53;
const FLOOR_TILT = 10;
const SIDE_SWING = 30;
const SIDE_DROP = 0.3;

function glassMargin(scale: number): number {
  return 0.17 * Math.sqrt(scale);
}

/**
 * How much further off mirrors stand for a high view, in which the cube would
 * else hide the near edges of what they show. Units: cubies, at most.
 */
const SIDE_AWAY = 0.3;
const BACK_AWAY = 0.5;
const FLOOR_AWAY = 1;

/** From 0 in the usual view to 1 in the high one. */
function height(view: CubeView): number {
  const share =
    (view.pitch - USUAL_VIEW.pitch) / (HIGH_VIEW.pitch - USUAL_VIEW.pitch);
  return Math.min(1, Math.max(0, share));
}

function sideGlass(
  measures: MirrorMeasures,
  mirror: "left" | "right",
  view: CubeView,
): Glass {
  const scale = measures.sideScale;
  const half = 1.5 * scale + glassMargin(scale);
  const sign = mirror === "left" ? -1 : 1;
  const swing = (SIDE_SWING * Math.PI) / 180;
  const forward = vector(sign * Math.sin(swing), 0, Math.cos(swing));
  const out = BODY_EDGE + measures.sideOut + SIDE_AWAY * height(view);
  const hinge = vector(sign * out, -SIDE_DROP, -1.5);
  const down = vector(0, -1, 0);
  return {
    centre: onPlane(hinge, forward, half, down, 0),
    // L is read with its columns towards the front, R towards the back.
    column: mirror === "left" ? forward : times(forward, -1),
    row: down,
    across: mirror === "left" ? times(forward, -1) : forward,
    down,
    scale,
    half,
  };
}

/** Where the glass of a mirror stands. */
export function glassOf(
  mirror: Mirror,
  measures: MirrorMeasures,
  view: CubeView,
): Glass {
  switch (mirror) {
    case "floor": {
      const scale = measures.floorScale;
      // Tilted about the level line across the view, so that the glass
      // leans to the viewer and not to the cube's front.
      const lean = (direction: Vector) =>
        turned(
          turned(turned(direction, "y", -view.yaw), "x", FLOOR_TILT),
          "y",
          view.yaw,
        );
      const across = lean(vector(1, 0, 0));
      const down = lean(vector(0, 0, 1));
      return {
        centre: vector(
          0,
          -BODY_EDGE - measures.floorDrop - FLOOR_AWAY * height(view),
          0,
        ),
        column: across,
        row: times(down, -1),
        across,
        down,
        scale,
        half: 1.5 * scale + glassMargin(scale),
      };
    }
    case "left":
    case "right":
      return sideGlass(measures, mirror, view);
    case "back": {
      // Stands behind, on the side from which the cube is seen, where
      // nothing hides it.
      const scale = measures.sideScale;
      const half = 1.5 * scale + glassMargin(scale);
      const sign = view.yaw < 0 ? -1 : 1;
      const across = turned(vector(1, 0, 0), "y", sign * 12);
      const down = vector(0, -1, 0);
      return {
        centre: vector(
          sign * (0.7 + half + BACK_AWAY * height(view)),
          -SIDE_DROP,
          -BODY_EDGE - measures.sideOut,
        ),
        column: times(across, -1),
        row: down,
        across,
        down,
        scale,
        half,
      };
    }
  }
}

/** The cube as it comes onto the glass, and the glass onto the paper. */
export function glassProjector(
  glass: Glass,
  mirror: Mirror,
  onto: Projector,
): Projector {
  const frame = FACE_FRAMES[MIRRORED_FACE[mirror]];
  return {
    project: (point) =>
      onto.project(
        onPlane(
          glass.centre,
          glass.column,
          dot(point, frame.column) * glass.scale,
          glass.row,
          dot(point, frame.row) * glass.scale,
        ),
      ),
    facesViewer: (_point, normal) => dot(normal, frame.normal) > 1e-9,
    eyeAlong: (axis) => frame.normal[axis] * 1e6,
  };
}
