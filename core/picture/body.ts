/** The cube's plastic and stickers, slab by slab. */
import { FACES, type Face } from "../cube/faces";
import { contrast, mixed, shaded } from "./colours";
import {
  FACE_FRAMES,
  FACELET_PLACES,
  type FaceletPlace,
  HALF_CUBE,
} from "./cube-layout";
import type { DrawingStyle } from "./drawing-style";
import type { CubePalette } from "./palette";
import type { Point, Projector } from "./projection";
import {
  type PathShape,
  type PictureGradient,
  type PictureShape,
  pathNumber,
  polygonPath,
  rectangleCorners,
  rectanglePath,
  type SpaceRectangle,
} from "./shapes";
import { inSlab, type Slab, slabHolds } from "./slabs";
import { dot, minus, plus, times, type Vector, vector } from "./vector";

/** What is drawn and with what. */
export interface BodyContext {
  readonly projector: Projector;
  readonly palette: CubePalette;
  readonly style: DrawingStyle;
  readonly pixelsPerCubie: number;
  readonly stickers: readonly (Face | undefined)[];
  /** Set where the cube is seen in a mirror: colours pale, and no side is in shade. */
  readonly reflected?: boolean;
}

/** Where a pointer finds a facelet. */
export interface FaceletTarget {
  readonly facelet: number;
  /** The facelet's own square. */
  readonly corners: readonly Point[];
  /** One cubie along the facelet's column and row directions, on the paper. */
  readonly column: Point;
  readonly row: Point;
}

/** What drawing a slab gives. */
export interface SlabDrawing {
  readonly shapes: readonly PictureShape[];
  /** Colour ramps, numbered from the `firstGradient` that was passed in. */
  readonly gradients: readonly PictureGradient[];
  readonly targets: readonly FaceletTarget[];
}

/** RGB multiplier of each face of a cube at rest. */
const FACE_SHADES: Readonly<Record<Face, number>> = {
  U: 1,
  R: 0.88,
  F: 0.95,
  D: 0.8,
  L: 0.86,
  B: 0.86,
};

/**
 * RGB multiplier of a surface.
 *
 * The six faces' shades weighted by the squares of the normal's parts: equal
 * to the table for a cube at rest, and without a jump when a layer starts or
 * comes to rest, which a light vector of its own would give.
 */
export function shadeOf(normal: Vector): number {
  let shade = 0;
  for (const face of FACES) {
    const part = dot(normal, FACE_FRAMES[face].normal);
    if (part > 0) shade += part * part * FACE_SHADES[face];
  }
  return shade;
}

function glassTint(palette: CubePalette): string {
  return mixed(palette.inks.glassLight, palette.inks.glassDark, 0.5);
}

function plastic(context: BodyContext, hex: string, normal: Vector): string {
  const { palette } = context;
  return context.reflected === true
    ? mixed(hex, glassTint(palette), palette.inks.plasticHaze)
    : shaded(hex, palette.theme === "print" ? 1 : shadeOf(normal));
}

function sticker(context: BodyContext, face: Face, normal: Vector): string {
  const { palette } = context;
  const hex = palette.faces[face];
  return context.reflected === true
    ? mixed(hex, glassTint(palette), palette.inks.stickerHaze)
    : shaded(hex, palette.theme === "print" ? 1 : shadeOf(normal));
}

/** A square of a facelet's own, in its slab: the tile, the sticker, a mark. */
export function faceletSquare(
  slab: Slab,
  place: FaceletPlace,
  half: number,
  radius: number,
): SpaceRectangle {
  return {
    centre: inSlab(slab, place.centre),
    column: inSlab(slab, place.frame.column),
    row: inSlab(slab, place.frame.row),
    halfColumn: half,
    halfRow: half,
    radius,
  };
}

/** Whether a facelet shows itself. */
export function facesViewer(
  projector: Projector,
  slab: Slab,
  place: FaceletPlace,
): boolean {
  return projector.facesViewer(
    inSlab(slab, place.centre),
    inSlab(slab, place.frame.normal),
  );
}

/** One side of a slab, before it is turned. */
interface SlabSide {
  readonly face: Face;
  readonly rectangle: SpaceRectangle;
  readonly isCut: boolean;
}

