/**
 * The case sheet, to keep beside the cube: each case large, how to set it up,
 * its way turn by turn, and seven boxes for a week.
 */
import { formatTurns } from "../notation/format";
import {
  baseline,
  type Block,
  inColumns,
  lineHeight,
  type PaperItem,
  pictureBlock,
  stacked,
  textBlock,
  together,
} from "./block";
import { contentWidth, type PaperName } from "./paper-size";
import { type SheetPart, TYPE } from "./sheet";
import {
  PICTURE_ROOM,
  type ShownCase,
  type ShownStep,
  type TurnsTold,
} from "./shown-case";
import { turnsBlock } from "./told-turns";
import { textWidth } from "./text-width";

const DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

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
  DAYS.forEach((day, n) => {
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
    width: labelWidth + DAYS.length * TICK.pitch,
    height: TICK.size + 0.2 + lineHeight(style),
    items,
  };
}

const NUMBER_WIDTH = 9;
const PICTURE_GAP = 6;
const STEP_GAP = 2.2;

function stepBlock(step: ShownStep, told: TurnsTold): Block {
  const width = PICTURE_ROOM.step;
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

function stepRows(
  steps: readonly ShownStep[],
  told: TurnsTold,
  width: number,
): readonly Block[] {
  const step = PICTURE_ROOM.step + STEP_GAP;
  const perRow = Math.max(1, Math.floor((width + STEP_GAP) / step));
  const rows: Block[] = [];
  for (let from = 0; from < steps.length; from += perRow)
    rows.push(
      inColumns(
        steps.slice(from, from + perRow).map((one) => stepBlock(one, told)),
        PICTURE_ROOM.step,
        STEP_GAP,
      ),
    );
  return rows;
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

/** A thin line under a block that ends something. */
function underlined(block: Block): Block {
  const height = block.height + 2.5;
  const y = height - 0.15;
  return {
    ...block,
    height,
    items: [
      ...block.items,
      { kind: "rule", x1: 0, y1: y, x2: block.width, y2: y, thickness: 0.25 },
    ],
  };
}

/** A case as blocks that stay together: the first holds its picture, the others more turns of a long way. */
function caseBlocks(
  shown: ShownCase,
  number: number,
  told: TurnsTold,
  width: number,
): readonly Block[] {
  const left = PICTURE_ROOM.case + PICTURE_GAP;
  const right = width - left;
  const rows = stepRows(shown.steps, told, right);
  const { setUp, way } = shown;
  const beside = stacked(
    right,
    [
      ...(setUp === undefined
        ? []
        : [turnsBlock("Set-up", setUp, told, right)]),
      ...(way === undefined
        ? [
            textBlock(
              "No one way answers this case: it depends on the other piece.",
              right,
              TYPE.body,
            ),
          ]
        : told === "both"
          ? [
              stacked(
                right,
                [
                  textBlock("Way", right, TYPE.small),
                  textBlock(formatTurns(way.turns), right, TYPE.moves),
                ],
                0.3,
              ),
            ]
          : []),
      ...rows.slice(0, 1),
    ],
    1.6,
  );
  const head = headOf(shown, number, width);
  const picture = pictureBlock(shown.picture, shown.label, PICTURE_ROOM.case);
  const body = together(width, Math.max(picture.height, beside.height), [
    { x: 0, y: 0, block: picture },
    { x: left, y: 0, block: beside },
  ]);
  const first = stacked(width, [head, body], 2);
  const more = rows
    .slice(1)
    .map((row) => together(width, row.height, [{ x: left, y: 0, block: row }]));
  return [first, ...more].map((block, n, all) =>
    n === all.length - 1 ? underlined(block) : { ...block, keepsNext: true },
  );
}

/** The part of a sheet that holds cases to keep beside the cube. */
export function caseSheet(input: {
  readonly paper: PaperName;
  readonly title: string;
  /** What to do, one paragraph each. */
  readonly lines: readonly string[];
  readonly cases: readonly ShownCase[];
  readonly told: TurnsTold;
}): SheetPart {
  const width = contentWidth(input.paper);
  return {
    head: { title: input.title, lines: input.lines, hasName: true },
    laterTitle: input.title,
    blocks: input.cases.flatMap((shown, n) =>
      caseBlocks(shown, n + 1, input.told, width),
    ),
  };
}
