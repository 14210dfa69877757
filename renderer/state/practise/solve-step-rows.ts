/** A step's turns as rows to read, and its pictures. */
import { placedBefore } from "../../../core/cases/constraint";
import { lastLayerMoves } from "../../../core/cases/last-layer-moves";
import { groupOfStage, isLastLayerStage } from "../../../core/cases/stage";
import { lastLayerStickers } from "../../../core/cases/stickers-that-matter";
import type { CaseStep } from "../../../core/cases/whole-solve";
import { isFullyKnown } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { formatTurn } from "../../../core/notation/format";
import { sayWay } from "../../../core/notation/say-step";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { CubePictureInput } from "../../../core/picture/cube-picture";
import type { CubePalette } from "../../../core/picture/palette";
import type { PlanPictureInput } from "../../../core/picture/plan-picture";
import {
  type CubeView,
  highView,
  usualView,
} from "../../../core/picture/projection";
import type { Turning } from "../../../core/picture/slabs";
import { casePicture, type CubeOnItsWay } from "./case-picture";
import { piecesOfStep, type ShownStep } from "./solve-step-words";

/** One turn of a step: its picture, as it is written, as it is said. */
export interface StepRow {
  readonly picture: CubePictureInput;
  readonly move: string;
  readonly words: string;
}

/** Units: pixels of a cubie in a row. */
const ROW_PIXELS = 12.4;

/** From where a step's cube is seen: from higher up where the top is the subject, and from the left where the home is there. */
export function viewOfStep(step: ShownStep, pixelsPerCubie: number): CubeView {
  if (step.kind !== "case") return usualView(pixelsPerCubie);
  if (groupOfStage(step.stage) !== "first-layer")
    return highView(pixelsPerCubie);
  const isLeft = step.hold === "down" && step.stage === "first-layer-corners";
  return usualView(pixelsPerCubie, isLeft ? "left" : "right");
}

/** A step's cube on its way, every sticker shown that is known. */
export function stepPicture(
  step: ShownStep,
  onItsWay: CubeOnItsWay,
  showing: {
    readonly palette: CubePalette;
    readonly pixelsPerCubie: number;
    readonly arrow?: Turn | undefined;
    readonly turning?: Turning | undefined;
  },
): CubePictureInput {
  const pieces = piecesOfStep(step);
  return casePicture(onItsWay, {
    named: undefined,
    outlined: pieces,
    homes: pieces,
    palette: showing.palette,
    view: viewOfStep(step, showing.pixelsPerCubie),
    arrow: showing.arrow,
    turning: showing.turning,
  });
}

/** The turns of a step, one row each, told by what becomes of the piece. */
export function stepRows(
  step: ShownStep,
  palette: CubePalette,
  colours: ColourScheme,
): readonly StepRow[] {
  const { before: start, turns } = step;
  const sentences = sayWay(start, turns, piecesOfStep(step), { colours });
  return turns.map((turn, n) => {
    const line = turns.slice(0, n);
    return {
      move: formatTurn(turn),
      words: sentences[n] ?? "",
      picture: {
        ...stepPicture(
          step,
          { start, line, cube: applyTurns(start, line) },
          { palette, pixelsPerCubie: ROW_PIXELS, arrow: turn },
        ),
        home: [],
      },
    };
  });
}

/** Units: pixels of a cubie in the small picture of a case. */
const CASE_PIXELS = 21;

/** The case of a step as it is named, with the pieces it names and no other. */
export function casePictureOfStep(
  step: CaseStep,
  palette: CubePalette,
): CubePictureInput {
  const cube = step.asNamed;
  const pieces = piecesOfStep(step);
  const before = placedBefore(step.stage);
  return casePicture(
    { start: cube, line: [], cube },
    {
      named: {
        corners: [...before.corners, ...pieces.corners],
        edges: [...before.edges, ...pieces.edges],
      },
      outlined: pieces,
      homes: pieces,
      palette,
      view: viewOfStep(step, CASE_PIXELS),
    },
  );
}

/** The case of a step of the last layer as a plan, as it is named; undefined elsewhere. */
export function planOfStep(
  step: ShownStep,
  palette: CubePalette,
): Omit<PlanPictureInput, "pixelsPerCubie"> | undefined {
  if (step.kind !== "case" || !isLastLayerStage(step.stage)) return undefined;
  const { cubies, hold } = step.asNamed;
  if (!isFullyKnown(cubies)) return undefined;
  const cube = { cubies, hold };
  return {
    stickers: lastLayerStickers(step.stage, cube),
    arrows: lastLayerMoves(step.stage, cube),
    palette,
  };
}
