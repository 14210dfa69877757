/**
 * Mirrors for the sides that the view hides.
 *
 * What a mirror shows is the cube seen along parallel rays from that side,
 * laid onto the glass with its axes kept, and then seen like everything else.
 * That makes a true reflection of a cube at rest and of a turning layer alike.
 */
import type { Face } from "../cube/faces";
import { type BodyContext, drawSlab, type FaceletTarget } from "./body";
import { mixed } from "./colours";
import { FACE_FRAMES } from "./cube-layout";
import { drawMarks, type Marks } from "./marks";
import type { CubeView, Point, Projector } from "./projection";
import {
  linePath,
  type PathShape,
  type PictureGradient,
  type PictureShape,
  pathNumber,
  polygonPath,
  rectangleCorners,
  rectanglePath,
  type SpaceRectangle,
} from "./shapes";
import { slabsInPaintOrder, type Turning } from "./slabs";
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

/** A mirror's glass in space. */
interface Glass {
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

const FLOOR_TILT = 10;
const SIDE_SWING = 30;
const SIDE_DROP = 0.3;

function glassMargin(scale: number): number {
  return 0.17 * Math.sqrt(scale);
}

function sideGlass(measures: MirrorMeasures, mirror: "left" | "right"): Glass {
  const scale = measures.sideScale;
  const half = 1.5 * scale + glassMargin(scale);
  const sign = mirror === "left" ? -1 : 1;
  const swing = (SIDE_SWING * Math.PI) / 180;
  const forward = vector(sign * Math.sin(swing), 0, Math.cos(swing));
  const hinge = vector(sign * (1.5 + measures.sideOut), -SIDE_DROP, -1.5);
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

function glassOf(
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
        centre: vector(0, -1.5 - measures.floorDrop, 0),
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
      return sideGlass(measures, mirror);
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
          sign * (0.45 + half),
          -SIDE_DROP,
          -1.5 - measures.sideOut,
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

function glassProjector(
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

/** What a mirror adds to a picture. */
export interface MirrorDrawing {
  readonly mirror: Mirror;
  /** The glass with its edge and shadow. */
  readonly behind: readonly PictureShape[];
  /** What it shows; to be kept within `clip`. */
  readonly reflection: readonly PictureShape[];
  readonly clip: string;
  readonly inFront: readonly PictureShape[];
  readonly gradients: readonly PictureGradient[];
  readonly targets: readonly FaceletTarget[];
  /** The glass' corners, for the bounds of the picture. */
  readonly corners: readonly Point[];
}

/** The smallest convex ring around points, for a plate with its edge. */
function hull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (ordered: readonly Point[]) => {
    const chain: Point[] = [];
    for (const point of ordered) {
      for (;;) {
        const b = chain.at(-1);
        const a = chain.at(-2);
        if (a === undefined || b === undefined) break;
        const turn =
          (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
        if (turn > 0) break;
        chain.pop();
      }
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}

function roundedCorners(shape: SpaceRectangle): readonly Vector[] {
  const corners = [
    [1, 1, 0],
    [-1, 1, 90],
    [-1, -1, 180],
    [1, -1, 270],
  ] as const;
  return corners.flatMap(([along, across, start]) =>
    Array.from({ length: 7 }, (_, i) => {
      const angle = ((start + i * 15) * Math.PI) / 180;
      return onPlane(
        shape.centre,
        shape.column,
        along * (shape.halfColumn - shape.radius) +
          Math.cos(angle) * shape.radius,
        shape.row,
        across * (shape.halfRow - shape.radius) +
          Math.sin(angle) * shape.radius,
      );
    }),
  );
}

function glints(
  glass: Glass,
  projector: Projector,
  opacities: readonly [number, number],
): readonly PathShape[] {
  const at = (u: number, v: number) =>
    projector.project(
      onPlane(
        glass.centre,
        glass.across,
        (u * 2 - 1) * glass.half,
        glass.down,
        (v * 2 - 1) * glass.half,
      ),
    );
  const band = (from: number, to: number, opacity: number): PathShape => ({
    kind: "path",
    role: "glint",
    d: polygonPath([at(from, 0), at(to, 0), at(0, to), at(0, from)]),
    fill: "#ffffff",
    fillOpacity: opacity,
  });
  return opacities[0] === 0
    ? []
    : [band(0.32, 0.52, opacities[0]), band(0.58, 0.65, opacities[1])];
}

function raysAndWord(
  mirror: Mirror,
  glass: Glass,
  projector: Projector,
  context: BodyContext,
): readonly PictureShape[] {
  const { inks } = context.palette;
  const on = (along: number, across: number) =>
    projector.project(
      onPlane(
        glass.centre,
        glass.across,
        along * glass.half,
        glass.down,
        across * glass.half,
      ),
    );
  const ray = (from: Vector, to: Point): PathShape => ({
    kind: "path",
    role: "ray",
    d: linePath([projector.project(from), to]),
    stroke: inks.ray,
    strokeWidth: 1.3,
    dashes: [0.1, 4],
  });
  const word = (
    text: string,
    x: number,
    y: number,
    anchor: "start" | "middle" | "end",
  ): PictureShape => ({
    kind: "text",
    role: "word",
    text,
    matrix: [1, 0, 0, 1, pathNumber(x), pathNumber(y)],
    fontSize: 13,
    weight: 500,
    anchor,
    fill: inks.word,
  });
  const leftHanded = projector.eyeAlong("x") < 0;
  const near = leftHanded ? 1 : -1;
  switch (mirror) {
    case "floor": {
      const side = on(-near, 0.1);
      return [
        ray(vector(near * 1.5, -1.5, 1.5), on(near, 1)),
        ray(vector(-near * 1.5, -1.5, -1.5), on(-near, -1)),
        leftHanded
          ? word("bottom", side.x - 16, side.y, "end")
          : word("bottom", side.x + 16, side.y, "start"),
      ];
    }
    case "left":
    case "right": {
      const sign = mirror === "left" ? -1 : 1;
      const top = on(0, -1);
      return [
        ray(vector(sign * 1.5, -1.5, 1.5), on(sign, 1)),
        word(mirror, top.x, top.y - 20, "middle"),
      ];
    }
    case "back": {
      const top = on(0, -1);
      return [word("back", top.x, top.y - 20, "middle")];
    }
  }
}

/** One mirror with what it shows. */
export function drawMirror(
  context: BodyContext,
  view: CubeView,
  mirror: Mirror,
  marks: Marks,
  turning: Turning | undefined,
  firstGradient: number,
): MirrorDrawing {
  const { projector, palette, pixelsPerCubie, style } = context;
  const { inks } = palette;
  const print = palette.theme === "print";
  const measures = mirrorMeasures(pixelsPerCubie, print);
  const glass = glassOf(mirror, measures, view);
  const plate: SpaceRectangle = {
    centre: glass.centre,
    column: glass.across,
    row: glass.down,
    halfColumn: glass.half,
    halfRow: glass.half,
    radius: 0.12,
  };
  const corners = rectangleCorners(plate).map((corner) =>
    projector.project(corner),
  );
  const plateD = rectanglePath(projector, plate);
  const round = roundedCorners(plate).map((point) => projector.project(point));
  const deep =
    mirror === "floor"
      ? { x: 0, y: 0.075 * pixelsPerCubie }
      : {
          x: (glass.centre.x < 0 ? -0.085 : 0.085) * pixelsPerCubie,
          y: 0.01 * pixelsPerCubie,
        };
  const frameWidth = pixelsPerCubie >= 30 ? 1.5 : 1;
  const behind: PictureShape[] = [];
  if (inks.shadow > 0 && mirror === "floor")
    behind.push({
      kind: "path",
      role: "shadow",
      d: polygonPath(
        corners.map((corner) => ({
          x: corner.x + 0.16 * pixelsPerCubie,
          y: corner.y + 0.16 * pixelsPerCubie,
        })),
      ),
      fill: "#000000",
      fillOpacity: inks.shadow,
      blur: pathNumber(0.16 * pixelsPerCubie),
    });
  if (!print)
    behind.push({
      kind: "path",
      role: "mirror",
      d: polygonPath(
        hull([
          ...round,
          ...round.map((point) => ({
            x: point.x + deep.x,
            y: point.y + deep.y,
          })),
        ]),
      ),
      fill: inks.plateEdge,
      stroke: inks.plateEdge,
      strokeWidth: frameWidth,
    });
  behind.push({
    kind: "path",
    role: "mirror",
    d: plateD,
    gradient: firstGradient,
    stroke: inks.frame,
    strokeWidth: frameWidth,
  });
  const onGlass = glassProjector(glass, mirror, projector);
  const reflected: BodyContext = {
    ...context,
    projector: onGlass,
    reflected: true,
    style: { ...style, bodyLine: style.bodyLine * glass.scale * 0.7 },
  };
  const reflection: PictureShape[] = [];
  const targets: FaceletTarget[] = [];
  for (const slab of slabsInPaintOrder(turning, onGlass)) {
    const drawing = drawSlab(reflected, slab, 0);
    reflection.push(...drawing.shapes, ...drawMarks(reflected, slab, marks));
    targets.push(...drawing.targets);
  }
  const [first, , third] = corners;
  return {
    mirror,
    behind,
    reflection,
    clip: plateD,
    inFront: [
      ...glints(glass, projector, inks.glints),
      ...(measures.explained
        ? raysAndWord(mirror, glass, projector, context)
        : []),
    ],
    gradients: [
      {
        from: first ?? { x: 0, y: 0 },
        to: third ?? { x: 0, y: 0 },
        stops: [
          { offset: 0, colour: inks.glassLight, opacity: 1 },
          {
            offset: 1,
            colour: mixed(inks.glassLight, inks.glassDark, 1),
            opacity: 1,
          },
        ],
      },
    ],
    targets,
    corners,
  };
}
