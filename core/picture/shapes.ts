/** What a picture consists of, and the paths it is drawn with. */
import type { Point, Projector } from "./projection";
import { onPlane, type Vector } from "./vector";

/** What a shape stands for, so that a picture can be asked and tested. */
export type ShapeRole =
  | "shadow"
  | "mirror"
  | "glint"
  | "body"
  | "cut"
  | "tile"
  | "sticker"
  | "sheen"
  | "letter"
  | "sign"
  | "outline"
  | "home"
  | "ring"
  | "mistaken"
  | "badge"
  | "arrow"
  | "ray"
  | "word";

/** A filled or stroked path. Units: pixels from the cube's centre. */
export interface PathShape {
  readonly kind: "path";
  readonly role: ShapeRole;
  readonly d: string;
  /** `#rrggbb`, or absent for none. */
  readonly fill?: string;
  readonly fillOpacity?: number;
  /** Index into the picture's gradients, instead of `fill`. */
  readonly gradient?: number;
  /** `#rrggbb`, or absent for none; joins and ends are round. */
  readonly stroke?: string;
  readonly strokeWidth?: number;
  readonly strokeOpacity?: number;
  /** Lengths of dash and gap. */
  readonly dashes?: readonly number[];
  /** Standard deviation of a blur over the shape. */
  readonly blur?: number;
  /** The facelet the shape belongs to. */
  readonly facelet?: number;
}

/** A short text. Units: pixels from the cube's centre. */
export interface TextShape {
  readonly kind: "text";
  readonly role: ShapeRole;
  readonly text: string;
  /** Maps the text's own plane (its middle at 0, 0) to the paper. */
  readonly matrix: readonly [number, number, number, number, number, number];
  readonly fontSize: number;
  readonly weight: number;
  readonly anchor: "start" | "middle" | "end";
  readonly fill: string;
  readonly facelet?: number;
}

/** One thing that is painted. */
export type PictureShape = PathShape | TextShape;

/** A colour ramp along a line. Units: pixels from the cube's centre. */
export interface PictureGradient {
  readonly from: Point;
  readonly to: Point;
  readonly stops: readonly {
    readonly offset: number;
    readonly colour: string;
    readonly opacity: number;
  }[];
}

/** A number as it is written in a path: hundredths of a pixel. */
export function pathNumber(value: number): number {
  // Adding zero turns −0 into 0.
  return Math.round(value * 100) / 100 + 0;
}

function at(point: Point): string {
  return `${pathNumber(point.x)} ${pathNumber(point.y)}`;
}

/** A closed path along straight lines. */
export function polygonPath(points: readonly Point[]): string {
  return `M${points.map(at).join("L")}Z`;
}

/** A path along straight lines that stays open. */
export function linePath(points: readonly Point[]): string {
  return `M${points.map(at).join("L")}`;
}

/** A point on the way from one to another. */
export function between(from: Point, to: Point, share: number): Point {
  return {
    x: from.x + (to.x - from.x) * share,
    y: from.y + (to.y - from.y) * share,
  };
}

/**
 * A closed path whose corners are rounded on the paper.
 *
 * Units: `radius` in pixels; never more than 45% of a side is used.
 */
export function roundedPolygonPath(
  points: readonly Point[],
  radius: number,
): string {
  const parts = points.map((corner, i) => {
    const before = points[(i + points.length - 1) % points.length] ?? corner;
    const after = points[(i + 1) % points.length] ?? corner;
    const share = (other: Point) => {
      const length = Math.hypot(other.x - corner.x, other.y - corner.y);
      return length === 0 ? 0 : Math.min(0.45, radius / length);
    };
    const enter = between(corner, before, share(before));
    const leave = between(corner, after, share(after));
    return `${i === 0 ? "M" : "L"}${at(enter)}Q${at(corner)} ${at(leave)}`;
  });
  return `${parts.join("")}Z`;
}

/** A rectangle with rounded corners lying in space. Units: cubies. */
export interface SpaceRectangle {
  readonly centre: Vector;
  readonly column: Vector;
  readonly row: Vector;
  readonly halfColumn: number;
  readonly halfRow: number;
  readonly radius: number;
}

// How far a cubic's handles reach for a quarter circle, as a share of the
// radius: 4/3·(√2 − 1).
const KAPPA = 0.5522847;

// A rectangle's corners as signs along column and row, around once.
const CORNER_SIGNS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

/** The four corners of a rectangle in space, its rounding left out. */
export function rectangleCorners(shape: SpaceRectangle): readonly Vector[] {
  return CORNER_SIGNS.map(([along, across]) =>
    onPlane(
      shape.centre,
      shape.column,
      along * shape.halfColumn,
      shape.row,
      across * shape.halfRow,
    ),
  );
}

/**
 * The outline of a rounded rectangle in space, as a path.
 *
 * The control points are projected one by one: exact for parallel rays, and
 * off by less than a hundredth of a pixel under our mild perspective.
 */
export function rectanglePath(
  projector: Projector,
  shape: SpaceRectangle,
): string {
  const { centre, column, row, halfColumn, halfRow, radius } = shape;
  const place = (along: number, across: number) =>
    at(projector.project(onPlane(centre, column, along, row, across)));
  const reach = radius * (1 - KAPPA);
  let path = "";
  CORNER_SIGNS.forEach(([along, across], i) => {
    const x = along * halfColumn;
    const y = across * halfRow;
    // Corners alternate between being entered along the row and the column.
    const enterAcross = i % 2 === 0;
    const inward = (depth: number, viaRow: boolean) =>
      viaRow ? place(x, y - across * depth) : place(x - along * depth, y);
    path += `${i === 0 ? "M" : "L"}${inward(radius, enterAcross)}`;
    path += `C${inward(reach, enterAcross)} ${inward(reach, !enterAcross)} ${inward(radius, !enterAcross)}`;
  });
  return `${path}Z`;
}

/** A circle lying in space, as a path. Units: cubies. */
export function circlePath(
  projector: Projector,
  centre: Vector,
  column: Vector,
  row: Vector,
  radius: number,
): string {
  return rectanglePath(projector, {
    centre,
    column,
    row,
    halfColumn: radius,
    halfRow: radius,
    radius,
  });
}
