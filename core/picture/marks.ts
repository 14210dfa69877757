/**
 * What is drawn on top of stickers: what is written on them, the piece's outline, its home,
 * rings and mistaken places.
 *
 * Every mark is a light line on a dark one (or the other way about), so that
 * one of the two stands out by at least 3:1 from whatever sticker is beneath
 * it (WCAG 2.2, 1.4.11).
 */
import { contrast, mixed } from "./colours";
import {
  type FaceletPlace,
  faceletPlace,
  faceletsOfCubie,
} from "./cube-layout";
import type { DrawingContext } from "./drawing-context";
import { faceletSquare, facesViewer } from "./facelet-square";
import {
  circlePath,
  type PathShape,
  type PictureShape,
  pathNumber,
  rectangleCorners,
  rectanglePath,
  roundedPolygonPath,
} from "./shapes";
import { type Slab, slabHolds, WHOLE_CUBE } from "./slabs";
import { inkOn, underlying, writingOn } from "./sticker-writing";
import type { Vector } from "./vector";

/** Which facelets carry which mark. Facelets are those before a running turn. */
export interface Marks {
  /** The pieces to bring home: the facelets of each. */
  readonly pieces: readonly (readonly number[])[];
  readonly home: readonly number[];
  readonly rings: readonly number[];
  /** Where a sticker was taken to be. */
  readonly mistaken: readonly number[];
}

/** The edges of the squares that only one of them has, chained to one ring. */
function unionRing(squares: readonly (readonly Vector[])[]): readonly Vector[] {
  const key = (point: Vector) =>
    [point.x, point.y, point.z].map((part) => Math.round(part * 1000)).join();
  const edges = new Map<string, { from: Vector; to: Vector }>();
  for (const square of squares)
    square.forEach((from, i) => {
      const to = square[(i + 1) % square.length] ?? from;
      const back = `${key(to)}>${key(from)}`;
      if (edges.has(back)) edges.delete(back);
      else edges.set(`${key(from)}>${key(to)}`, { from, to });
    });
  const next = new Map(
    [...edges.values()].map((edge) => [key(edge.from), edge]),
  );
  const ring: Vector[] = [];
  let edge = next.values().next().value;
  while (edge !== undefined && ring.length < next.size) {
    ring.push(edge.from);
    edge = next.get(key(edge.to));
  }
  return ring;
}

function outlineWidth(context: DrawingContext): number {
  const { palette, pixelsPerCubie } = context;
  const width =
    palette.theme === "print"
      ? Math.max(2.6, 0.09 * pixelsPerCubie)
      : Math.max(1.6, 0.05 * pixelsPerCubie);
  return context.reflected ? width * 0.8 : width;
}

function outlineShapes(
  context: DrawingContext,
  slab: Slab,
  facelets: readonly number[],
): readonly PathShape[] {
  const { palette, projector, pixelsPerCubie } = context;
  const first = facelets[0];
  if (first === undefined) return [];
  const { cubie } = faceletPlace(first);
  if (!slabHolds(slab, cubie)) return [];
  const squares = faceletsOfCubie(cubie)
    .filter((place) => facesViewer(projector, slab, place))
    .map((place) => rectangleCorners(faceletSquare(slab, place, 0.5, 0)));
  if (squares.length === 0) return [];
  const d = roundedPolygonPath(
    unionRing(squares).map((point) => projector.project(point)),
    0.16 * pixelsPerCubie,
  );
  const width = outlineWidth(context);
  const line = (stroke: string, strokeWidth: number): PathShape => ({
    kind: "path",
    role: "outline",
    d,
    stroke,
    strokeWidth: pathNumber(strokeWidth),
    facelet: first,
  });
  const casing = Math.max(1.6, 0.036 * pixelsPerCubie);
  return [
    line(palette.inks.outlineCasing, width + casing),
    line(palette.inks.outline, width),
  ];
}

/** How much of its own colour a home mark lays over bare plastic. */
const HOME_FILL = 0.3;

