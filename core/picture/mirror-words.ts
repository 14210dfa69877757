/** The names that stand beside mirrors: where, how large, and what they take up. */
import { type Point } from "./projection";
import { type PictureShape, pathNumber } from "./shapes";

/** How large a mirror's name is where nobody says. Units: pixels. */
export const WORD_SIZE = 13;

/** How wide a letter is, on average and rather too wide, in type sizes: those of "bottom", the widest name, are 0.56. */
const LETTER = 0.6;

/** A mirror's name. Units: pixels, where its letters stand. */
export interface MirrorWord {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
}

/** The upper left and the lower right corner of what a name takes up at a size. */
export function wordCorners(
  { text, x, y, anchor }: MirrorWord,
  size: number,
): readonly [Point, Point] {
  const width = LETTER * size * text.length;
  const left = x - width * { start: 0, middle: 0.5, end: 1 }[anchor];
  return [
    { x: left, y: y - size },
    { x: left + width, y: y + 0.3 * size },
  ];
}

/** A name as it is painted at a size. */
export function drawWord(
  { text, x, y, anchor }: MirrorWord,
  fontSize: number,
  fill: string,
): PictureShape {
  return {
    kind: "text",
    role: "word",
    text,
    matrix: [1, 0, 0, 1, pathNumber(x), pathNumber(y)],
    fontSize,
    weight: 500,
    anchor,
    fill,
  };
}
