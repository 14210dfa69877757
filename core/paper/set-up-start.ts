/**
 * From what cube the set-ups on a sheet start: one that every learner of the
 * stage has, whatever else is on it. A solved cube has it too, and a right
 * answer brings it back, so that a sheet is gone through on one cube.
 */
import { caseEntry } from "../cases/case-table";
import { stagePieces } from "../cases/constraint";
import { holdFor, holdInStage } from "../cases/hold-in-stage";
import { knownAfterAnswer } from "../cases/known-layer";
import type { Position } from "../cases/position";
import { isLastLayerStage, type Stage } from "../cases/stage";
import type { Hold } from "../cases/variant";
import { type PartlyKnownCubies, SOLVED } from "../cube/cubies";
import type { HeldCube } from "../cube/held-cube";
import { knownOnly } from "../cube/partly-known";
import { holdInWords } from "../notation/place-words";
import { listInWords } from "../notation/sentence";
import type { ColourScheme } from "../picture/colour-sets";

/** The cube from which a position is set up, held as every set-up of its stage begins. */
export function setUpStart(position: Position): HeldCube<PartlyKnownCubies> {
  const { stage } = caseEntry(position.case);
  const hold = holdInStage(stage, { home: 0, seenFrom: 0 }, position.hold);
  if (isLastLayerStage(stage))
    return { cubies: knownAfterAnswer(position), hold };
  const { corners, edges } = stagePieces(stage);
  return { cubies: knownOnly(SOLVED, new Set(corners), new Set(edges)), hold };
}

function hasInWords(stage: Stage, first: string): string {
  if (isLastLayerStage(stage)) return "this step already done";
  switch (stage) {
    case "first-layer-edges":
      return `your ${first} cross done`;
    case "first-layer-corners":
      return `your ${first} layer done`;
    case "second-layer-edges":
    case "pairs":
      return "your first two layers done";
  }
}

/** How the cube is held when a set-up of a stage begins: "white on top and green in front". */
export function heldInWords(
  stage: Stage,
  chosen: Hold,
  scheme: ColourScheme,
): string {
  const hold = holdInStage(
    stage,
    { home: 0, seenFrom: 0 },
    holdFor(stage, chosen),
  );
  const [top, front] = holdInWords(hold, scheme);
  return listInWords([top, front]);
}

/**
 * What a cube needs before the set-ups of some stages, and how it is held
 * where that is the same for all of them: "Start each set-up with your white
 * cross done, white on top and green in front. A solved cube is fine too."
 */
export function setUpStartInWords(
  stages: readonly Stage[],
  chosen: Hold,
  scheme: ColourScheme,
): string {
  const all = (told: (stage: Stage) => string) => [
    ...new Set(stages.map(told)),
  ];
  const [has = "", ...otherwise] = all((stage) => hasInWords(stage, scheme.U));
  const [held = "", ...differently] = all((stage) =>
    heldInWords(stage, chosen, scheme),
  );
  const what = otherwise.length === 0 ? has : "the step already done";
  const how = differently.length === 0 ? `, ${held}` : "";
  return `Start each set-up with ${what}${how}. A solved cube is fine too.`;
}
