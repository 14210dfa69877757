/** The steps of a whole solve in words: what each asks, and what its cube shows. */
import { caseTitle } from "../../../core/cases/case-words";
import { targetsOf } from "../../../core/cases/constraint";
import { isLastLayerStage, type Stage } from "../../../core/cases/stage";
import { stageNames, stageWords } from "../../../core/cases/stage-words";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type {
  CaseStep,
  PlainStep,
  SolveStep,
} from "../../../core/cases/whole-solve";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { stickersOf } from "../../../core/cube/facelets";
import { FACES } from "../../../core/cube/faces";
import type { HeldCube } from "../../../core/cube/held-cube";
import { NO_PIECES, type Pieces } from "../../../core/cube/pieces";
import { holdInWords } from "../../../core/notation/place-words";
import { capitalised, listInWords } from "../../../core/notation/sentence";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { sideInWords } from "../../../core/picture/picture-in-words";
import { homeInWords, pieceWhereInWords } from "./case-words";
import { isHome } from "./own-cube";
import { askedInWords } from "./ask-words";
import { pieceInWords, piecesOf } from "./prompt-words";

/** A step whose cube may be known in part only, or the last turn. */
export type ShownStep = CaseStep | PlainStep;

/** The pieces that a step brings home: none in the last layer, where all are asked about at once. */
export function piecesOfStep(step: ShownStep): Pieces {
  return step.kind !== "case" || isLastLayerStage(step.stage)
    ? NO_PIECES
    : targetsOf({
        case: step.case,
        variant: { home: step.home, placed: [], turnedAway: 0 },
      });
}

/** What a step asks, as a heading: "Bring the white and green edge home." */
export function stepPrompt(step: ShownStep, scheme: ColourScheme): string {
  switch (step.kind) {
    case "last-turn":
      return `Turn the ${scheme.D} layer until all sides match.`;
    case "rest":
      return "Solve the rest, turn by turn.";
    case "case":
      return askedInWords(step.stage, piecesOfStep(step), step.hold, scheme);
  }
}

/** The part of the solve that a step is in: "First edges". */
export function stepPart(step: ShownStep): string {
  switch (step.kind) {
    case "case":
      return stageNames(step.stage).short;
    case "last-turn":
      return "The last turn";
    case "rest":
      return "The rest";
  }
}

/** The name of the case that a step answers, its sides named as the case is pictured. */
export function stepCaseTitle(step: CaseStep, scheme: ColourScheme): string {
  const naming = wholeCubeNaming(scheme, step.hold, step.asNamed.hold);
  return caseTitle(step.case, naming);
}

/** How a cube is held, as part of a sentence: "white on top and green in front". */
export function heldInWords(
  cube: HeldCube<PartlyKnownCubies>,
  scheme: ColourScheme,
): string {
  return listInWords(holdInWords(cube.hold, scheme).slice(0, 2));
}

/**
 * What a cube shows, for somebody who does not see it: where the pieces of a
 * step are and belong, or all six sides where it has none.
 */
export function cubeInWords(
  cube: HeldCube<PartlyKnownCubies>,
  pieces: Pieces,
  scheme: ColourScheme,
): string {
  const held = `${capitalised(listInWords(holdInWords(cube.hold, scheme)))}.`;
  const named = piecesOf(pieces);
  if (named.length === 0) {
    const stickers = stickersOf(cube);
    const sides = FACES.map((side) => sideInWords(stickers, side, scheme));
    return [held, ...sides].join(" ");
  }
  const said = named.map((piece) => {
    const name = capitalised(pieceInWords(piece, scheme));
    if (isHome(cube.cubies, piece)) return `${name} is home.`;
    const where = pieceWhereInWords(cube, piece, scheme);
    const home = `Its home is ${homeInWords(cube, piece)}.`;
    return where === undefined ? home : `${name}: ${where}. ${home}`;
  });
  return [held, ...said].join(" ");
}

const COUNT = ["none", "one", "two", "three", "all four"] as const;

/** How many of a stage's four are home: "two of four home". */
export function homeCountInWords(home: number): string {
  return home === 4 ? "all four home" : `${COUNT[home] ?? ""} of four home`;
}

/** What a cube has, as a heading above its solve. */
export function reachedInWords(
  open: Stage | undefined,
  next: SolveStep | undefined,
  scheme: ColourScheme,
): string {
  if (next === undefined) return "Your cube is solved.";
  if (open === undefined) return "Only a turn of the last layer is left to do.";
  const naming = wholeCubeNaming(scheme, "up");
  return open === "first-layer-edges"
    ? `The ${naming.first} edges come first.`
    : stageWords(open, naming).before;
}

/** Steps and turns, counted: "16 steps, 121 turns". */
export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}
