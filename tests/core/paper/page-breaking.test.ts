import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Block } from "../../../core/paper/block";
import { breakIntoPages } from "../../../core/paper/page-breaking";

const ROOM = { first: 80, other: 100 };
const GAP = 4;

function block(height: number, keepsNext = false): Block {
  return { width: 10, height, items: [], ...(keepsNext ? { keepsNext } : {}) };
}

const blocks = fc.array(
  fc.record({
    height: fc.double({ min: 1, max: 80, noNaN: true }),
    keepsNext: fc.boolean(),
  }),
  { maxLength: 40 },
);

describe("blocks dealt out to pages", () => {
  it("all come, in order, whole, none over another and none over the edge", () => {
    fc.assert(
      fc.property(blocks, (drawn) => {
        const given = drawn.map((one) => block(one.height, one.keepsNext));
        const pages = breakIntoPages(given, ROOM, GAP);
        expect(pages.flat().map((placed) => placed.block)).toEqual(given);
        for (const [n, page] of pages.entries()) {
          expect(page.length).toBeGreaterThan(0);
          let free = 0;
          for (const placed of page) {
            expect(placed.y).toBeGreaterThanOrEqual(free - 1e-9);
            free = placed.y + placed.block.height + GAP;
          }
          const room = n === 0 ? ROOM.first : ROOM.other;
          expect(free - GAP).toBeLessThanOrEqual(room + 1e-9);
        }
      }),
    );
  });

  it("fill a page as far as they go", () => {
    const pages = breakIntoPages(
      Array.from({ length: 7 }, () => block(24)),
      ROOM,
      GAP,
    );
    // 24 + 4 + 24 + 4 + 24 = 80, and four of them with their gaps are 108.
    expect(pages.map((page) => page.length)).toEqual([3, 3, 1]);
  });

  it("stay together where a page holds them all", () => {
    const pages = breakIntoPages(
      [block(50), block(20, true), block(20)],
      ROOM,
      GAP,
    );
    expect(pages.map((page) => page.length)).toEqual([1, 2]);
  });

  it("part where no page holds them all", () => {
    const long = Array.from({ length: 5 }, (_, n) => block(30, n < 4));
    const pages = breakIntoPages([block(10), ...long], ROOM, GAP);
    expect(pages.map((page) => page.length)).toEqual([1, 3, 2]);
  });

  it("that are none are no pages", () => {
    expect(breakIntoPages([], ROOM, GAP)).toEqual([]);
  });

  it("wait for the second page where only that is high enough", () => {
    const pages = breakIntoPages([block(10), block(90)], ROOM, GAP);
    expect(pages.map((page) => page.length)).toEqual([1, 1]);
  });

  it("that no page holds are refused rather than cut", () => {
    expect(() => breakIntoPages([block(101)], ROOM, GAP)).toThrow(
      "no higher than a page",
    );
  });
});
