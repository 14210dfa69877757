/** The right way, turned wrongly. */
import type { TurnSlip } from "../../../core/answer/explanation";
import { caseEntry } from "../../../core/cases/case-table";
import { isInFreeLayer } from "../../../core/cases/constraint";
import { lastLayerInverseOf } from "../../../core/cases/last-layer-cases";
import { homeAfter } from "../../../core/cases/stage";
import { FACES } from "../../../core/cube/faces";
import { rotationAbout } from "../../../core/cube/symmetries";
import {
  inverseTurn,
  isFaceTurn,
  isWholeCubeTurn,
  type Turn,
} from "../../../core/cube/turns";
import { inverseTurns } from "../../../core/notation/inverse";
import { turnsThroughSymmetry } from "../../../core/notation/mirror";
import { simplifyTurns } from "../../../core/notation/simplify";
import { pick, type RandomSource } from "../../../core/random-source";
import type { SimulatedLearner } from "./simulated-learner";
import { TWO_LARGEST } from "./table-of-ways";

/** Wrong turns, and what the explanation of them should name, as text: a case, a home, a slip. */
export interface Made {
  readonly turns: readonly Turn[];
  readonly detail: string;
}

/** Without the last turns. */
export function stoppedEarly(learner: SimulatedLearner): Made | undefined {
  const right = learner.right();
  if (right === undefined || right.length < 2) return undefined;
  const left = 1 + learner.random.below(right.length - 1);
  return { turns: right.slice(0, -left), detail: "" };
}

/** Not lined up, or lined up for something else. */
export function linedUpWrongly(learner: SimulatedLearner): Made | undefined {
  const { variant, case: id } = learner.position;
  const right = learner.right();
  if (right === undefined || !isInFreeLayer(id)) return undefined;
  const off = 1 + learner.random.below(3);
  const first = learner.bringToFront(variant.home).length;
  return {
    turns: simplifyTurns([
      ...right.slice(0, first),
      ...learner.lineUp(off),
      ...right.slice(first),
    ]),
    detail: String(off),
  };
}

function slipped(
  random: RandomSource,
  slip: TurnSlip,
  turn: Turn,
): readonly Turn[] {
  const faceTurn = (): Turn => ({
    layer: pick(random, FACES),
    quarters: pick(random, [1, 2, 3] as const),
  });
  switch (slip) {
    case "missing":
      return [];
    case "extra":
      return [faceTurn(), turn];
    case "reversed":
      return [inverseTurn(turn)];
    case "amount": {
      const quarters = pick(random, [1, 2, 3] as const);
      return [{ layer: turn.layer, quarters }];
    }
    case "another-layer":
      return isFaceTurn(turn) ? [faceTurn()] : [turn];
  }
}

/** With one turn left out, put in or changed. */
export function oneTurnChanged(learner: SimulatedLearner): Made | undefined {
  const right = learner.right();
  if (right === undefined || right.length < 2) return undefined;
  const slip = pick(learner.random, [
    "missing",
    "extra",
    "reversed",
    "amount",
    "another-layer",
  ] as const satisfies readonly TurnSlip[]);
  const index = learner.random.below(right.length);
  const turn = right[index];
  if (turn === undefined || isWholeCubeTurn(turn)) return undefined;
  const made = slipped(learner.random, slip, turn);
  return {
    turns: simplifyTurns([
      ...right.slice(0, index),
      ...made,
      ...right.slice(index + 1),
    ]),
    detail: slip,
  };
}

/** Begun with another side in front. */
export function fromAnotherSide(learner: SimulatedLearner): Made | undefined {
  const { variant, hold } = learner.position;
  const right = learner.right();
  if (right === undefined) return undefined;
  const steps = 1 + learner.random.below(3);
  // The free layer keeps its name through this.
  const seenOtherwise = turnsThroughSymmetry(right, rotationAbout("y", steps));
  const asIf = homeAfter(variant.home, hold === "up" ? steps : -steps);
  return { turns: seenOtherwise, detail: String(asIf) };
}

/** Backwards, or the way of the case that is its inverse. */
export function backwards(learner: SimulatedLearner): Made | undefined {
  const { variant, case: id } = learner.position;
  const entry = caseEntry(id);
  if (TWO_LARGEST.includes(learner.stage)) {
    const right = learner.right();
    return right && { turns: inverseTurns(right), detail: "" };
  }
  const inverse =
    entry.group === "last-layer"
      ? lastLayerInverseOf(entry.shows)?.id
      : undefined;
  const isOfCase = inverse !== undefined && learner.random.below(2) === 0;
  const written = learner.wayOf(isOfCase ? inverse : id);
  if (written === undefined) return undefined;
  // Held as for the way, then its turns backwards; a way in which the cube is
  // turned over has no backwards of its own.
  const start = written.findIndex((turn) => !isWholeCubeTurn(turn));
  const rest = written.slice(start);
  if (!isOfCase && rest.some(isWholeCubeTurn)) return undefined;
  const way = isOfCase
    ? written
    : [...written.slice(0, start), ...inverseTurns(rest)];
  return {
    turns: learner.played(variant.home, variant.turnedAway, way),
    detail: inverse ?? "",
  };
}
