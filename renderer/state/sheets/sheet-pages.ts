/** From what a sheet asks to its pages: words in the learner's own colour names, pictures, places. */
import type { CaseId } from "../../../core/cases/case-ids";
import { stageOfCase } from "../../../core/cases/case-table";
import { caseTitle } from "../../../core/cases/case-words";
import { type Position, startOf } from "../../../core/cases/position";
import { isLastLayerStage, type Stage } from "../../../core/cases/stage";
import { stageWords } from "../../../core/cases/stage-words";
import type { Hold } from "../../../core/cases/variant";
import {
  turnsForPosition,
  type WayChoice,
} from "../../../core/cases/way-for-position";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import { FACES } from "../../../core/cube/faces";
import type { Turn } from "../../../core/cube/turns";
import type { DeckCase } from "../../../core/deck/deck";
import { hasNoOneWay } from "../../../core/deck/deck-contradiction";
import { turnsOfDeckWay } from "../../../core/deck/way-of-deck";
import { turnsInWords } from "../../../core/notation/say-in-words";
import { caseSheet } from "../../../core/paper/case-sheet";
import {
  type CertificateNumbers,
  certificateSheet,
} from "../../../core/paper/certificate";
import { overviewSheet } from "../../../core/paper/overview-sheet";
import type { PaperName } from "../../../core/paper/paper-size";
import {
  type AnswerPlace,
  practiceSheet,
} from "../../../core/paper/practice-sheet";
import {
  heldInWords,
  setUpStart,
  setUpStartInWords,
} from "../../../core/paper/set-up-start";
import {
  layOutSheet,
  type Sheet,
  type SheetKind,
  type SheetPart,
} from "../../../core/paper/sheet";
import type { SheetCode } from "../../../core/paper/sheet-code";
import {
  PICTURE_ROOM,
  type ShownCase,
  type ShownQuestion,
  type ShownSetUp,
  type TurnsTold,
} from "../../../core/paper/shown-case";
import {
  COLOUR_NAMES,
  type ColourScheme,
} from "../../../core/picture/colour-sets";
import { wayInWords } from "../../components/way-words";
import { taughtTurns } from "../practise/deck-way";
import type { Drafted } from "./sheet-draft";
import {
  casePictureOnPaper,
  questionPictureOnPaper,
  type SheetLook,
  solvedPictureOnPaper,
  stepsOnPaper,
} from "./sheet-pictures";

/** What is laid out. */
export interface SheetInput extends SheetLook {
  readonly kind: SheetKind;
  readonly paper: PaperName;
  readonly number: number;
  /** Absent: nobody writes on it. */
  readonly code?: SheetCode | undefined;
  readonly told: TurnsTold;
  readonly answers: AnswerPlace;
  /** The deck's name. */
  readonly deck: string;
  readonly hold: Hold;
  /** The ways that the learner chose. */
  readonly wayChoice: WayChoice;
  readonly drafted: readonly Drafted[];
  /** Who a certificate is for, and what it says. */
  readonly learner: string;
  readonly numbers: CertificateNumbers;
  readonly counted: string;
}

/** Pixels a cubie of a case among many. */
const OVERVIEW_SIZE = 21;

function stagesOf(drafted: readonly Drafted[]): readonly Stage[] {
  return [
    ...new Set(drafted.map(({ deckCase }) => stageOfCase(deckCase.case))),
  ];
}

/** What letters and bare stickers mean: "W white, G green. Blank stickers do not matter." */
export function keyInWords({ palette, scheme }: SheetLook): string {
  const blank = "Blank stickers do not matter.";
  const { letters } = palette;
  if (letters === undefined) return blank;
  const faces = [...FACES].sort(
    (a, b) => COLOUR_NAMES.indexOf(scheme[a]) - COLOUR_NAMES.indexOf(scheme[b]),
  );
  const named = faces.map((face) => `${letters[face]} ${scheme[face]}`);
  return `${named.join(", ")}. ${blank}`;
}

/** What a case asks, in one sentence that gives nothing away. */
export function askOnPaper(
  id: CaseId,
  scheme: ColourScheme,
  hold: Hold,
): string {
  const stage = stageOfCase(id);
  if (isLastLayerStage(stage))
    return stageWords(stage, wholeCubeNaming(scheme, hold)).asks;
  if (stage === "pairs")
    return "Bring the two outlined pieces home together. Keep the rest.";
  return hasNoOneWay(id)
    ? "Bring both outlined pieces home: each is in the other’s place. Keep the rest."
    : "Bring the outlined piece home, to the dashed place. Keep the rest.";
}

