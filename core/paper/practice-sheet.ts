/**
 * The practice sheet: positions to set up and answer, with room for the turns
 * and three times; what answers them on pages of their own.
 */
import {
  baseline,
  type Block,
  inColumns,
  pictureBlock,
  stacked,
  textBlock,
  together,
  writingLine,
} from "./block";
import { contentWidth, type PaperName } from "./paper-size";
import { type SheetHead, type SheetPart, partPages, TYPE } from "./sheet";
import { PICTURE_ROOM, type ShownQuestion, type TurnsTold } from "./shown-case";
import { textWidth } from "./text-width";
import { turnsBlock } from "./told-turns";

/** Where the answers are: after all questions, on the back of each page of them, or nowhere. */
export const ANSWER_PLACES = ["end", "back", "none"] as const;

/** One of the places. */
export type AnswerPlace = (typeof ANSWER_PLACES)[number];

const COLUMNS = 2;
const COLUMN_GAP = 10;
const NUMBER_WIDTH = 9;
const TIMES = 3;

function columnWidth(width: number): number {
  return (width - COLUMN_GAP * (COLUMNS - 1)) / COLUMNS;
}

/** Three short lines for times. */
function timesLine(width: number): Block {
  const style = TYPE.small;
  const label = "Seconds";
  const y = baseline(style);
  const from = textWidth(label, style.size, style.weight) + 2;
  const each = (width - from) / TIMES;
  return {
    width,
    height: y + 1.2,
    items: [
      { kind: "text", x: 0, y, text: label, ...style },
      ...Array.from({ length: TIMES }, (_, n) => ({
        kind: "rule" as const,
        x1: from + n * each,
        y1: y + 0.6,
        x2: from + (n + 1) * each - (n === TIMES - 1 ? 0 : 3),
        y2: y + 0.6,
        thickness: 0.25,
      })),
    ],
  };
}

function questionCell(
  { picture, label, setUp }: ShownQuestion,
  number: number,
  told: TurnsTold,
  width: number,
): Block {
  const left = PICTURE_ROOM.question + 3;
  const right = width - left;
  const beside = stacked(
    right,
    [
      textBlock(String(number), right, TYPE.section),
      ...(setUp === undefined
        ? []
        : [turnsBlock("Set-up", setUp, told, right)]),
    ],
    1,
  );
  const shown = pictureBlock(picture, label, PICTURE_ROOM.question);
  const top = together(width, Math.max(shown.height, beside.height), [
    { x: 0, y: 0, block: shown },
    { x: left, y: 0, block: beside },
  ]);
  return stacked(
    width,
    [top, writingLine("My turns", width, TYPE.small), timesLine(width)],
    3.5,
  );
}

function answerCell(
  { title, answer }: ShownQuestion,
  number: number,
  told: TurnsTold,
  width: number,
): Block {
  const right = width - NUMBER_WIDTH;
  const beside = stacked(
    right,
    [textBlock(title, right, TYPE.strong), turnsBlock("", answer, told, right)],
    0.6,
  );
  const numberBlock = textBlock(String(number), NUMBER_WIDTH, TYPE.section);
  return together(width, beside.height, [
    { x: 0, y: 0, block: numberBlock },
    { x: NUMBER_WIDTH, y: 0, block: beside },
  ]);
}

/** Cells in rows of two, each row with a thin line under it. */
function rowsOf(cells: readonly Block[], width: number): readonly Block[] {
  const rows: Block[] = [];
  for (let from = 0; from < cells.length; from += COLUMNS) {
    const row = inColumns(
      cells.slice(from, from + COLUMNS),
      columnWidth(width),
      COLUMN_GAP,
    );
    const height = row.height + 2.5;
    const y = height - 0.15;
    rows.push({
      width,
      height,
      items: [
        ...row.items,
        { kind: "rule", x1: 0, y1: y, x2: width, y2: y, thickness: 0.25 },
      ],
    });
  }
  return rows;
}

/** The parts of a practice sheet: its questions, and its answers where they are wanted. */
export function practiceSheet(input: {
  readonly paper: PaperName;
  readonly title: string;
  /** What to do, one paragraph each. */
  readonly lines: readonly string[];
  readonly questions: readonly ShownQuestion[];
  readonly told: TurnsTold;
  readonly answers: AnswerPlace;
  /** As in `SheetContent`: how high it is decides what fits on a page. */
  readonly key: string;
}): readonly SheetPart[] {
  const { paper, title, lines, questions, told } = input;
  const width = contentWidth(paper);
  const cell = columnWidth(width);
  const laterTitle = `${title}, continued`;
  const part: SheetPart = {
    head: { title, lines, hasName: true },
    laterTitle,
    blocks: rowsOf(
      questions.map((one, n) => questionCell(one, n + 1, told, cell)),
      width,
    ),
  };
  const answersTo = (from: number, to: number): SheetPart => {
    const answersTitle = `Answers to ${title}`;
    const head: SheetHead = {
      title: answersTitle,
      lines: [
        "Any turns are right that bring the piece home and keep the rest. These are the ones taught.",
      ],
      hasName: false,
    };
    return {
      head,
      laterTitle: `${answersTitle}, continued`,
      blocks: rowsOf(
        questions
          .slice(from, to)
          .map((one, n) => answerCell(one, from + n + 1, told, cell)),
        width,
      ),
    };
  };
  switch (input.answers) {
    case "none":
      return [part];
    case "end":
      return [part, answersTo(0, questions.length)];
    case "back": {
      let from = 0;
      return partPages(part, paper, input.key).flatMap((page, n) => {
        const to = from + COLUMNS * page.length;
        const own: SheetPart = {
          head:
            n === 0
              ? part.head
              : { title: laterTitle, lines: [], hasName: false },
          laterTitle,
          blocks: page,
        };
        const both = [own, answersTo(from, to)];
        from = to;
        return both;
      });
    }
  }
}
