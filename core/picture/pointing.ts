/** From a point on the paper back to the cube: what is there, what a drag turns. */
import type { Turn, TurnLayer } from "../cube/turns";
import { present } from "../invariant";
import { faceletPlace } from "./cube-layout";
import type { CubePicture, PictureTarget } from "./cube-picture";
import type { Point } from "./projection";
import { targetHolds } from "./facelet-square";
import { layerRange, type SlabAxis } from "./slabs";
import { cross, times } from "./vector";

/** The facelet seen at a point, directly or in a mirror. */
export function targetAt(
  picture: CubePicture,
  point: Point,
): PictureTarget | undefined {
  return picture.targets.findLast((target) => targetHolds(target, point));
}

/** Where the middle of a facelet is seen directly, if it is. */
export function faceletPoint(
  picture: CubePicture,
  facelet: number,
  mirrored = false,
): Point | undefined {
  const target = picture.targets.find(
    (candidate) =>
      candidate.facelet === facelet &&
      (candidate.mirror !== undefined) === mirrored,
  );
  if (target === undefined) return undefined;
  // Where the diagonals cross: unlike the mean of the corners, that is the
  // middle under perspective too.
  const [a, b, c, d] = target.corners;
  if (a === undefined || b === undefined || c === undefined || d === undefined)
    return undefined;
  const diagonal = { x: c.x - a.x, y: c.y - a.y };
  const other = { x: d.x - b.x, y: d.y - b.y };
  const share =
    ((b.x - a.x) * other.y - (b.y - a.y) * other.x) /
    (diagonal.x * other.y - diagonal.y * other.x);
  return { x: a.x + diagonal.x * share, y: a.y + diagonal.y * share };
}

// Layers along each axis from −1 to 1.
const LAYERS: Readonly<Record<SlabAxis, readonly TurnLayer[]>> = {
  x: ["L", "M", "R"],
  y: ["D", "E", "U"],
  z: ["B", "S", "F"],
};

/**
 * The quarter turn that takes a sticker along a drag.
 *
 * The sticker's face has two directions; the one whose picture lies closer to
 * the drag is followed, and the layer is the one that moves the sticker so.
 */
export function turnForDrag(target: PictureTarget, drag: Point): Turn {
  const { frame, cubie } = faceletPlace(target.facelet);
  const likeness = (direction: Point) =>
    (direction.x * drag.x + direction.y * drag.y) /
    Math.hypot(direction.x, direction.y);
  const along = likeness(target.column);
  const across = likeness(target.row);
  const [direction, strength] =
    Math.abs(along) >= Math.abs(across)
      ? [frame.column, along]
      : [frame.row, across];
  // A point at the tip of the normal moves along `direction` when the cube
  // turns about normal × direction.
  const spin = cross(frame.normal, times(direction, Math.sign(strength) || 1));
  const axis: SlabAxis =
    Math.abs(spin.x) > 0.5 ? "x" : Math.abs(spin.y) > 0.5 ? "y" : "z";
  const layer = present(
    LAYERS[axis][cubie[axis] + 1],
    "a cubie lies in one of three layers",
  );
  return {
    layer,
    quarters: Math.sign(spin[axis]) === layerRange(layer).sense ? 1 : 3,
  };
}
