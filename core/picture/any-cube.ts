/**
 * A cube of any make: its sides told by where they are instead of by colour.
 *
 * In a class hardly two cubes have the same colours. A sticker of "the front"
 * is one that looks like the centre that faces you, whatever that looks like;
 * it has a sign and a shade of grey, and never a colour that one of the cubes
 * could have. No letter: the turns beside it are written in letters, in which
 * B is the back and not the bottom.
 */
import type { FACES } from "../cube/faces";
import { type Face } from "../cube/faces";
import { viewFace } from "../cube/held-cube";
import type { Rotation } from "../cube/symmetries";
import type { ColourNames } from "../notation/place-words";
import { USUAL_SCHEME } from "./colour-sets";
import { type CubePalette, cubePalette, type PictureTheme } from "./palette";
import type { StickerSign } from "./sticker-signs";

/** How stickers of one side look on a cube of any make. */
export interface SideMark {
  /** "top": the side as the learner sees it. */
  readonly side: string;
  /** No two sides have the same. */
  readonly sign: StickerSign;
  /** Told apart by the sign, not by the shade alone. Shape: `#rrggbb`. */
  readonly shade: string;
}

/**
 * The marks of the sides as the learner sees them. Top and bottom, front and
 * right are the sides most seen: their shades lie furthest apart.
 */
export const SIDE_MARKS: Readonly<Record<Face, SideMark>> = {
  U: { side: "top", sign: "disc", shade: "#ffffff" },
  F: { side: "front", sign: "plus", shade: "#b4b4b4" },
  R: { side: "right", sign: "triangle", shade: "#2e2e2e" },
  L: { side: "left", sign: "two-bars", shade: "#dcdcdc" },
  B: { side: "back", sign: "ring", shade: "#121212" },
  D: { side: "bottom", sign: "bar", shade: "#8f8f8f" },
};

function byBodyFace<T>(
  hold: Rotation,
  of: (mark: SideMark) => T,
): Readonly<Record<Face, T>> {
  const markOf = (face: Face) => of(SIDE_MARKS[viewFace(hold, face)]);
  return {
    U: markOf("U"),
    R: markOf("R"),
    F: markOf("F"),
    D: markOf("D"),
    L: markOf("L"),
    B: markOf("B"),
  };
}

/** The names that take the place of colours: "top colour" is the colour of the centre on top. Shape: by body face; `hold` is how the cube is held at first. */
export function anyCubeNames(hold: Rotation): ColourNames {
  return byBodyFace(hold, ({ side }) => `${side} colour`);
}

/** What a cube of any make is drawn with, held that way at first. */
export function anyCubePalette(
  hold: Rotation,
  theme: PictureTheme,
): CubePalette {
  return {
    ...cubePalette({ scheme: USUAL_SCHEME, theme, paints: "greys" }),
    faces: byBodyFace(hold, ({ shade }) => shade),
    letters: undefined,
    signs: byBodyFace(hold, ({ sign }) => sign),
  };
}

/** The sides in the order in which a legend tells them. */
export const SIDES_TOLD = [
  "U",
  "F",
  "R",
  "L",
  "B",
  "D",
] as const satisfies readonly (typeof FACES)[number][];