function dashedSquare(
  context: DrawingContext,
  slab: Slab,
  place: FaceletPlace,
  role: "home" | "mistaken",
  isOverArrow = false,
): readonly PathShape[] {
  const { palette, projector, pixelsPerCubie } = context;
  const { inks } = palette;
  const under = underlying(context, slab, place);
  const home = role === "home";
  // A coloured sticker keeps its colour: there the dashes are enough.
  const filled = home && context.stickers[place.facelet] === undefined;
  const ground = filled ? mixed(under, inks.home, HOME_FILL) : under;
  const ink = home ? inks.homeDash : inks.mistaken;
  const width = Math.max(1.2, 0.028 * pixelsPerCubie) * (home ? 1 : 1.3);
  const small = pixelsPerCubie < 30;
  const half = small ? 0.33 : 0.335;
  const dashes = [
    pathNumber(Math.max(1.6, 0.105 * pixelsPerCubie)),
    pathNumber(Math.max(0.9, 0.03 * pixelsPerCubie)) + width * 0.6,
  ].map(pathNumber);
  const shapes: PathShape[] = [];
  if (filled && !isOverArrow)
    shapes.push({
      kind: "path",
      role,
      d: rectanglePath(projector, faceletSquare(slab, place, 0.4, 0.13)),
      fill: inks.home,
      fillOpacity: HOME_FILL,
      facelet: place.facelet,
    });
  const d = rectanglePath(projector, faceletSquare(slab, place, half, 0.1));
  if (isOverArrow || contrast(ground, ink) < 3)
    shapes.push({
      kind: "path",
      role,
      d,
      stroke: home ? inks.homeCasing : inks.mistakenCasing,
      strokeWidth: pathNumber(width * 2.4),
      facelet: place.facelet,
    });
  shapes.push({
    kind: "path",
    role,
    d,
    stroke: ink,
    strokeWidth: pathNumber(width),
    dashes,
    facelet: place.facelet,
  });
  return shapes;
}

function ringShapes(
  context: DrawingContext,
  slab: Slab,
  place: FaceletPlace,
): readonly PathShape[] {
  const { projector, pixelsPerCubie } = context;
  const square = faceletSquare(slab, place, 0.5, 0);
  const ink = inkOn(underlying(context, slab, place));
  return [
    {
      kind: "path",
      role: "ring",
      d: circlePath(projector, square.centre, square.column, square.row, 0.25),
      stroke: ink,
      strokeWidth: pathNumber(Math.max(1.4, 0.075 * pixelsPerCubie)),
      facelet: place.facelet,
    },
  ];
}

/** Where a piece is and where it belongs, once more on top of a turn's arrow. */
export function drawMarksOverArrow(
  context: DrawingContext,
  marks: Marks,
): readonly PictureShape[] {
  const homes = marks.home
    .map(faceletPlace)
    .filter((place) => facesViewer(context.projector, WHOLE_CUBE, place));
  return [
    ...homes.flatMap((place) =>
      dashedSquare(context, WHOLE_CUBE, place, "home", true),
    ),
    ...marks.pieces.flatMap((piece) =>
      outlineShapes(context, WHOLE_CUBE, piece),
    ),
  ];
}

/** The marks that belong to one slab, in paint order. */
export function drawMarks(
  context: DrawingContext,
  slab: Slab,
  marks: Marks,
): readonly PictureShape[] {
  const { projector } = context;
  const visible = (facelets: readonly number[]) =>
    facelets
      .map(faceletPlace)
      .filter(
        (place) =>
          slabHolds(slab, place.cubie) && facesViewer(projector, slab, place),
      );
  const { letters, signs } = context.palette;
  const writing =
    letters === undefined && signs === undefined
      ? []
      : visible(context.stickers.map((_, facelet) => facelet))
          .map((place) => writingOn(context, slab, place))
          .filter((shape) => shape !== undefined);
  return [
    ...visible(marks.home).flatMap((place) =>
      dashedSquare(context, slab, place, "home"),
    ),
    ...visible(marks.mistaken).flatMap((place) =>
      dashedSquare(context, slab, place, "mistaken"),
    ),
    ...writing,
    ...visible(marks.rings).flatMap((place) =>
      ringShapes(context, slab, place),
    ),
    ...marks.pieces.flatMap((piece) => outlineShapes(context, slab, piece)),
  ];
}
