/**
 * The practice sheet: positions to set up and answer, with room for the turns
 * and three times; what answers them on pages of their own.
 */
import {
  baseline,
  type Block,
  inColumns,
  inRows,
  lineHeight,
  pictureBlock,
  stacked,
  textBlock,
  together,
  underlined,
  widestPicture,
  writingLine,
} from "./block";
import { ROW_SHAPES } from "./entered-ticks";
import { contentWidth, type PaperName } from "./paper-size";
import { type SheetHead, type SheetPart, partPages, TYPE } from "./sheet";
import type { SheetCode } from "./sheet-code";
import type { CellPlace, ShownQuestion, TurnsTold } from "./shown-case";
import { setUpBlocks, setUpHead, turnsBlock } from "./told-turns";

/** Where the answers are: after all questions, on the back of each page of them, or nowhere. */
export const ANSWER_PLACES = ["end", "back", "none"] as const;

/** One of the places. */
export type AnswerPlace = (typeof ANSWER_PLACES)[number];

const COLUMNS = 2;
const COLUMN_GAP = 10;
const PICTURE_GAP = 3;
const NUMBER_WIDTH = 10;
const TIMES = ROW_SHAPES.practice.times;

function columnWidth(width: number): number {
  return (width - COLUMN_GAP * (COLUMNS - 1)) / COLUMNS;
}

/** Room to write a time above a line. */
const WRITING_HEIGHT = 7;

/** A label with three short lines for times under it. */
function timesBlock(width: number): Block {
  const label = textBlock("Seconds", width, TYPE.small);
  const each = width / TIMES;
  const y = label.height + WRITING_HEIGHT - 0.3;
  return {
    width,
    height: label.height + WRITING_HEIGHT,
    items: [
      ...label.items,
      ...Array.from({ length: TIMES }, (_, n) => ({
        kind: "rule" as const,
        x1: n * each,
        y1: y,
        x2: (n + 1) * each - (n === TIMES - 1 ? 0 : 3),
        y2: y,
        thickness: 0.25,
      })),
    ],
  };
}

/** A box beside a question's number. Units: millimetres. */
const TICK_BOX = 4.5;

/** Beside the box and not in the head, where one more line would push a row of questions off the page. */
const TICK_LABEL = "tick or cross";

/** A question's number, and at the right the box that says how it went. */
function numberBlock(number: number, width: number): Block {
  const text = textBlock(String(number), width, TYPE.section);
  const label = TYPE.small;
  return {
    ...text,
    items: [
      ...text.items,
      {
        kind: "text",
        x: width - TICK_BOX - 2,
        y: (text.height - lineHeight(label)) / 2 + baseline(label),
        text: TICK_LABEL,
        anchor: "end",
        ...label,
      },
      {
        kind: "box",
        x: width - TICK_BOX - 0.3,
        y: (text.height - TICK_BOX) / 2,
        width: TICK_BOX,
        height: TICK_BOX,
        thickness: 0.3,
      },
    ],
  };
}

/** A question in two parts: what stands above the line for its turns may be higher in the cell beside it. */
interface QuestionCell {
  readonly asked: Block;
  readonly answered: Block;
}

function questionCell(
  { picture, label, setUp, asks }: ShownQuestion,
  { number, told, width, beside }: CellPlace,
): QuestionCell {
  const right = width - beside;
  const shown = pictureBlock(picture, label, beside - PICTURE_GAP);
  const asked = stacked(
    right,
    [
      numberBlock(number, right),
      ...(asks === undefined ? [] : [textBlock(asks, right, TYPE.small)]),
      // Words alone have their label where they begin, over the whole cell.
      ...(setUp === undefined || told === "words"
        ? []
        : [setUpHead(setUp, told, right)]),
    ],
    1,
  );
  const times = timesBlock(right);
  const height = Math.max(shown.height, asked.height + 3 + times.height);
  const top = together(width, height, [
    { x: 0, y: 0, block: shown },
    { x: beside, y: 0, block: asked },
    { x: beside, y: height - times.height, block: times },
  ]);
  const words =
    told === "words"
      ? setUpBlocks(setUp, told, width)
      : [textBlock(setUp?.words ?? "", width, TYPE.small)];
  return {
    asked: stacked(width, [top, ...words], 1.6),
    answered: writingLine("My turns", width, TYPE.small),
  };
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
    [textBlock(title, right, TYPE.strong), turnsBlock(answer, told, right)],
    0.6,
  );
  const counted = textBlock(String(number), NUMBER_WIDTH, TYPE.section);
  return together(width, beside.height, [
    { x: 0, y: 0, block: counted },
    { x: NUMBER_WIDTH, y: 0, block: beside },
  ]);
}

function sideBySide(cells: readonly Block[], width: number): Block {
  return inColumns(cells, columnWidth(width), COLUMN_GAP);
}

/** Questions in rows of two, their lines for the turns level. */
function questionRows(
  cells: readonly QuestionCell[],
  width: number,
): readonly Block[] {
  return inRows(cells, COLUMNS).map((row) => {
    const parts = [
      row.map(({ asked }) => asked),
      row.map(({ answered }) => answered),
    ];
    const blocks = parts.map((part) => sideBySide(part, width));
    return underlined(stacked(width, blocks, 3), width);
  });
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
  /** As in `SheetContent`: how high they are decides what fits on a page. */
  readonly key: string;
  readonly code?: SheetCode | undefined;
}): readonly SheetPart[] {
  const { paper, title, lines, questions, told } = input;
  const width = contentWidth(paper);
  const cell = columnWidth(width);
  const beside = widestPicture(questions) + PICTURE_GAP;
  const laterTitle = `${title}, continued`;
  const part: SheetPart = {
    head: { title, lines, hasName: true },
    laterTitle,
    blocks: questionRows(
      questions.map((one, n) =>
        questionCell(one, { number: n + 1, told, width: cell, beside }),
      ),
      width,
    ),
  };
  const answersTo = (from: number, to: number): SheetPart => {
    const answersTitle = `Answers. ${title}`;
    const head: SheetHead = {
      title: answersTitle,
      lines: [
        "Any turns are right that do what is asked and keep the rest. These are the ones taught.",
      ],
      hasName: false,
    };
    return {
      head,
      laterTitle: `${answersTitle}, continued`,
      blocks: inRows(
        questions
          .slice(from, to)
          .map((one, n) => answerCell(one, from + n + 1, told, cell)),
        COLUMNS,
      ).map((row) => underlined(sideBySide(row, width), width)),
    };
  };
  switch (input.answers) {
    case "none":
      return [part];
    case "end":
      return [part, answersTo(0, questions.length)];
    case "back": {
      let from = 0;
      return partPages(part, paper, input).flatMap((page, n) => {
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
