/**
 * A sheet: printable pages as data, in millimetres.
 *
 * What is on a sheet is made elsewhere; here it gets heads, page numbers and
 * places. No clock, chance or screen comes in, so the same input is the same
 * sheet, down to the last tenth of a millimetre.
 */
import {
  type Block,
  stacked,
  textBlock,
  type TextStyle,
  together,
  writingLine,
} from "./block";
import { breakIntoPages, type PageRoom } from "./page-breaking";
import { contentWidth, MARGIN, type PaperName, PAPERS } from "./paper-size";
import { formatSheetCode, type SheetCode } from "./sheet-code";
import { textWidth } from "./text-width";

/** The kinds of sheets, in the order in which they are offered. */
export const SHEET_KINDS = [
  "cases",
  "practice",
  "overview",
  "certificate",
] as const;

/** One of the kinds. */
export type SheetKind = (typeof SHEET_KINDS)[number];

/** A block at its place on a page. Units: millimetres from the page's upper left corner. */
export interface BlockOnSheet {
  readonly x: number;
  readonly y: number;
  readonly block: Block;
}

/** One side of paper. */
export interface SheetPage {
  /** Head, what is on the page, foot: in reading order. */
  readonly blocks: readonly BlockOnSheet[];
}

/** Pages to print. */
export interface Sheet {
  readonly paper: PaperName;
  readonly pages: readonly SheetPage[];
}

/** The largest number a sheet can have; the smallest is 1. It is the seed of what is drawn, printed so that the sheet can be made again. */
export const LARGEST_NUMBER = 99_999;

/** Type on sheets. Units: millimetres. */
export const TYPE = {
  title: { size: 6.4, weight: 640 },
  section: { size: 4.6, weight: 640 },
  moves: { size: 4.2, weight: 640 },
  body: { size: 3.9, weight: 400 },
  strong: { size: 3.9, weight: 640 },
  small: { size: 3.1, weight: 400 },
  smallStrong: { size: 3.1, weight: 640 },
} as const satisfies Readonly<Record<string, TextStyle>>;

/** Room between one block and the next. Units: millimetres. */
export const BLOCK_GAP = 3.2;

const NAME_WIDTH = 52;
const GAP_BESIDE_NAME = 6;

/** What stands at the top of a page. */
export interface SheetHead {
  readonly title: string;
  /** What to do, each a paragraph of its own. */
  readonly lines: readonly string[];
  /** Whether there are lines for a name and a date. */
  readonly hasName: boolean;
}

function headBlock(
  { title, lines, hasName }: SheetHead,
  width: number,
  code: SheetCode | undefined,
  style: TextStyle,
): Block {
  // Not in the foot: beside its number the key would need a second line there.
  const coded =
    code === undefined
      ? undefined
      : textBlock(
          `Code ${formatSheetCode(code)}`,
          NAME_WIDTH,
          TYPE.smallStrong,
          "end",
        );
  const beside =
    hasName || coded !== undefined ? NAME_WIDTH + GAP_BESIDE_NAME : 0;
  const text = stacked(
    width - beside,
    [
      textBlock(title, width - beside, style),
      ...lines.map((line) => textBlock(line, width - beside, TYPE.body)),
    ],
    1,
  );
  const labels = hasName ? ["Name", "Date"] : [];
  const fields = stacked(
    NAME_WIDTH,
    [
      ...labels.map((label) => writingLine(label, NAME_WIDTH, TYPE.small)),
      ...(coded === undefined ? [] : [coded]),
    ],
    4,
  );
  const height = Math.max(text.height, fields.height) + 3;
  const block = together(width, height, [
    { x: 0, y: 0, block: text },
    ...(beside > 0 ? [{ x: width - NAME_WIDTH, y: 1.5, block: fields }] : []),
  ]);
  return {
    ...block,
    items: [
      ...block.items,
      {
        kind: "rule",
        x1: 0,
        y1: height,
        x2: width,
        y2: height,
        thickness: 0.5,
      },
    ],
  };
}

/** Pages that begin anew, with a head of their own. */
export interface SheetPart {
  /** Undefined: its first page is all for what is on it. */
  readonly head: SheetHead | undefined;
  /** What stands at the top of its later pages. */
  readonly laterTitle: string;
  readonly blocks: readonly Block[];
}

