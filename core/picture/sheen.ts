/** The light on the cube's upright sides. */
import { FACE_FRAMES, HALF_CUBE } from "./cube-layout";
import type { Projector } from "./projection";
import {
  type PathShape,
  type PictureGradient,
  pathNumber,
  polygonPath,
  rectangleCorners,
} from "./shapes";
import { type SlabSide, turnedRectangle } from "./slab-sides";
import { inSlab, type Slab } from "./slabs";
import { minus, plus, times, vector } from "./vector";

// The middle stop is white: towards the dark end the ramp passes through grey,
// which keeps dark plastic from sinking into black halfway down.
const SHEEN_STOPS: PictureGradient["stops"] = [
  { offset: 0, colour: "#ffffff", opacity: 0.05 },
  { offset: 0.5, colour: "#ffffff", opacity: 0 },
  { offset: 1, colour: "#000000", opacity: 0.13 },
];

/**
 * The light on a side: from 5% white at the cube's top to 13% black at its
 * bottom, along the steepest way down; none on a level surface.
 */
export function sheenOn(
  projector: Projector,
  slab: Slab,
  side: SlabSide,
  gradient: number,
): { shape: PathShape; ramp: PictureGradient } | undefined {
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
