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
  readonly tileHalf: number;
  readonly tileRadius: number;
  readonly stickerHalf: number;
  readonly stickerRadius: number;
  /** A bare tile's raised plate; undefined where tiles are too small. */
  readonly plateHalf: number | undefined;
  readonly plateRadius: number;
  /** The pale line within a sticker's rim. */
  readonly innerLine: number;
  /** Whether side faces go from light to dark. */
  readonly sheen: boolean;
  /** A line around every sticker, for print. Units: pixels. */
  readonly stickerLine: number;
}

const LARGE: DrawingStyle = {
  bodyLine: 0.14,
  tileHalf: 0.475,
  tileRadius: 0.15,
  stickerHalf: 0.425,
  stickerRadius: 0.135,
  plateHalf: 0.4,
  plateRadius: 0.13,
  innerLine: 0.016,
  sheen: true,
  stickerLine: 0,
};

const SMALL: DrawingStyle = {
  ...LARGE,
  tileHalf: 0.46,
  tileRadius: 0.09,
  stickerHalf: 0.445,
  stickerRadius: 0.09,
  plateHalf: undefined,
  innerLine: 0,
  sheen: false,
};

const PRINT: DrawingStyle = {
  ...LARGE,
  bodyLine: 0.06,
  tileHalf: 0.48,
  tileRadius: 0.02,
  stickerHalf: 0.41,
  stickerRadius: 0.1,
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