function footBlock(key: string, name: string, width: number): Block {
  const nameWidth = textWidth(name, TYPE.small.size, TYPE.small.weight);
  const room = width - nameWidth - 6;
  const keyBlock = textBlock(key, room, TYPE.small);
  const nameBlock = textBlock(name, width, TYPE.small, "end");
  const height = Math.max(keyBlock.height, nameBlock.height);
  return together(width, height, [
    { x: 0, y: height - keyBlock.height, block: keyBlock },
    { x: 0, y: height - nameBlock.height, block: nameBlock },
  ]);
}

/** What a sheet is laid out from. */
export interface SheetContent {
  readonly paper: PaperName;
  /** See `LARGEST_NUMBER`. */
  readonly number: number;
  /** By which its ticks are entered later: at the right of every head. */
  readonly code?: SheetCode | undefined;
  readonly parts: readonly SheetPart[];
  /** What letters and bare stickers mean, at the foot of every page; empty: nothing. */
  readonly key: string;
}

/** Where everything of a part stands: heads, and how high the room below them is. */
interface PartFrame {
  readonly first: Block;
  readonly later: Block;
  readonly room: PageRoom;
}

/** As wide as any page's name, so that all pages have the same room. */
const WIDEST_NAME = sheetName(LARGEST_NUMBER, 88, 88);

function sheetName(number: number, page: number, pages: number): string {
  return `Turnwise, sheet ${number}, page ${page} of ${pages}`;
}

function footHeight(key: string, paper: PaperName): number {
  return footBlock(key, WIDEST_NAME, contentWidth(paper)).height;
}

/** How high a page is from its top margin to the room above its foot. */
function heightAbove(paper: PaperName, foot: number): number {
  return PAPERS[paper].height - MARGIN.top - MARGIN.bottom - foot - BLOCK_GAP;
}

/** Where what is on a page begins, below its head. */
function belowHead(head: Block): number {
  return head.height === 0 ? 0 : head.height + BLOCK_GAP;
}

/** How high a block may be that has a page without a head to itself. Units: millimetres; `key` as in `SheetContent`. */
export function wholePageHeight(paper: PaperName, key: string): number {
  return heightAbove(paper, footHeight(key, paper));
}

function frameOf(
  { head, laterTitle }: SheetPart,
  paper: PaperName,
  foot: number,
  code: SheetCode | undefined,
): PartFrame {
  const width = contentWidth(paper);
  const first =
    head === undefined
      ? together(width, 0, [])
      : headBlock(head, width, code, TYPE.title);
  const later = headBlock(
    { title: laterTitle, lines: [], hasName: false },
    width,
    code,
    // A deck's name with its date and "continued" is one line then, and not two.
    TYPE.section,
  );
  const all = heightAbove(paper, foot);
  const below = (top: Block) => all - belowHead(top);
  return { first, later, room: { first: below(first), other: below(later) } };
}

/** What stands on each page of a part. */
export function partPages(
  part: SheetPart,
  paper: PaperName,
  { key, code }: Pick<SheetContent, "key" | "code">,
): readonly (readonly Block[])[] {
  const { room } = frameOf(part, paper, footHeight(key, paper), code);
  return breakIntoPages(part.blocks, room, BLOCK_GAP).map((page) =>
    page.map(({ block }) => block),
  );
}

/** A sheet with everything at its place. */
export function layOutSheet({
  paper,
  number,
  code,
  parts,
  key,
}: SheetContent): Sheet {
  const width = contentWidth(paper);
  const foot = footHeight(key, paper);
  const footTop = PAPERS[paper].height - MARGIN.bottom - foot;
  const pages = parts.flatMap((part) => {
    const { first, later, room } = frameOf(part, paper, foot, code);
    return breakIntoPages(part.blocks, room, BLOCK_GAP).map((placed, n) => {
      const top = n === 0 ? first : later;
      const begin = MARGIN.top + belowHead(top);
      return [
        ...(top.height === 0
          ? []
          : [{ x: MARGIN.side, y: MARGIN.top, block: top }]),
        ...placed.map(({ y, block }) => ({
          x: MARGIN.side,
          y: begin + y,
          block,
        })),
      ];
    });
  });
  return {
    paper,
    pages: pages.map((blocks, n) => ({
      blocks: [
        ...blocks,
        {
          x: MARGIN.side,
          y: footTop,
          block: footBlock(key, sheetName(number, n + 1, pages.length), width),
        },
      ],
    })),
  };
}
