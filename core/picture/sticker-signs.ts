/**
 * Signs that stickers can carry where neither a colour nor a letter will do:
 * on a cube of any make, beside turns that are written in letters.
 *
 * Each sign is told from every other by its outline alone, however its face is
 * turned, leant or mirrored: one or two bars and not a bar lying or standing,
 * and no cross beside the plus.
 */
import { type Point } from "./projection";
import { polygonPath } from "./shapes";

/** The signs. */
export const STICKER_SIGNS = [
  "disc",
  "plus",
  "triangle",
  "two-bars",
  "ring",
  "bar",
] as const;

/** A sign on a sticker. */
export type StickerSign = (typeof STICKER_SIGNS)[number];

/** A point of a sign's own square: 1 is half the width of a sticker, y down. */
type SignPoint = readonly [x: number, y: number];

/** With so many corners a disc is round: on the largest sticker, 60 pixels from the middle to its edge, it is off by 0.08. */
const CORNERS_OF_ROUND = 60;

function round(radius: number, sense: 1 | -1): readonly SignPoint[] {
  return Array.from({ length: CORNERS_OF_ROUND }, (_, n) => {
    const angle = (sense * 2 * Math.PI * n) / CORNERS_OF_ROUND;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

function box(
  left: number,
  top: number,
  right: number,
  bottom: number,
): readonly SignPoint[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/** Half of what a sign takes up, and half of a stroke's width. */
const SIZE = 0.56;
const STROKE = 0.19;

/** The closed outlines of each; one that runs the other way about is a hole. */
const OUTLINES: Readonly<
  Record<StickerSign, readonly (readonly SignPoint[])[]>
> = {
  disc: [round(SIZE, 1)],
  plus: [
    [
      [-STROKE, -SIZE],
      [STROKE, -SIZE],
      [STROKE, -STROKE],
      [SIZE, -STROKE],
      [SIZE, STROKE],
      [STROKE, STROKE],
      [STROKE, SIZE],
      [-STROKE, SIZE],
      [-STROKE, STROKE],
      [-SIZE, STROKE],
      [-SIZE, -STROKE],
      [-STROKE, -STROKE],
    ],
  ],
  triangle: [
    [
      [0, -0.62],
      [0.64, 0.5],
      [-0.64, 0.5],
    ],
  ],
  "two-bars": [
    box(-SIZE, -SIZE, -SIZE + 2 * STROKE, SIZE),
    box(SIZE - 2 * STROKE, -SIZE, SIZE, SIZE),
  ],
  ring: [round(0.62, 1), round(0.62 - 1.5 * STROKE, -1)],
  bar: [box(-0.62, -1.2 * STROKE, 0.62, 1.2 * STROKE)],
};

/**
 * A sign as one filled path.
 *
 * Shape: `place` puts a point of the sign's own square onto the paper: −1 to 1
 *        is a sticker's width, y down.
 */
export function signPath(
  sign: StickerSign,
  place: (x: number, y: number) => Point,
): string {
  return OUTLINES[sign]
    .map((outline) => polygonPath(outline.map(([x, y]) => place(x, y))))
    .join("");
}
