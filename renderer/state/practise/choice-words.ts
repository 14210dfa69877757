/**
 * What a question to choose from says, what its choices are called, and what
 * is said of the one that was chosen. Colours are the learner's own.
 */
import {
  type ChosenPiece,
  type PieceQuestion,
  placeOfPiece,
  type RecognisingQuestion,
  type WhichQuestion,
} from "../../../core/answer/recognising-question";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import { caseTitle } from "../../../core/cases/case-words";
import { targetsOf } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import { CORNER_FACES, EDGE_FACES } from "../../../core/cube/pieces";
import { present } from "../../../core/invariant";
import {
  onSideInWords,
  seenCornerFaces,
  seenEdgeFaces,
} from "../../../core/notation/place-words";
import { capitalised, listInWords } from "../../../core/notation/sentence";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { homeInWords, pieceWhereInWords, positionInWords } from "./case-words";
import { pieceColours, pieceInWords, piecesOf } from "./prompt-words";

/** A question in two lines. */
export interface QuestionWords {
  readonly prompt: string;
  readonly more: string;
}

/** The pieces that a position is about: "the white and green edge", "the white, green and red corner and its edge". */
function subjectInWords(position: Position, scheme: ColourScheme): string {
  const pieces = piecesOf(targetsOf(position));
  const corner = pieces.find(({ kind }) => kind === "corner");
  // The edge of a pair has two of its corner's colours.
  return corner !== undefined && pieces.length === 2
    ? `${pieceInWords(corner, scheme)} and its edge`
    : listInWords(pieces.map((piece) => pieceInWords(piece, scheme)));
}

function whichWords(position: Position, scheme: ColourScheme): QuestionWords {
  const prompt = "Which is it?";
  if (caseEntry(position.case).group === "last-layer")
    return {
      prompt,
      more: "The pictures show the top from above. Yours may be turned.",
    };
  return {
    prompt,
    more: `Look at ${subjectInWords(position, scheme)}. In the pictures its home is in front.`,
  };
}

/** What a question asks. */
export function questionWords(
  question: RecognisingQuestion,
  position: Position,
  scheme: ColourScheme,
): QuestionWords {
  switch (question.way) {
    case "which-is-it":
      return whichWords(position, scheme);
    case "find-it":
      return {
        prompt: `Find ${pieceInWords(question.piece, scheme)}.`,
        more: "Tap it, or press its number.",
      };
    case "where-is-home":
      return {
        prompt: `Where is the home of ${pieceInWords(question.piece, scheme)}?`,
        more: "The piece has the outline. Tap its home, or press the number.",
      };
  }
}

/** Where the outlined piece is, for who cannot see the outline: its home is asked, not its place. */
export function outlinedInWords(
  { piece }: PieceQuestion,
  position: Position,
  scheme: ColourScheme,
): string {
  const where = pieceWhereInWords(startOf(position), piece, scheme) ?? "";
  return `${capitalised(pieceInWords(piece, scheme))}: ${where}.`;
}

/** What a case is called among the choices. */
function titleOf(id: CaseId, position: Position, scheme: ColourScheme): string {
  return caseTitle(id, wholeCubeNaming(scheme, position.hold));
}

/** A choice of a question, as it is read and as it is heard. */
export interface ChoiceText {
  readonly title: string;
  /** What is only seen on the picture, for who cannot see it; empty where the title says all. */
  readonly seen: string;
}

/** Which way every sticker of a piece faces: "white on the bottom, red on the front". */
function stickersInWords(
  cube: HeldCube<PartlyKnownCubies>,
  piece: ChosenPiece,
  scheme: ColourScheme,
): string {
  const at = placeOfPiece(cube, piece);
  const [seen, own, turned] =
    at.kind === "corner"
      ? [
          seenCornerFaces(cube.hold, at.piece),
          CORNER_FACES[piece.piece],
          cube.cubies.cornerOrientation[at.piece],
        ]
      : [
          seenEdgeFaces(cube.hold, at.piece),
          EDGE_FACES[piece.piece],
          cube.cubies.edgeOrientation[at.piece],
        ];
  const colours = present(own, "pieces have colours");
  return colours
    .map((face, k) => {
      const side = present(
        seen[(k + (turned ?? 0)) % seen.length],
        "stickers are on a side",
      );
      return `${scheme[face]} ${onSideInWords(side)}`;
    })
    .join(", ");
}

