/** What went wrong in an answer, said in a sentence and what helps on. */
import type { Explanation, WrongTurn } from "../../../core/answer/explanation";
import { caseEntry } from "../../../core/cases/case-table";
import { piecesOfHome, targetsOf } from "../../../core/cases/constraint";
import { caseTitle } from "../../../core/cases/case-words";
import { holdInStage } from "../../../core/cases/hold-in-stage";
import { type Position, startOf } from "../../../core/cases/position";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import { isLastLayerStage } from "../../../core/cases/stage";
import type { HomeIndex } from "../../../core/cases/variant";
import type { Face } from "../../../core/cube/faces";
import { bodyFace, holdAfterTurn } from "../../../core/cube/held-cube";
import type { Pieces } from "../../../core/cube/pieces";
import type { Rotation } from "../../../core/cube/symmetries";
import type { Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { turnsInWords } from "../../../core/notation/say-in-words";
import { capitalised, listInWords } from "../../../core/notation/sentence";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { homeInWords } from "./case-words";
import { confusionWords, type DiagnosisWords } from "./confusion-words";
import { lostOfTopWords } from "./lost-words";
import { ordinal } from "./ordinals";
import { pieceInWords, piecesOf } from "./prompt-words";

/** What an explanation is said from. */
export interface SaidAnswer {
  readonly position: Position;
  readonly turns: readonly Turn[];
  readonly scheme: ColourScheme;
  readonly withNotation: boolean;
}

/** More turns than this are not listed: the way shows them. */
const TURNS_LISTED = 3;

function words(sentence: string, more = ""): DiagnosisWords {
  return { sentence, more, leaders: undefined };
}

function holdAfter({ position, turns }: SaidAnswer, count: number): Rotation {
  return turns.slice(0, count).reduce(holdAfterTurn, startOf(position).hold);
}

/** Turns from how the cube was held after so many: "Turn the right side up.", after "R." where notation is shown beside words. */
function turnsSaid(said: SaidAnswer, turns: readonly Turn[], after: number) {
  const hold = holdAfter(said, after);
  const inWords = turnsInWords(turns, { hold, colours: said.scheme });
  return said.withNotation ? `${formatTurns(turns)}. ${inWords}` : inWords;
}

function piecesSaid(pieces: Pieces, scheme: ColourScheme): string {
  return listInWords(
    piecesOf(pieces).map((piece) => pieceInWords(piece, scheme)),
  );
}

/** What is wrong with one turn: "Your third turn went the other way round." */
export function wrongTurnSentence({
  slip,
  index,
  made,
  wanted,
}: WrongTurn): string {
  const nth = `Your ${ordinal(index)} turn`;
  if (made === undefined && slip !== "missing")
    return `One turn went wrong near your ${ordinal(index)}.`;
  switch (slip) {
    case "missing":
      return index === 0
        ? "One turn is missing at the beginning."
        : `One turn is missing after your ${ordinal(index - 1)}.`;
    case "extra":
      return `${nth} is one too many.`;
    case "reversed":
      return `${nth} went the other way round.`;
    case "amount":
      return wanted?.quarters === 2 || made?.quarters !== 2
        ? `${nth} did not go far enough.`
        : `${nth} went too far.`;
    case "another-layer":
      return `${nth} should have been another one.`;
  }
}

function stoppedWords(
  said: SaidAnswer,
  { missing, wrong }: Extract<Explanation, { kind: "stopped-early" }>,
): DiagnosisWords {
  const isOne = missing.length === 1;
  const are = isOne ? "one turn is" : `${missing.length} turns are`;
  const toCome =
    missing.length > TURNS_LISTED
      ? ""
      : `Still to come: ${turnsSaid(said, missing, said.turns.length)}`;
  return wrong === undefined
    ? words(`Right so far, but ${are} missing at the end.`, toCome)
    : words(
        wrongTurnSentence(wrong),
        `After the right one, ${are} still missing. ${toCome}`.trim(),
      );
}

function oneTurnWords(
  said: SaidAnswer,
  wrong: Extract<Explanation, { kind: "one-turn" }>,
): DiagnosisWords {
  const { slip, wanted, index, evidence } = wrong;
  // Of a single turn there is nothing else.
  const rest = said.turns.length > 1 ? "All else was right." : "";
  // Where a known way was left is shown beside it, with what was wanted.
  const isShown = evidence === "from-known-way" && slip !== "missing";
  const more =
    wanted === undefined
      ? slip === "extra"
        ? "Without it the answer is right."
        : rest
      : isShown
        ? rest
        : `Wanted there: ${turnsSaid(said, [wanted], index)} ${rest}`.trim();
  return words(wrongTurnSentence(wrong), more);
}

function wrongPieceWords(
  { position, scheme }: SaidAnswer,
  { pieces, into }: Extract<Explanation, { kind: "wrong-piece" }>,
): DiagnosisWords {
  const brought = piecesSaid(pieces, scheme);
  const asked = piecesSaid(targetsOf(position), scheme);
  return into === position.variant.home
    ? words(
        `You brought another piece there: ${brought}.`,
        `${capitalised(asked)} was asked for. Look at all its colours before you turn.`,
      )
    : words(
        `You brought another piece home: ${brought}.`,
        `${capitalised(asked)} was asked for.`,
      );
}

function anotherHomeWords(
  { position }: SaidAnswer,
  home: HomeIndex,
): DiagnosisWords {
  const { stage } = caseEntry(position.case);
  const [here] = piecesOf(targetsOf(position));
  if (here === undefined || isLastLayerStage(stage))
    return words("You answered for another home.");
  const cube = startOf(position);
  const there = piecesOf(piecesOfHome(stage, home)).find(
    ({ kind }) => kind === here.kind,
  );
  const taken = there === undefined ? "another home" : homeInWords(cube, there);
  const piece = here.kind === "corner" ? "corner" : "edge";
  return words(
    `You answered for another home: ${taken}.`,
    `This ${piece} belongs ${homeInWords(cube, here)}. Look at ${here.kind === "corner" ? "both its other colours" : "its side colour"} before you turn.`,
  );
}

/** The colour that faces the learner where a home is where its ways begin. */
function colourInFront(
  { position, scheme }: SaidAnswer,
  home: HomeIndex,
): string {
  const { stage } = caseEntry(position.case);
  const hold = holdInStage(stage, { home, seenFrom: 0 }, position.hold);
  const face: Face = bodyFace(hold, "F");
  return scheme[face];
}

function otherSideWords(said: SaidAnswer, asIf: HomeIndex): DiagnosisWords {
  const taken = colourInFront(said, asIf);
  const right = colourInFront(said, said.position.variant.home);
  return words(
    `You answered as if ${taken} faced you.`,
    `These turns are right with ${right} in front.`,
  );
}

function inverseWords(
  { position, scheme }: SaidAnswer,
  { case: inverse }: Extract<Explanation, { kind: "inverse" }>,
): DiagnosisWords {
  const makes = "From a finished cube these turns make this case.";
  if (inverse === undefined) return words("You made the way backwards.", makes);
  const naming = wholeCubeNaming(scheme, position.hold, startOf(position).hold);
  return words(
    "You answered the other way round.",
    `${makes} They answer “${caseTitle(inverse, naming)}”.`,
  );
}

function othersLostWords(
  { position, scheme }: SaidAnswer,
  lost: Pieces,
): DiagnosisWords {
  const ofTop = lostOfTopWords(position, lost, scheme);
  if (ofTop !== undefined) return words(ofTop.sentence, ofTop.more);
  const targets = piecesOf(targetsOf(position));
  const pieces = piecesOf(lost);
  const left =
    pieces.length > 2
      ? `${pieces.length} other pieces`
      : piecesSaid(lost, scheme);
  const isOne = targets.length === 1;
  const subject = isOne
    ? `The ${targets[0]?.kind ?? "piece"} is home`
    : targets.length === 2
      ? "Both are home"
      : "The top is as asked";
  return words(`${subject}, but ${left} left the place.`);
}

/** The words for what explains an answer; undefined where nothing does, and what the cube shows is all there is to say. */
export function diagnosisWords(
  said: SaidAnswer,
  explanation: Explanation,
): DiagnosisWords | undefined {
  const { position, scheme } = said;
  switch (explanation.kind) {
    case "stopped-early":
      return stoppedWords(said, explanation);
    case "lined-up-wrongly":
      return words(
        "The right turns, but it was not lined up.",
        `Before these turns: ${turnsSaid(said, [explanation.wanted], 0)}`,
      );
    case "wrong-piece":
      return wrongPieceWords(said, explanation);
    case "another-home":
      return anotherHomeWords(said, explanation.home);
    case "one-turn":
      return oneTurnWords(said, explanation);
    case "twin":
      return confusionWords(position, explanation.case, scheme);
    case "other-side":
      return otherSideWords(said, explanation.asIf);
    case "inverse":
      return inverseWords(said, explanation);
    case "other-case": {
      const confused = confusionWords(position, explanation.case, scheme);
      if (explanation.off === undefined) return confused;
      const more = `${confused.more} It was not lined up for that either.`;
      return { ...confused, more: more.trim() };
    }
    case "others-lost":
      return othersLostWords(said, explanation.lost);
    case "unexplained":
      return undefined;
  }
}
