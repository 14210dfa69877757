/** Inputs and readers that several picture tests share. */
import { FACES, type Face } from "../../../core/cube/faces";
import { TURN_LAYERS, type Turn } from "../../../core/cube/turns";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import {
  cubePicture,
  type CubePicture,
  type CubePictureInput,
} from "../../../core/picture/cube-picture";
import { cubePalette } from "../../../core/picture/palette";
import { type Point, usualView } from "../../../core/picture/projection";
import type { PathShape, ShapeRole } from "../../../core/picture/shapes";

/** A solved cube's stickers. */
export const SOLVED_STICKERS: readonly Face[] = FACES.flatMap((face) =>
  new Array<Face>(9).fill(face),
);

/** Every turn there is. */
export const ALL_TURNS: readonly Turn[] = TURN_LAYERS.flatMap((layer) =>
  ([1, 2, 3] as const).map((quarters) => ({ layer, quarters })),
);

/** A picture of a solved cube, with whatever is to be different. */
export function pictureOf(changes: Partial<CubePictureInput>): CubePicture {
  return cubePicture({
    stickers: SOLVED_STICKERS,
    view: usualView(73),
    palette: cubePalette({ scheme: USUAL_SCHEME, theme: "light" }),
    ...changes,
  });
}

/** The picture's paths of some roles, in paint order. */
export function pathsOf(
  picture: CubePicture,
  roles: readonly ShapeRole[],
  layer?: string,
): readonly PathShape[] {
  return picture.layers
    .filter(({ name }) => layer === undefined || name === layer)
    .flatMap(({ shapes }) => shapes)
    .filter(
      (shape): shape is PathShape =>
        shape.kind === "path" && roles.includes(shape.role),
    );
}

/** The points on a path (not its handles), in order. */
export function pointsOn(path: PathShape): readonly Point[] {
  return [...path.d.matchAll(/[MLCQ]([^MLCQZ]*)/g)].map((segment) => {
    const numbers = (segment[1] ?? "")
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    return { x: numbers.at(-2) ?? NaN, y: numbers.at(-1) ?? NaN };
  });
}

/** Whether a polygon holds a point (even-odd rule). */
export function isInside(corners: readonly Point[], at: Point): boolean {
  let inside = false;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const a = corners[i];
    const b = corners[j];
    if (a === undefined || b === undefined) continue;
    const crosses = a.y > at.y !== b.y > at.y;
    const x = ((b.x - a.x) * (at.y - a.y)) / (b.y - a.y) + a.x;
    if (crosses && at.x < x) inside = !inside;
  }
  return inside;
}
