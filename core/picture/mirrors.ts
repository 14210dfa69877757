/**
 * Mirrors for the sides that the view hides.
 *
 * What a mirror shows is the cube seen along parallel rays from that side,
 * laid onto the glass with its axes kept, and then seen like everything else.
 * That makes a true reflection of a cube at rest and of a turning layer alike.
 */
import { drawSlab } from "./body";
import type { DrawingContext } from "./drawing-context";
import { reflectedStyle } from "./drawing-style";
import type { FaceletTarget } from "./facelet-square";
import { drawMarks, type Marks } from "./marks";
import {
  type Glass,
  glassOf,
  glassProjector,
  type Mirror,
  mirrorMeasures,
} from "./mirror-glass";
import {
  drawWord,
  type MirrorWord,
  WORD_SIZE,
  wordCorners,
} from "./mirror-words";
import { hull, outlinePoints } from "./plate-outline";
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
import { onPlane, type Vector, vector } from "./vector";

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
  /** The glass' corners, and those of its word where its size was asked for, for the bounds of the picture. */
  readonly corners: readonly Point[];
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

interface RaysAndWord {
  readonly rays: readonly PictureShape[];
  readonly word: MirrorWord;
}

function raysAndWord(
  mirror: Mirror,
  glass: Glass,
  projector: Projector,
  context: DrawingContext,
  wordSize: number,
): RaysAndWord {
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
    strokeWidth: 1.2,
    dashes: [2, 3],
  });
  // A wide word has the slant of the glass under it.
  const above = 17 + 0.4 * (wordSize - WORD_SIZE);
  const leftHanded = projector.eyeAlong("x") < 0;
  const near = leftHanded ? 1 : -1;
  switch (mirror) {
    case "floor": {
      const { x, y } = on(-near, 0.1);
      return {
        rays: [
          ray(vector(near * 1.5, -1.5, 1.5), on(near, 1)),
          ray(vector(-near * 1.5, -1.5, -1.5), on(-near, -1)),
        ],
        word: leftHanded
          ? { text: "bottom", x: x - 16, y, anchor: "end" }
          : { text: "bottom", x: x + 16, y, anchor: "start" },
      };
    }
    case "left":
    case "right": {
      const sign = mirror === "left" ? -1 : 1;
      const { x, y } = on(0, -1);
      return {
        rays: [ray(vector(sign * 1.5, -1.5, 1.5), on(sign, 1))],
        word: { text: mirror, x, y: y - above, anchor: "middle" },
      };
    }
    case "back": {
      const { x, y } = on(0, -1);
      return {
        rays: [],
        word: { text: "back", x, y: y - above, anchor: "middle" },
      };
    }
  }
}

/** One mirror with what it shows. */
export function drawMirror(
  context: DrawingContext,
  view: CubeView,
  mirror: Mirror,
  marks: Marks,
  turning: Turning | undefined,
  firstGradient: number,
  wordSize: number | undefined,
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
  const round = outlinePoints(plate).map((point) => projector.project(point));
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
      fill: inks.shadowColour,
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
  const reflected: DrawingContext = {
    ...context,
    projector: onGlass,
    reflected: true,
    style: reflectedStyle(style, glass.scale),
    palette: print
      ? { ...palette, inks: { ...inks, gap: inks.glassLight } }
      : palette,
  };
  const reflection: PictureShape[] = [];
  const targets: FaceletTarget[] = [];
  for (const slab of slabsInPaintOrder(turning, onGlass)) {
    const drawing = drawSlab(reflected, slab, 0);
    reflection.push(...drawing.shapes, ...drawMarks(reflected, slab, marks));
    targets.push(...drawing.targets);
  }
  const [first, , third] = corners;
  const size = wordSize ?? WORD_SIZE;
  const told = measures.explained
    ? raysAndWord(mirror, glass, projector, context, size)
    : undefined;
  return {
    mirror,
    behind,
    reflection,
    clip: plateD,
    inFront: [
      ...glints(glass, projector, inks.glints),
      ...(told === undefined
        ? []
        : [...told.rays, drawWord(told.word, size, inks.word)]),
    ],
    gradients: [
      {
        from: first ?? { x: 0, y: 0 },
        to: third ?? { x: 0, y: 0 },
        stops: [
          { offset: 0, colour: inks.glassLight, opacity: 1 },
          {
            offset: 1,
            colour: inks.glassDark,
            opacity: 1,
          },
        ],
      },
    ],
    targets,
    corners:
      told === undefined || wordSize === undefined
        ? corners
        : [...corners, ...wordCorners(told.word, size)],
  };
}
