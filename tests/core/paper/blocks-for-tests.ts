/** What every sheet must keep to, asked of its data; and pictures to lay out. */
import {
  type Block,
  type PaperItem,
  pictureSize,
} from "../../../core/paper/block";
import { MARGIN, PAPERS } from "../../../core/paper/paper-size";
import type { Sheet } from "../../../core/paper/sheet";
import type { ShownPicture } from "../../../core/paper/shown-case";
import { textWidth } from "../../../core/paper/text-width";

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What a mark takes up on the paper: text from the top of its tallest letter to the bottom of its deepest. */
export function boxOf(item: PaperItem): Box {
  switch (item.kind) {
    case "rule":
      return {
        left: Math.min(item.x1, item.x2),
        right: Math.max(item.x1, item.x2),
        top: Math.min(item.y1, item.y2) - item.thickness / 2,
        bottom: Math.max(item.y1, item.y2) + item.thickness / 2,
      };
    case "box":
      return {
        left: item.x,
        top: item.y,
        right: item.x + item.width,
        bottom: item.y + item.height,
      };
    case "picture": {
      const { width, height } = pictureSize(item.picture);
      return {
        left: item.x,
        top: item.y,
        right: item.x + width,
        bottom: item.y + height,
      };
    }
    case "text": {
      const width = textWidth(item.text, item.size, item.weight);
      const left =
        item.anchor === undefined
          ? item.x
          : item.x - (item.anchor === "end" ? width : width / 2);
      return {
        left,
        right: left + width,
        top: item.y - 0.75 * item.size,
        bottom: item.y + 0.25 * item.size,
      };
    }
  }
}

/** Half a hair: what rounding may come to. Units: millimetres. */
const HAIR = 0.3;

/** What of a block is not within it. */
export function outsideOf(block: Block): readonly PaperItem[] {
  return block.items.filter((item) => {
    const { left, top, right, bottom } = boxOf(item);
    return (
      left < -HAIR ||
      top < -HAIR ||
      right > block.width + HAIR ||
      bottom > block.height + HAIR
    );
  });
}

/** What is wrong with a sheet as paper: marks cut off, blocks over one another or over the margin, pages with nothing on them. */
export function faultsOf(sheet: Sheet): readonly string[] {
  const { width, height } = PAPERS[sheet.paper];
  return sheet.pages.flatMap(({ blocks }, n) => {
    const on = (fault: string) => `page ${n + 1}: ${fault}`;
    const faults: string[] = [];
    if (blocks.every(({ block }) => block.items.length === 0))
      faults.push(on("nothing"));
    for (const [i, { x, y, block }] of blocks.entries()) {
      for (const item of outsideOf(block))
        faults.push(on(`outside of its block: ${describe(item)}`));
      if (
        x < MARGIN.side - HAIR ||
        x + block.width > width - MARGIN.side + HAIR ||
        y < MARGIN.top - HAIR ||
        y + block.height > height - MARGIN.bottom + HAIR
      )
        faults.push(on("over the margin"));
      const before = blocks[i - 1];
      if (before !== undefined && before.y + before.block.height > y + HAIR)
        faults.push(on("over one another"));
    }
    return faults;
  });
}

function describe(item: PaperItem): string {
  return item.kind === "text" ? item.text : item.kind;
}

/** All text of a sheet, page by page, in reading order. */
export function textOf(sheet: Sheet): readonly (readonly string[])[] {
  return sheet.pages.map(({ blocks }) =>
    blocks.flatMap(({ block }) =>
      block.items.flatMap((item) => (item.kind === "text" ? item.text : [])),
    ),
  );
}

/** A picture of nothing that takes so much room. Units: millimetres. */
export function emptyPicture(width: number, height: number): ShownPicture {
  const pixels = (length: number) => (length * 96) / 25.4;
  return {
    picture: {
      layers: [],
      gradients: [],
      targets: [],
      bounds: { left: 0, top: 0, right: pixels(width), bottom: pixels(height) },
    },
    label: "a cube",
  };
}
