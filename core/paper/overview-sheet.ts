/** The overview: every case of a deck small, with its name and its way, to hang up or keep in a folder. */
import { formatTurns } from "../notation/format";
import {
  type Block,
  inColumns,
  pictureBlock,
  stacked,
  textBlock,
  together,
} from "./block";
import { contentWidth, type PaperName } from "./paper-size";
import { type SheetPart, TYPE } from "./sheet";
import { PICTURE_ROOM, type ShownCase, type TurnsTold } from "./shown-case";

const COLUMNS = 2;
const COLUMN_GAP = 8;

function overviewCell(
  { title, picture, label, way }: ShownCase,
  number: number,
  told: TurnsTold,
  width: number,
): Block {
  const left = PICTURE_ROOM.overview + 3;
  const right = width - left;
  const beside = stacked(
    right,
    [
      textBlock(`${number}  ${title}`, right, TYPE.strong),
      ...(way === undefined
        ? []
        : told === "both"
          ? [textBlock(formatTurns(way.turns), right, TYPE.moves)]
          : [textBlock(way.words, right, TYPE.small)]),
    ],
    1,
  );
  const shown = pictureBlock(picture, label, PICTURE_ROOM.overview, "middle");
  return together(width, Math.max(shown.height, beside.height), [
    { x: 0, y: 0, block: shown },
    { x: left, y: 0, block: beside },
  ]);
}

/** The part of a sheet that shows a deck at a glance. */
export function overviewSheet(input: {
  readonly paper: PaperName;
  readonly title: string;
  readonly lines: readonly string[];
  readonly cases: readonly ShownCase[];
  readonly told: TurnsTold;
}): SheetPart {
  const width = contentWidth(input.paper);
  const column = (width - COLUMN_GAP * (COLUMNS - 1)) / COLUMNS;
  const cells = input.cases.map((shown, n) =>
    overviewCell(shown, n + 1, input.told, column),
  );
  const blocks: Block[] = [];
  for (let from = 0; from < cells.length; from += COLUMNS)
    blocks.push(
      inColumns(cells.slice(from, from + COLUMNS), column, COLUMN_GAP),
    );
  return {
    head: { title: input.title, lines: input.lines, hasName: false },
    laterTitle: `${input.title}, continued`,
    blocks,
  };
}
