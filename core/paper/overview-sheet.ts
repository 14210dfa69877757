/** The overview: every case of a deck small, with its name and its way, to hang up or keep in a folder. */
import { formatTurns } from "../notation/format";
import {
  type Block,
  inColumns,
  inRows,
  pictureBlock,
  stacked,
  textBlock,
  together,
  widestPicture,
} from "./block";
import { contentWidth } from "./paper-size";
import { type SheetPart, TYPE } from "./sheet";
import type { CasesOnPaper, CellPlace, ShownCase } from "./shown-case";

const COLUMNS = 2;
const COLUMN_GAP = 8;
const PICTURE_GAP = 3;

function overviewCell(
  { title, picture, label, way }: ShownCase,
  { number, told, width, beside }: CellPlace,
): Block {
  const right = width - beside;
  const words = stacked(
    right,
    [
      textBlock(`${number} · ${title}`, right, TYPE.strong),
      ...(way === undefined
        ? []
        : told === "both"
          ? [textBlock(formatTurns(way.turns), right, TYPE.moves)]
          : [textBlock(way.words, right, TYPE.small)]),
    ],
    1,
  );
  const shown = pictureBlock(picture, label, beside - PICTURE_GAP, "middle");
  return together(width, Math.max(shown.height, words.height), [
    { x: 0, y: 0, block: shown },
    { x: beside, y: 0, block: words },
  ]);
}

/** The part of a sheet that shows a deck at a glance. */
export function overviewSheet(input: CasesOnPaper): SheetPart {
  const { title, lines, cases, told } = input;
  const all = contentWidth(input.paper);
  const width = (all - COLUMN_GAP * (COLUMNS - 1)) / COLUMNS;
  const beside = widestPicture(cases) + PICTURE_GAP;
  const cells = cases.map((shown, n) =>
    overviewCell(shown, { number: n + 1, told, width, beside }),
  );
  return {
    head: { title, lines, hasName: false },
    laterTitle: `${title}, continued`,
    blocks: inRows(cells, COLUMNS).map((row) =>
      inColumns(row, width, COLUMN_GAP),
    ),
  };
}
