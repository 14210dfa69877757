/** The six sides of a slab in space. */
import { FACES, type Face } from "../cube/faces";
import { FACE_FRAMES, HALF_CUBE } from "./cube-layout";
import type { SpaceRectangle } from "./shapes";
import { inSlab, type Slab } from "./slabs";
import { plus, times, type Vector, vector } from "./vector";

/** One side of a slab, before it is turned. */
export interface SlabSide {
  readonly face: Face;
  readonly rectangle: SpaceRectangle;
  readonly isCut: boolean;
}

/**
 * The sides of a slab, as they are before it is turned.
 *
 * Units: cubies; `lineHalf` is half the width of the line that will be drawn
 *        around them, `inset` how much smaller than the cube the body is.
 */
export function slabSides(
  slab: Slab,
  lineHalf: number,
  inset: number,
): readonly SlabSide[] {
  // The line around a face would reach over a cut and hide the neighbour's
  // tiles, so faces end half a line before it.
  const low = slab.low + (slab.low > -HALF_CUBE ? lineHalf : inset);
  const high = slab.high - (slab.high < HALF_CUBE ? lineHalf : inset);
  const middle = { x: 0, y: 0, z: 0, [slab.axis]: (low + high) / 2 };
  const half = {
    x: HALF_CUBE - inset,
    y: HALF_CUBE - inset,
    z: HALF_CUBE - inset,
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

/** A rectangle of the cube, moved along with its slab. */
export function turnedRectangle(
  slab: Slab,
  shape: SpaceRectangle,
): SpaceRectangle {
  return {
    ...shape,
    centre: inSlab(slab, shape.centre),
    column: inSlab(slab, shape.column),
    row: inSlab(slab, shape.row),
  };
}