/** What the positions of a sheet ask: one sentence where it is the same for all. */
function asksOf({ drafted, scheme, hold }: SheetInput): readonly string[] {
  return [
    ...new Set(
      drafted.map(({ position }) => askOnPaper(position.case, scheme, hold)),
    ),
  ];
}

/** The turns that are taught for a case; undefined where no one way answers it. */
function wayOfCase(
  { case: id, way }: DeckCase,
  position: Position,
  hold: Hold,
  choice: WayChoice,
): readonly Turn[] | undefined {
  if (hasNoOneWay(id)) return undefined;
  const { school, hand } = choice;
  return (
    turnsOfDeckWay(id, way ?? { kind: "school", school }, hold, hand) ??
    turnsForPosition(position, choice)
  );
}

function shownSetUp(
  { position, setUp }: Drafted,
  { hold, scheme, drafted }: SheetInput,
): ShownSetUp | undefined {
  if (setUp === undefined) return undefined;
  const seen = { hold: setUpStart(position).hold, colours: scheme };
  const helds = new Set(
    stagesOf(drafted).map((stage) => heldInWords(stage, hold, scheme)),
  );
  return {
    turns: setUp,
    words: turnsInWords(setUp, seen),
    ...(helds.size > 1
      ? { held: heldInWords(stageOfCase(position.case), hold, scheme) }
      : {}),
  };
}

function shownCase(drafted: Drafted, input: SheetInput): ShownCase {
  const { kind, hold, wayChoice, scheme } = input;
  const { deckCase, position } = drafted;
  const id = deckCase.case;
  const turns = wayOfCase(deckCase, position, hold, wayChoice);
  const isLarge = kind === "cases";
  return {
    ...casePictureOnPaper(
      id,
      hold,
      isLarge ? PICTURE_ROOM.case : PICTURE_ROOM.overview,
      input,
      isLarge ? undefined : OVERVIEW_SIZE,
    ),
    title: caseTitle(id, wholeCubeNaming(scheme, hold)),
    setUp: shownSetUp(drafted, input),
    way: turns && { turns, words: wayInWords(turns) },
    steps:
      turns === undefined || !isLarge
        ? []
        : stepsOnPaper(position, turns, PICTURE_ROOM.step, input),
  };
}

function shownQuestion(drafted: Drafted, input: SheetInput): ShownQuestion {
  const { hold, wayChoice: choice, scheme } = input;
  const { deckCase, position } = drafted;
  const turns = taughtTurns(position, { way: deckCase.way, choice });
  return {
    ...questionPictureOnPaper(position, PICTURE_ROOM.question, input),
    setUp: shownSetUp(drafted, input),
    ...(asksOf(input).length > 1
      ? { asks: askOnPaper(position.case, scheme, hold) }
      : {}),
    title: caseTitle(position.case, wholeCubeNaming(scheme, hold)),
    answer: {
      turns,
      words: turnsInWords(turns, {
        hold: startOf(position).hold,
        colours: scheme,
      }),
    },
  };
}

function partsOf(input: SheetInput, key: string): readonly SheetPart[] {
  const { kind, paper, deck, told, drafted, scheme, hold } = input;
  const stages = stagesOf(drafted);
  const start = setUpStartInWords(stages, hold, scheme);
  const asks = asksOf(input);
  const asksAll = asks.length === 1 ? asks : [];
  switch (kind) {
    case "cases":
      return [
        caseSheet({
          paper,
          told,
          title: deck,
          lines: [
            ...asksAll,
            "Set a case up and answer it without looking at its way. Tick the day if it worked; if not, or if you looked, write a cross.",
            start,
          ],
          cases: drafted.map((one) => shownCase(one, input)),
        }),
      ];
    case "practice":
      return practiceSheet({
        paper,
        told,
        key,
        code: input.code,
        title: `Practice: ${deck}`,
        lines: [...asksAll, start],
        questions: drafted.map((one) => shownQuestion(one, input)),
        answers: input.answers,
      });
    case "overview":
      return [
        overviewSheet({
          paper,
          told,
          title: `${deck} at a glance`,
          lines: [],
          cases: drafted.map((one) => shownCase(one, input)),
        }),
      ];
    case "certificate":
      return [
        certificateSheet({
          paper,
          key,
          deck,
          learner: input.learner,
          numbers: input.numbers,
          counted: input.counted,
          picture: solvedPictureOnPaper(hold, input),
        }),
      ];
  }
}

/** The pages of a sheet. The same input makes the same pages. */
export function sheetPages(input: SheetInput): Sheet {
  const { paper, number, code } = input;
  const key = input.kind === "certificate" ? "" : keyInWords(input);
  return layOutSheet({ paper, number, code, key, parts: partsOf(input, key) });
}
