/**
 * What a sequence of turns does to the body, step by step: whole-cube turns,
 * wide layers and slices resolved into faces of the body, turns of one face
 * in a row merged, opposite faces in a fixed order. Two sequences that differ
 * only in how they are written or held have the same line.
 */
import { FACE_INDEX, type Face, OPPOSITE_FACE } from "../cube/faces";
import { bodyTurns, holdAfterTurn, viewFace } from "../cube/held-cube";
import type { Rotation } from "../cube/symmetries";
import type { Quarters, Turn } from "../cube/turns";

/** One step of a line: a face of the body turned, and which turns made it. */
export interface BodyStep {
  readonly face: Face;
  readonly quarters: Quarters;
  /** Indices of the turns that were merged into it, ascending. */
  readonly madeBy: readonly number[];
}

/** What of a step counts, whoever made it. */
type FaceOfStep = Pick<BodyStep, "face" | "quarters">;

function isSameAxis(a: Face, b: Face): boolean {
  return a === b || OPPOSITE_FACE[a] === b;
}

/** The step with more quarters of its face added; undefined where nothing is left. */
function withQuarters(
  step: BodyStep,
  quarters: Quarters,
  turn: number,
): BodyStep | undefined {
  const sum = (step.quarters + quarters) % 4;
  if (sum !== 1 && sum !== 2 && sum !== 3) return undefined;
  return {
    face: step.face,
    quarters: sum,
    madeBy: step.madeBy.includes(turn) ? step.madeBy : [...step.madeBy, turn],
  };
}

function addStep(
  steps: readonly BodyStep[],
  face: Face,
  quarters: Quarters,
  turn: number,
): readonly BodyStep[] {
  const runStart =
    steps.findLastIndex((step) => !isSameAxis(step.face, face)) + 1;
  const run = steps.slice(runStart);
  const known = run.find((step) => step.face === face);
  const changed =
    known === undefined
      ? { face, quarters, madeBy: [turn] }
      : withQuarters(known, quarters, turn);
  const newRun = [
    ...run.filter((step) => step !== known),
    ...(changed === undefined ? [] : [changed]),
  ].toSorted((a, b) => FACE_INDEX[a.face] - FACE_INDEX[b.face]);
  return [...steps.slice(0, runStart), ...newRun];
}

/** The line of a sequence made on a cube that is held so at first. */
export function bodyLine(
  hold: Rotation,
  turns: readonly Turn[],
): readonly BodyStep[] {
  let held = hold;
  let steps: readonly BodyStep[] = [];
  turns.forEach((turn, i) => {
    for (const [face, quarters] of bodyTurns(held, turn))
      steps = addStep(steps, face, quarters, i);
    held = holdAfterTurn(held, turn);
  });
  return steps;
}

/** Whether two steps turn the same face equally far. */
export function isSameStep(
  a: FaceOfStep | undefined,
  b: FaceOfStep | undefined,
): boolean {
  return a?.face === b?.face && a?.quarters === b?.quarters;
}

/** How many steps two lines have in common from their beginning. */
export function sharedSteps(
  a: readonly FaceOfStep[],
  b: readonly FaceOfStep[],
): number {
  const differs = a.findIndex((step, i) => !isSameStep(step, b[i]));
  return differs < 0 ? a.length : differs;
}

/** What is left of a way whose beginning a line is, as it is made; undefined where it is not its beginning. */
export function stepsLeft<Step extends FaceOfStep>(
  line: readonly BodyStep[],
  steps: readonly Step[],
): readonly Step[] | undefined {
  const shared = sharedSteps(line, steps);
  const rest = line.slice(shared);
  if (rest.length === 0) return steps.slice(shared);
  // Opposite faces have an order in a line and none on the cube: of two the
  // second may have been turned, and the first be missing.
  const [next, across, ...later] = steps.slice(shared);
  const isSecondOfTwo =
    rest.length === 1 &&
    next !== undefined &&
    across?.face === OPPOSITE_FACE[next.face] &&
    isSameStep(rest[0], across);
  return isSecondOfTwo ? [next, ...later] : undefined;
}

/** A step as someone makes it who holds the cube so. */
export function turnOfStep(hold: Rotation, step: FaceOfStep): Turn {
  return { layer: viewFace(hold, step.face), quarters: step.quarters };
}
