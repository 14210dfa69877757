/**
 * How finely a cube is drawn at its size.
 *
 * Below 30 pixels a cubie, plates, inner lines and the sheen would each be
 * thinner than a pixel: they are left out and stickers grow to meet a thin
 * black grid instead, so that a shelf of thumbnails stays crisp and cheap.
 */
import type { PictureTheme } from "./palette";

/** Measures of tiles and stickers. Units: cubies unless said otherwise. */
export interface DrawingStyle {
  /** Width of the round-joined line around the body's faces. */
  readonly bodyLine: number;
  /** How much smaller than the cube the body's faces are, each way. */
  readonly bodyInset: number;
  /** The tile under a sticker; undefined where only the sticker is drawn. */
  readonly tileHalf: number | undefined;
  readonly tileRadius: number;
  readonly stickerHalf: number;
  readonly stickerRadius: number;
  /** A tile without a sticker. */
  readonly bareHalf: number;
  readonly bareRadius: number;
  /** A bare tile's raised plate; undefined where tiles are too small. */
  readonly plateHalf: number | undefined;
  readonly plateRadius: number;
  /** The pale line within a sticker's rim; 0 for none. */
  readonly innerLine: number;
  /** Whether side faces go from light to dark. */
  readonly sheen: boolean;
  /** A line around every sticker, for print; 0 for none. Units: pixels. */
  readonly stickerLine: number;
}

const LARGE: DrawingStyle = {
  bodyLine: 0.14,
  bodyInset: 0,
  tileHalf: 0.475,
  tileRadius: 0.15,
  stickerHalf: 0.425,
  stickerRadius: 0.135,
  bareHalf: 0.475,
  bareRadius: 0.15,
  plateHalf: 0.4,
  plateRadius: 0.13,
  innerLine: 0.016,
  sheen: true,
  stickerLine: 0,
};

const SMALL: DrawingStyle = {
  ...LARGE,
  tileHalf: undefined,
  stickerHalf: 0.445,
  stickerRadius: 0.11,
  bareHalf: 0.465,
  bareRadius: 0.1,
  plateHalf: undefined,
  innerLine: 0,
  sheen: false,
};

const PRINT: DrawingStyle = {
  ...LARGE,
  bodyLine: 0.05,
  tileHalf: 0.48,
  tileRadius: 0.02,
  stickerHalf: 0.41,
  stickerRadius: 0.1,
  bareHalf: 0.48,
  bareRadius: 0.02,
  plateHalf: 0.4,
  plateRadius: 0.1,
  innerLine: 0,
  sheen: false,
  stickerLine: 1,
};

/** The style for a size (pixels per cubie) and a ground. */
export function drawingStyle(
  pixelsPerCubie: number,
  theme: PictureTheme,
): DrawingStyle {
  if (theme === "print") return PRINT;
  return pixelsPerCubie < 30 ? SMALL : LARGE;
}

/** The style of what a mirror of a given scale shows. */
export function reflectedStyle(
  style: DrawingStyle,
  scale: number,
): DrawingStyle {
  const flat: DrawingStyle = {
    ...style,
    bodyLine: 0.1 * scale,
    bodyInset: 0.05,
    tileHalf: undefined,
    stickerHalf: 0.445,
    stickerRadius: 0.11,
    bareHalf: 0.445,
    bareRadius: 0.11,
    plateHalf: undefined,
    innerLine: 0,
    sheen: false,
  };
  return style.stickerLine > 0
    ? { ...flat, bareHalf: 0.41, plateHalf: 0.41, stickerHalf: 0.41 }
    : flat;
}