function placeText(
  question: PieceQuestion,
  choice: ChosenPiece,
  cube: HeldCube<PartlyKnownCubies>,
  scheme: ColourScheme,
): ChoiceText {
  if (question.way === "where-is-home")
    return { title: capitalised(homeInWords(cube, choice)), seen: "" };
  const at = placeOfPiece(cube, choice);
  return {
    title: capitalised(positionInWords(cube, at.kind, at.piece)),
    seen: stickersInWords(cube, choice, scheme),
  };
}

/** What the choices of a question are called, in its order. None says which is right. */
export function choiceTexts(
  question: RecognisingQuestion,
  position: Position,
  scheme: ColourScheme,
): readonly ChoiceText[] {
  if (question.way === "which-is-it")
    return question.choices.map((id) => ({
      title: titleOf(id, position, scheme),
      seen: "",
    }));
  const cube = startOf(position);
  return question.choices.map((choice) =>
    placeText(question, choice, cube, scheme),
  );
}

/** What came of a choice: one sentence, and what more there is to say. */
export interface ChosenWords {
  readonly sentence: string;
  readonly more: string;
}

function whichChosen(
  { choices, right }: WhichQuestion,
  choice: number,
  position: Position,
  scheme: ColourScheme,
): ChosenWords {
  const title = (index: number) =>
    titleOf(present(choices[index], "a choice is one"), position, scheme);
  if (choice === right)
    return { sentence: `Right, “${title(right)}”.`, more: "" };
  return {
    sentence: `You took it for “${title(choice)}”.`,
    more: `It is “${title(right)}”. A ring marks each sticker that differs.`,
  };
}

/** What two pieces have in common: "Both have white and green." */
function bothInWords(
  a: ChosenPiece,
  b: ChosenPiece,
  scheme: ColourScheme,
): string {
  const theirs = pieceColours(b, scheme);
  const shared = pieceColours(a, scheme).filter((colour) =>
    theirs.includes(colour),
  );
  return `Both have ${listInWords(shared)}.`;
}

function pieceChosen(
  { way, piece, choices, right }: PieceQuestion,
  choice: number,
  position: Position,
  scheme: ColourScheme,
): ChosenWords {
  const cube = startOf(position);
  const named = pieceInWords(piece, scheme);
  const takenPiece = present(choices[choice], "a choice is one");
  const taken = pieceInWords(takenPiece, scheme);
  if (way === "find-it") {
    const where = pieceWhereInWords(cube, piece, scheme) ?? "";
    return choice === right
      ? { sentence: `Right, that is ${named}.`, more: `${capitalised(where)}.` }
      : {
          sentence: `That is ${taken}.`,
          more: `${bothInWords(piece, takenPiece, scheme)} ${capitalised(named)}: ${where}.`,
        };
  }
  const home = homeInWords(cube, piece);
  const why = "There each of its colours is beside its own middle.";
  return choice === right
    ? { sentence: `Right, its home is ${home}.`, more: why }
    : {
        sentence: `That is the home of ${taken}.`,
        more: `The home of ${named} is ${home}. ${why}`,
      };
}

/** What is said of a choice. */
export function chosenWords(
  question: RecognisingQuestion,
  choice: number,
  position: Position,
  scheme: ColourScheme,
): ChosenWords {
  return question.way === "which-is-it"
    ? whichChosen(question, choice, position, scheme)
    : pieceChosen(question, choice, position, scheme);
}