function slabSides(slab: Slab, lineHalf: number): readonly SlabSide[] {
  // The line around a face would reach over a cut and hide the neighbour's
  // tiles, so faces end half a line before it.
  const low = slab.low > -HALF_CUBE ? slab.low + lineHalf : slab.low;
  const high = slab.high < HALF_CUBE ? slab.high - lineHalf : slab.high;
  const middle = { x: 0, y: 0, z: 0, [slab.axis]: (low + high) / 2 };
  const half = {
    x: HALF_CUBE,
    y: HALF_CUBE,
    z: HALF_CUBE,
    [slab.axis]: (high - low) / 2,
  };
  const extent = (direction: Vector) =>
    Math.abs(direction.x) * half.x +
    Math.abs(direction.y) * half.y +
    Math.abs(direction.z) * half.z;
  return FACES.map((face): SlabSide => {
    const { normal, column, row } = FACE_FRAMES[face];
    const along = normal[slab.axis];
    const edge = along > 0 ? slab.high : slab.low;
    return {
      face,
      rectangle: {
        centre: plus(
          vector(middle.x, middle.y, middle.z),
          times(normal, extent(normal)),
        ),
        column,
        row,
        halfColumn: extent(column),
        halfRow: extent(row),
        radius: 0,
      },
      isCut: along !== 0 && Math.abs(edge) < HALF_CUBE,
    };
  });
}

function turnedRectangle(slab: Slab, shape: SpaceRectangle): SpaceRectangle {
  return {
    ...shape,
    centre: inSlab(slab, shape.centre),
    column: inSlab(slab, shape.column),
    row: inSlab(slab, shape.row),
  };
}

// How dark the plastic inside the cut is, against the body's.
const CUT_SHADE = 0.86;

function bodyShapes(
  context: BodyContext,
  slab: Slab,
  side: SlabSide,
): PathShape {
  const { palette, projector, style, pixelsPerCubie } = context;
  const normal = inSlab(slab, FACE_FRAMES[side.face].normal);
  const corners = rectangleCorners(turnedRectangle(slab, side.rectangle));
  const colour = side.isCut
    ? shaded(palette.inks.gap, CUT_SHADE)
    : plastic(context, palette.inks.gap, normal);
  return {
    kind: "path",
    role: side.isCut ? "cut" : "body",
    d: polygonPath(corners.map((corner) => projector.project(corner))),
    fill: colour,
    stroke: colour,
    strokeWidth: style.bodyLine * pixelsPerCubie,
  };
}

function tileShapes(
  context: BodyContext,
  slab: Slab,
  place: FaceletPlace,
): readonly PathShape[] {
  const { palette, projector, style, pixelsPerCubie } = context;
  const { inks } = palette;
  const normal = inSlab(slab, place.frame.normal);
  const path = (half: number, radius: number) =>
    rectanglePath(projector, faceletSquare(slab, place, half, radius));
  const face = context.stickers[place.facelet];
  const reflected = context.reflected === true;
  const shapes: PathShape[] = [];
  if (face === undefined) {
    shapes.push({
      kind: "path",
      role: "tile",
      d: reflected ? path(0.445, 0.1) : path(style.tileHalf, style.tileRadius),
      fill: plastic(context, inks.bare, normal),
      facelet: place.facelet,
    });
    if (style.plateHalf !== undefined && !reflected)
      shapes.push({
        kind: "path",
        role: "tile",
        d: path(style.plateHalf, style.plateRadius),
        fill: plastic(context, inks.plate, normal),
        ...(palette.theme === "print"
          ? { stroke: "#d2d2d2", strokeWidth: style.stickerLine }
          : {}),
        facelet: place.facelet,
      });
    return shapes;
  }
  if (!reflected && style.innerLine > 0)
    shapes.push({
      kind: "path",
      role: "tile",
      d: path(style.tileHalf, style.tileRadius),
      fill: plastic(context, inks.tile, normal),
      facelet: place.facelet,
    });
  const colour = sticker(context, face, normal);
  const line = style.innerLine * pixelsPerCubie;
  shapes.push({
    kind: "path",
    role: "sticker",
    d: reflected
      ? path(0.445, 0.1)
      : path(style.stickerHalf, style.stickerRadius),
    fill: colour,
    ...(style.stickerLine > 0
      ? { stroke: "#000000", strokeWidth: style.stickerLine }
      : {}),
    facelet: place.facelet,
  });
  if (line > 0 && !reflected)
    shapes.push({
      kind: "path",
      role: "sticker",
      d: path(
        style.stickerHalf - style.innerLine / 2,
        style.stickerRadius - style.innerLine / 2,
      ),
      stroke: "#ffffff",
      strokeWidth: line,
      strokeOpacity:
        contrast(palette.faces[face], "#ffffff") < 1.3 ? 0.6 : 0.16,
      facelet: place.facelet,
    });
  return shapes;
}

