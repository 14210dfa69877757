/** The certificate: what a learner has come to in a deck, in numbers from the log. */
import {
  type Block,
  inColumns,
  type PaperItem,
  type PlacedBlock,
  pictureSize,
  stacked,
  textBlock,
  together,
  writingLine,
} from "./block";
import { contentWidth, type PaperName } from "./paper-size";
import { type SheetPart, TYPE, wholePageHeight } from "./sheet";
import type { ShownPicture } from "./shown-case";

/** What a certificate says of a learner. */
export interface CertificateNumbers {
  /** How many cases the deck has, and how many of them the learner keeps. */
  readonly cases: number;
  readonly kept: number;
  /** Answers to those cases, and on how many days. */
  readonly answers: number;
  readonly days: number;
  /** The usual thinking time, median over the cases; absent where none was measured. Units: milliseconds. */
  readonly thinking?: number;
}

/** What is known by heart, in one sentence that follows the learner's name. */
export function certificateSentence(
  deck: string,
  { cases, kept }: Pick<CertificateNumbers, "cases" | "kept">,
): string {
  const all = cases === 1 ? "the one case" : `the ${cases} cases`;
  const which =
    kept < cases
      ? `${kept} of ${all}`
      : cases === 1
        ? all
        : `all ${cases} cases`;
  return kept === 0
    ? `has begun to learn ${all} of ${deck}.`
    : `knows ${which} of ${deck} by heart.`;
}

/** A number with what it counts. */
interface CountedThing {
  readonly number: string;
  readonly label: string;
}

function countsOf(numbers: CertificateNumbers): readonly CountedThing[] {
  const { cases, kept, answers, days, thinking } = numbers;
  return [
    { number: `${kept} of ${cases}`, label: "cases kept" },
    {
      number: String(answers),
      label: answers === 1 ? "answer given" : "answers given",
    },
    {
      number: String(days),
      label: days === 1 ? "day of practice" : "days of practice",
    },
    ...(thinking === undefined
      ? []
      : [
          {
            number: `${(thinking / 1000).toFixed(1)} s`,
            label: "usual time to think",
          },
        ]),
  ];
}

const LARGE = {
  title: { size: 9.5, weight: 640 },
  name: { size: 12, weight: 640 },
  sentence: { size: 5.6, weight: 400 },
  number: { size: 8, weight: 640 },
} as const;

const COUNT_GAP = 6;
const INSET = 16;

function countBlock({ number, label }: CountedThing, width: number): Block {
  return stacked(
    width,
    [
      textBlock(number, width, LARGE.number, "middle"),
      textBlock(label, width, TYPE.body, "middle"),
    ],
    0.5,
  );
}

function frameItems(width: number, height: number): readonly PaperItem[] {
  const box = (inset: number, thickness: number): PaperItem => ({
    kind: "box",
    x: inset,
    y: inset,
    width: width - 2 * inset,
    height: height - 2 * inset,
    thickness,
  });
  return [box(0.5, 0.9), box(2.4, 0.25)];
}

function centredPicture(
  { picture, label }: ShownPicture,
  width: number,
): Block {
  const size = pictureSize(picture);
  return {
    width,
    height: size.height,
    items: [
      { kind: "picture", x: (width - size.width) / 2, y: 0, picture, label },
    ],
  };
}

/** Blocks dealt out over a height, with the same room between each and the next. */
function spread(
  width: number,
  height: number,
  blocks: readonly Block[],
): Block {
  const taken = blocks.reduce((sum, block) => sum + block.height, 0);
  const gap = Math.max(0, (height - taken) / (blocks.length + 1));
  let y = 0;
  const placed: PlacedBlock[] = [];
  for (const block of blocks) {
    y += gap;
    placed.push({ x: 0, y, block });
    y += block.height;
  }
  return together(width, Math.max(height, y), placed);
}

/** The part of a sheet that is a certificate: one page. */
export function certificateSheet(input: {
  readonly paper: PaperName;
  readonly learner: string;
  readonly deck: string;
  readonly numbers: CertificateNumbers;
  /** The day on which it was counted: "26 November 2026". */
  readonly counted: string;
  readonly picture: ShownPicture;
  /** As in `SheetContent`. */
  readonly key: string;
}): SheetPart {
  const { paper, numbers } = input;
  const width = contentWidth(paper);
  const inner = width - 2 * INSET;
  const height = wholePageHeight(paper, input.key);
  const counts = countsOf(numbers);
  const each = (inner - COUNT_GAP * (counts.length - 1)) / counts.length;
  const half = (inner - 10) / 2;
  const notes = [
    `Counted on ${input.counted} from all answers to these cases.`,
    "Kept means: expected to be remembered for two weeks or longer.",
  ];
  const content = spread(inner, height - 2 * INSET, [
    textBlock("Certificate", inner, LARGE.title, "middle"),
    centredPicture(input.picture, inner),
    stacked(
      inner,
      [
        textBlock(input.learner, inner, LARGE.name, "middle"),
        textBlock(
          certificateSentence(input.deck, numbers),
          inner,
          LARGE.sentence,
          "middle",
        ),
      ],
      3,
    ),
    inColumns(
      counts.map((one) => countBlock(one, each)),
      each,
      COUNT_GAP,
    ),
    stacked(
      inner,
      notes.map((note) => textBlock(note, inner, TYPE.small, "middle")),
      0.5,
    ),
    inColumns(
      ["Date", "Signed"].map((label) => writingLine(label, half, TYPE.body)),
      half,
      10,
    ),
  ]);
  const page = together(width, height, [
    { x: INSET, y: INSET, block: content },
  ]);
  return {
    head: undefined,
    laterTitle: "",
    blocks: [{ ...page, items: [...frameItems(width, height), ...page.items] }],
  };
}
