/** What every part of a cube's picture is drawn with. */
import { FACES, type Face } from "../cube/faces";
import { mixed, shaded } from "./colours";
import { FACE_FRAMES } from "./cube-layout";
import type { DrawingStyle } from "./drawing-style";
import type { CubePalette } from "./palette";
import type { Projector } from "./projection";
import { dot, type Vector } from "./vector";

/** The cube's stickers and the way they come onto the paper. */
export interface DrawingContext {
  readonly projector: Projector;
  readonly palette: CubePalette;
  readonly style: DrawingStyle;
  readonly pixelsPerCubie: number;
  readonly stickers: readonly (Face | undefined)[];
  /** Set where the cube is seen in a mirror: colours pale, no side in shade. */
  readonly reflected: boolean;
  /** Set where the layer is drawn as a plan: no side in shade, letters upright. */
  readonly isPlan?: boolean;
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

function surface(
  context: DrawingContext,
  hex: string,
  normal: Vector,
  haze: number,
): string {
  const { theme, inks } = context.palette;
  if (context.reflected)
    return mixed(hex, mixed(inks.glassLight, inks.glassDark, 0.5), haze);
  return theme === "print" || context.isPlan === true
    ? hex
    : shaded(hex, shadeOf(normal));
}

/** What plastic of a colour looks like on a surface. */
export function plasticColour(
  context: DrawingContext,
  hex: string,
  normal: Vector,
): string {
  return surface(context, hex, normal, context.palette.inks.plasticHaze);
}

/** What a sticker of a body face looks like on a surface. */
export function stickerColour(
  context: DrawingContext,
  face: Face,
  normal: Vector,
): string {
  const { faces, inks } = context.palette;
  return surface(context, faces[face], normal, inks.stickerHaze);
}
