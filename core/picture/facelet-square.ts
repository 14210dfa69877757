/** A facelet's own square in space, moved along with its slab, and on the paper. */
import type { FaceletPlace } from "./cube-layout";
import type { Point, Projector } from "./projection";
import { rectangleCorners, type SpaceRectangle } from "./shapes";
import { inSlab, type Slab } from "./slabs";
import { minus, plus, times, type Vector } from "./vector";

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

/** One step of a cubie's length along a direction, about a point, on the paper. */
export function stepOnPaper(
  projector: Projector,
  centre: Vector,
  direction: Vector,
): Point {
  const from = projector.project(minus(centre, times(direction, 0.5)));
  const to = projector.project(plus(centre, times(direction, 0.5)));
  return { x: to.x - from.x, y: to.y - from.y };
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

/** The target of a facelet that faces the viewer. */
export function faceletTarget(
  projector: Projector,
  slab: Slab,
  place: FaceletPlace,
): FaceletTarget {
  const square = faceletSquare(slab, place, 0.5, 0);
  return {
    facelet: place.facelet,
    corners: rectangleCorners(square).map((corner) =>
      projector.project(corner),
    ),
    column: stepOnPaper(projector, square.centre, square.column),
    row: stepOnPaper(projector, square.centre, square.row),
  };
}

/** Whether a facelet is at a point of the paper, if nothing is before it. Source: the even–odd rule. */
export function targetHolds(
  { corners }: FaceletTarget,
  { x, y }: Point,
): boolean {
  let inside = false;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    if (a.y > y === b.y > y) return;
    if (x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) inside = !inside;
  });
  return inside;
}
