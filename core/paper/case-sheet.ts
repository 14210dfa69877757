/**
 * The case sheet, to keep beside the cube: each case large, how to set it up,
 * its way turn by turn, and seven boxes for a week.
 */
import {
  baseline,
  type Block,
  inColumns,
  inRows,
  lineHeight,
  type PaperItem,
  pictureBlock,
  stacked,
  textBlock,
  together,
  underlined,
  widestPicture,
} from "./block";
import { contentWidth } from "./paper-size";
import { type SheetPart, TYPE } from "./sheet";
import { SHEET_DAYS } from "./sheet-days";
import {
  type CasesOnPaper,
  type CellPlace,
  PICTURE_ROOM,
  type ShownCase,
  type ShownStep,
  type TurnsTold,
} from "./shown-case";
import { labelled, setUpBlocks } from "./told-turns";
import { textWidth } from "./text-width";

const TICK = { size: 4.3, pitch: 9 } as const;
const TICK_LABEL = "Done on";

/** Seven boxes to tick, Monday to Sunday. */
function tickBlock(): Block {
  const style = TYPE.small;
  const labelWidth = textWidth(TICK_LABEL, style.size, style.weight) + 3;
  const items: PaperItem[] = [
    {
      kind: "text",
      x: 0,
      y: baseline(style) + 0.4,
      text: TICK_LABEL,
      ...style,
    },
  ];
  SHEET_DAYS.forEach((day, n) => {
    const middle = labelWidth + (n + 0.5) * TICK.pitch;
    items.push(
      {
        kind: "box",
        x: middle - TICK.size / 2,
        y: 0.2,
        width: TICK.size,
        height: TICK.size,
        thickness: 0.3,
      },
      {
        kind: "text",
        x: middle,
        y: TICK.size + 0.2 + baseline(style),
        text: day,
        anchor: "middle",
        ...style,
      },
    );
  });
  return {
    width: labelWidth + SHEET_DAYS.length * TICK.pitch,
    height: TICK.size + 0.2 + lineHeight(style),
    items,
  };
}

const NUMBER_WIDTH = 9;
const PICTURE_GAP = 6;
const STEP_GAP = 2.3;

/** So many turns stand beside the picture; a longer way stands below it, over the whole width. */
const MOST_BESIDE = 5;

/** So few leave room for words between the picture and them. */
const MOST_AT_RIGHT = 3;

function stepBlock(step: ShownStep, told: TurnsTold, width: number): Block {
  return stacked(
    width,
    [
      pictureBlock(step.picture, step.label, width),
      ...(told === "both" ? [textBlock(step.move, width, TYPE.moves)] : []),
      textBlock(step.words, width, TYPE.small),
    ],
    0.6,
  );
}

/** Turns in as few rows as they need, about as many in each, over the whole width: so their words take few lines. */
function stepRows(
  steps: readonly ShownStep[],
  told: TurnsTold,
  width: number,
): readonly Block[] {
  if (steps.length === 0) return [];
  const most = Math.floor((width + STEP_GAP) / (PICTURE_ROOM.step + STEP_GAP));
  const rows = Math.ceil(steps.length / most);
  const perRow = Math.ceil(steps.length / rows);
  const each = (width + STEP_GAP) / perRow - STEP_GAP;
  return inRows(steps, perRow).map((row) =>
    inColumns(
      row.map((step) => stepBlock(step, told, each)),
      each,
      STEP_GAP,
    ),
  );
}

function headOf(shown: ShownCase, number: number, width: number): Block {
  const ticks = tickBlock();
  const room = width - NUMBER_WIDTH - ticks.width - 5;
  const title = textBlock(shown.title, room, TYPE.section);
  return together(width, Math.max(title.height, ticks.height), [
    {
      x: 0,
      y: 0,
      block: textBlock(String(number), NUMBER_WIDTH, TYPE.section),
    },
    { x: NUMBER_WIDTH, y: 0, block: title },
    { x: width - ticks.width, y: 0, block: ticks },
  ]);
}

/**
 * What stands above the turns of a way. Where these are one row the letters
 * under their pictures are the way on one line already: written out above
 * them it took 7 mm more, and five cases that are two pages of A4 took three
 * of Letter.
 */
function wayBlocks(
  { way, steps }: ShownCase,
  told: TurnsTold,
  width: number,
): readonly Block[] {
  if (way === undefined)
    return [
      textBlock(
        "No one way answers this case: it depends on the other piece.",
        width,
        TYPE.body,
      ),
    ];
  return told === "both" && steps.length > MOST_BESIDE
    ? [labelled("Way", way.turns, width)]
    : [];
}

/** A picture with something beside it. */
function besidePicture(
  shown: ShownCase,
  { width, beside }: CellPlace,
  blocks: readonly Block[],
): Block {
  const picture = pictureBlock(
    shown.picture,
    shown.label,
    beside - PICTURE_GAP,
  );
  const rest = stacked(width - beside, blocks, 1.6);
  return together(width, Math.max(picture.height, rest.height), [
    { x: 0, y: 0, block: picture },
    { x: beside, y: 0, block: rest },
  ]);
}

/** What is said of a case with a short way, and its turns to the right of that. */
function stepsAtRight(shown: ShownCase, told: TurnsTold, width: number): Block {
  const steps = inColumns(
    shown.steps.map((step) => stepBlock(step, told, PICTURE_ROOM.step)),
    PICTURE_ROOM.step,
    STEP_GAP,
  );
  const room = width - steps.width - (steps.width > 0 ? 5 : 0);
  const words = stacked(
    room,
    [...setUpBlocks(shown.setUp, told, room), ...wayBlocks(shown, told, room)],
    1.6,
  );
  return together(width, Math.max(words.height, steps.height), [
    { x: 0, y: 0, block: words },
    { x: width - steps.width, y: 0, block: steps },
  ]);
}

/** A case as blocks that stay together: the first holds its picture, the others more turns of a long way. */
function caseBlocks(shown: ShownCase, place: CellPlace): readonly Block[] {
  const { number, told, width } = place;
  const right = width - place.beside;
  const head = headOf(shown, number, width);
  const way = wayBlocks(shown, told, right);
  const isBeside = shown.steps.length <= MOST_BESIDE;
  const rows = stepRows(shown.steps, told, isBeside ? right : width);
  const first =
    shown.steps.length <= MOST_AT_RIGHT
      ? [besidePicture(shown, place, [stepsAtRight(shown, told, right)])]
      : isBeside
        ? [
            ...setUpBlocks(shown.setUp, told, width),
            besidePicture(shown, place, [...way, ...rows]),
          ]
        : [
            besidePicture(shown, place, [
              ...setUpBlocks(shown.setUp, told, right),
              ...way,
            ]),
            ...rows.slice(0, 1),
          ];
  const more = isBeside ? [] : rows.slice(1);
  return [stacked(width, [head, ...first], 1.6), ...more].map(
    (block, n, all) =>
      n === all.length - 1
        ? underlined(block, width)
        : { ...block, keepsNext: true },
  );
}

/** The part of a sheet that holds cases to keep beside the cube. */
export function caseSheet(input: CasesOnPaper): SheetPart {
  const { title, lines, cases, told } = input;
  const width = contentWidth(input.paper);
  const beside = widestPicture(cases) + PICTURE_GAP;
  return {
    head: { title, lines, hasName: true },
    laterTitle: `${title}, continued`,
    blocks: cases.flatMap((shown, n) =>
      caseBlocks(shown, { number: n + 1, told, width, beside }),
    ),
  };
}
