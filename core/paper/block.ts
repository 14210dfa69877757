/**
 * What a page is put together from: a block is a rectangle with marks in it
 * that stays in one piece. Where it comes to stand is decided later.
 */
import type { CubePicture } from "../picture/cube-picture";
import type { PaperWeight } from "./glyph-widths";
import { textLines, textWidth } from "./text-width";

/** A line of text. Units: millimetres; `y` is where its letters stand. */
export interface PaperText {
  readonly kind: "text";
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly weight: PaperWeight;
  /** What `x` is: where it begins, its middle or where it ends; absent: where it begins. */
  readonly anchor?: "middle" | "end";
}

/** A straight black line. Units: millimetres. */
export interface PaperRule {
  readonly kind: "rule";
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly thickness: number;
}

/** An empty box to tick or to write in. Units: millimetres. */
export interface PaperBox {
  readonly kind: "box";
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly thickness: number;
}

/** A picture of a cube, by its upper left corner. Units: millimetres; the picture has its own. */
export interface PaperPicture {
  readonly kind: "picture";
  readonly x: number;
  readonly y: number;
  readonly picture: CubePicture;
  /** What it shows, in words. */
  readonly label: string;
}

/** A mark on paper. */
export type PaperItem = PaperText | PaperRule | PaperBox | PaperPicture;

/** A rectangle that stays in one piece, with its marks measured from its upper left corner. Units: millimetres. */
export interface Block {
  readonly width: number;
  readonly height: number;
  readonly items: readonly PaperItem[];
  /** Whether the block after it has to stand on the same page. */
  readonly keepsNext?: boolean;
}

/** How large a pixel of a picture is on paper: 96 to the inch. Units: millimetres. */
export const MM_PER_PIXEL = 25.4 / 96;

/** From one line of text to the next, in type sizes. */
const LEADING = 1.28;

/** How far letters reach above the line they stand on, and below it, in type sizes. */
const ASCENT = 0.95;
const DESCENT = LEADING - ASCENT;

/** How text is set. Units: millimetres. */
export interface TextStyle {
  readonly size: number;
  readonly weight: PaperWeight;
}

/** How high and wide a picture is on paper. Units: millimetres. */
export function pictureSize({ bounds }: CubePicture): {
  readonly width: number;
  readonly height: number;
} {
  return {
    width: (bounds.right - bounds.left) * MM_PER_PIXEL,
    height: (bounds.bottom - bounds.top) * MM_PER_PIXEL,
  };
}

/** Text in as many lines as it needs; a text of no words takes no room. */
export function textBlock(
  text: string,
  width: number,
  { size, weight }: TextStyle,
  anchor?: "middle" | "end",
): Block {
  const lines = textLines(text, size, weight, width);
  const x = anchor === undefined ? 0 : anchor === "middle" ? width / 2 : width;
  return {
    width,
    height: lines.length * LEADING * size,
    items: lines.map((line, n) => ({
      kind: "text",
      x,
      y: (n * LEADING + ASCENT) * size,
      text: line,
      size,
      weight,
      ...(anchor === undefined ? {} : { anchor }),
    })),
  };
}

/** How high one line of text is. Units: millimetres. */
export function lineHeight({ size }: TextStyle): number {
  return LEADING * size;
}

/** Where letters stand in a line of text that begins at 0. Units: millimetres. */
export function baseline({ size }: TextStyle): number {
  return ASCENT * size;
}

/** A label and, behind it, a line to write on. */
export function writingLine(
  label: string,
  width: number,
  style: TextStyle,
): Block {
  const y = baseline(style);
  return {
    width,
    height: y + DESCENT * style.size,
    items: [
      { kind: "text", x: 0, y, text: label, ...style },
      {
        kind: "rule",
        x1: Math.min(width, textWidth(label, style.size, style.weight) + 2),
        y1: y + 0.6,
        x2: width,
        y2: y + 0.6,
        thickness: 0.25,
      },
    ],
  };
}

/** A block in the middle of a width, or as far to the left as it must. */
export function pictureBlock(
  picture: CubePicture,
  label: string,
  width: number,
  align: "left" | "middle" = "left",
): Block {
  const size = pictureSize(picture);
  return {
    width,
    height: size.height,
    items: [
      {
        kind: "picture",
        x: align === "left" ? 0 : Math.max(0, (width - size.width) / 2),
        y: 0,
        picture,
        label,
      },
    ],
  };
}

/** How wide the widest of some pictures is: where what stands beside each can begin. Units: millimetres. */
export function widestPicture(
  shown: readonly Pick<PaperPicture, "picture">[],
): number {
  return Math.max(0, ...shown.map(({ picture }) => pictureSize(picture).width));
}

/** A block with a thin line under it that ends something, over a width. Units: millimetres. */
export function underlined(block: Block, width: number): Block {
  const height = block.height + 2.5;
  const y = height - 0.15;
  return {
    width,
    height,
    items: [
      ...block.items,
      { kind: "rule", x1: 0, y1: y, x2: width, y2: y, thickness: 0.25 },
    ],
  };
}

/** A mark moved. Units: millimetres. */
export function moved(item: PaperItem, dx: number, dy: number): PaperItem {
  if (item.kind === "rule") {
    const { x1, y1, x2, y2 } = item;
    return { ...item, x1: x1 + dx, y1: y1 + dy, x2: x2 + dx, y2: y2 + dy };
  }
  return { ...item, x: item.x + dx, y: item.y + dy };
}

/** A block at a place within another one. Units: millimetres. */
export interface PlacedBlock {
  readonly x: number;
  readonly y: number;
  readonly block: Block;
}

/** Blocks put into one, which is as large as is said. */
export function together(
  width: number,
  height: number,
  placed: readonly PlacedBlock[],
): Block {
  return {
    width,
    height,
    items: placed.flatMap(({ x, y, block }) =>
      block.items.map((item) => moved(item, x, y)),
    ),
  };
}

/** Blocks one under the other, with room between those that take any. Units: millimetres. */
export function stacked(
  width: number,
  blocks: readonly Block[],
  gap: number,
): Block {
  let y = 0;
  const placed: PlacedBlock[] = [];
  for (const block of blocks) {
    if (block.height === 0) continue;
    if (placed.length > 0) y += gap;
    placed.push({ x: 0, y, block });
    y += block.height;
  }
  return together(width, y, placed);
}

/** Things dealt out in order, so many to a row; the last row may have fewer. */
export function inRows<Thing>(
  things: readonly Thing[],
  perRow: number,
): readonly (readonly Thing[])[] {
  const rows: (readonly Thing[])[] = [];
  for (let from = 0; from < things.length; from += perRow)
    rows.push(things.slice(from, from + perRow));
  return rows;
}

/** Blocks side by side in columns of one width, their tops level; as high as the highest. Units: millimetres. */
export function inColumns(
  blocks: readonly Block[],
  columnWidth: number,
  gap: number,
): Block {
  const height = Math.max(0, ...blocks.map((block) => block.height));
  const width = blocks.length * (columnWidth + gap) - gap;
  return together(
    Math.max(0, width),
    height,
    blocks.map((block, n) => ({ x: n * (columnWidth + gap), y: 0, block })),
  );
}
