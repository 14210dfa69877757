/**
 * Blocks dealt out to pages: in order, each in one piece, none over another.
 *
 * Pages are filled from the top as far as they go. Blocks that are to stay
 * together move to the next page together, unless one page is too small for
 * all of them: then they part where they must, rather than being cut.
 */
import { invariant } from "../invariant";
import type { Block } from "./block";

/** A block, and how far below the beginning of its page's room it stands. Units: millimetres. */
export interface BlockOnPage {
  readonly y: number;
  readonly block: Block;
}

/** How high the first page's room for blocks is, and that of every other. Units: millimetres. */
export interface PageRoom {
  readonly first: number;
  readonly other: number;
}

/** Blocks that are to stay together, in order. */
function groupsOf(blocks: readonly Block[]): readonly (readonly Block[])[] {
  const groups: Block[][] = [];
  let isOpen = false;
  for (const block of blocks) {
    if (isOpen) groups.at(-1)?.push(block);
    else groups.push([block]);
    isOpen = block.keepsNext === true;
  }
  return groups;
}

function heightOf(blocks: readonly Block[], gap: number): number {
  const all = blocks.reduce((sum, block) => sum + block.height, 0);
  return all + gap * (blocks.length - 1);
}

/**
 * The pages of some blocks, with room between one block and the next.
 *
 * Shape:  every block once, in order; no page is empty, and no blocks are no
 *         pages.
 * Errors: a block higher than every page is a bug of whoever made it.
 */
export function breakIntoPages(
  blocks: readonly Block[],
  room: PageRoom,
  gap: number,
): readonly (readonly BlockOnPage[])[] {
  const pages: BlockOnPage[][] = [];
  let y = 0;
  const roomOf = (page: number) => (page === 0 ? room.first : room.other);
  const begin = () => {
    pages.push([]);
    y = 0;
  };
  const left = () => {
    const page = pages.at(-1);
    if (page === undefined) return 0;
    const from = page.length === 0 ? 0 : y + gap;
    return roomOf(pages.length - 1) - from;
  };
  const put = (block: Block) => {
    const page = pages.at(-1);
    invariant(page !== undefined, "a block is put on a page that was begun");
    if (page.length > 0) y += gap;
    page.push({ y, block });
    y += block.height;
  };
  for (const group of groupsOf(blocks)) {
    const whole = heightOf(group, gap);
    if (whole > left() && (pages.at(-1)?.length ?? 1) > 0) begin();
    for (const block of group) {
      if (block.height > left() && (pages.at(-1)?.length ?? 0) > 0) begin();
      invariant(block.height <= left(), "a block is no higher than a page");
      put(block);
    }
  }
  return pages;
}