// Where down a side the sheen turns from light to dark.
const SHEEN_STOPS: PictureGradient["stops"] = [
  { offset: 0, colour: "#ffffff", opacity: 0.05 },
  { offset: 0.6, colour: "#ffffff", opacity: 0 },
  { offset: 0.6, colour: "#000000", opacity: 0 },
  { offset: 1, colour: "#000000", opacity: 0.13 },
];

/**
 * The light on a side: from 5% white at the cube's top to 13% black at its
 * bottom, along the steepest way down; none on a level surface.
 */
function sheen(
  context: BodyContext,
  slab: Slab,
  side: SlabSide,
  gradient: number,
): { shape: PathShape; ramp: PictureGradient } | undefined {
  const { projector } = context;
  const normal = inSlab(slab, FACE_FRAMES[side.face].normal);
  const steepness = 1 - normal.y * normal.y;
  if (steepness < 0.02) return undefined;
  const rectangle = turnedRectangle(slab, side.rectangle);
  const up = minus(vector(0, 1, 0), times(normal, normal.y));
  const level = vector(normal.z, 0, -normal.x);
  // Along `up` the height changes by `steepness` per step.
  const at = (height: number) =>
    plus(
      rectangle.centre,
      times(up, (height - rectangle.centre.y) / steepness),
    );
  const top = projector.project(at(HALF_CUBE));
  const bottom = projector.project(at(-HALF_CUBE));
  const beside = projector.project(plus(at(0), level));
  const middle = projector.project(at(0));
  // Colours of a ramp are constant across it: lean it so that they follow
  // the level lines of the side.
  const levelX = beside.x - middle.x;
  const levelY = beside.y - middle.y;
  const length = Math.hypot(levelX, levelY);
  if (length < 1e-6) return undefined;
  const across =
    ((bottom.x - top.x) * -levelY + (bottom.y - top.y) * levelX) / length;
  return {
    shape: {
      kind: "path",
      role: "sheen",
      d: polygonPath(
        rectangleCorners(rectangle).map((corner) => projector.project(corner)),
      ),
      gradient,
      fillOpacity: pathNumber(steepness),
    },
    ramp: {
      from: top,
      to: {
        x: top.x + (-levelY / length) * across,
        y: top.y + (levelX / length) * across,
      },
      stops: SHEEN_STOPS,
    },
  };
}

function targetOf(
  projector: Projector,
  slab: Slab,
  place: FaceletPlace,
): FaceletTarget {
  const square = faceletSquare(slab, place, 0.5, 0);
  const along = (direction: Vector): Point => {
    const a = projector.project(minus(square.centre, times(direction, 0.5)));
    const b = projector.project(plus(square.centre, times(direction, 0.5)));
    return { x: b.x - a.x, y: b.y - a.y };
  };
  return {
    facelet: place.facelet,
    corners: rectangleCorners(square).map((corner) =>
      projector.project(corner),
    ),
    column: along(square.column),
    row: along(square.row),
  };
}

/** One slab: its plastic, its tiles and stickers, and the light on its sides. */
export function drawSlab(
  context: BodyContext,
  slab: Slab,
  firstGradient: number,
): SlabDrawing {
  const { projector, style, palette } = context;
  const shapes: PictureShape[] = [];
  const gradients: PictureGradient[] = [];
  const targets: FaceletTarget[] = [];
  const lineHalf = (style.bodyLine * 1) / 2;
  const sides = slabSides(slab, lineHalf).filter((side) => {
    const shape = turnedRectangle(slab, side.rectangle);
    return projector.facesViewer(
      shape.centre,
      inSlab(slab, FACE_FRAMES[side.face].normal),
    );
  });
  const bodies = sides.map((side) => bodyShapes(context, slab, side));
  const silhouette = palette.inks.silhouette;
  if (silhouette !== undefined && context.reflected !== true)
    for (const body of bodies)
      shapes.push({
        ...body,
        fill: silhouette,
        stroke: silhouette,
        strokeWidth: (body.strokeWidth ?? 0) + 2,
      });
  shapes.push(...bodies);
  for (const side of sides) {
    if (side.isCut) continue;
    for (const place of FACELET_PLACES) {
      if (place.face !== side.face || !slabHolds(slab, place.cubie)) continue;
      shapes.push(...tileShapes(context, slab, place));
      targets.push(targetOf(projector, slab, place));
    }
    if (!style.sheen || context.reflected === true) continue;
    const light = sheen(context, slab, side, firstGradient + gradients.length);
    if (light === undefined) continue;
    shapes.push(light.shape);
    gradients.push(light.ramp);
  }
  return { shapes, gradients, targets };
}
