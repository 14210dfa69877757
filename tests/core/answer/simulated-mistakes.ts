/**
 * A learner who makes mistakes of known kinds, in every stage: what they
 * meant to do is known, so it can be seen whether diagnosis finds it out.
 *
 * A mistake is drawn uniformly from the kinds that are possible on a position;
 * what turns out right after all is drawn again.
 */
import { judge } from "../../../core/answer/judge";
import type { Explanation } from "../../../core/answer/explanation";
import type { WaySource } from "../../../core/answer/known-ways";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { mostPlaced } from "../../../core/cases/constraint";
import { holdFor } from "../../../core/cases/hold-in-stage";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import type { Stage } from "../../../core/cases/stage";
import { HOLDS } from "../../../core/cases/variant";
import { applyTurns } from "../../../core/cube/held-cube";
import { rotationAbout } from "../../../core/cube/symmetries";
import type { Turn } from "../../../core/cube/turns";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { turnsThroughSymmetry } from "../../../core/notation/mirror";
import { simplifyTurns } from "../../../core/notation/simplify";
import { pick, type RandomSource } from "../../../core/random-source";
import { SimulatedLearner } from "./simulated-learner";
import { anotherHome, otherCase, othersLost, wrongPiece } from "./wrong-plans";
import {
  backwards,
  fromAnotherSide,
  linedUpWrongly,
  type Made,
  oneTurnChanged,
  stoppedEarly,
} from "./wrong-turns";

/** The kinds of mistakes that are made. */
export type MistakeKind = Exclude<Explanation["kind"], "unexplained">;

/** All kinds, in the order of diagnosis. */
export const MISTAKE_KINDS: readonly MistakeKind[] = [
  "stopped-early",
  "lined-up-wrongly",
  "wrong-piece",
  "another-home",
  "one-turn",
  "twin",
  "other-side",
  "inverse",
  "other-case",
  "others-lost",
];

/** A wrong answer whose reason is known. */
export interface Mistake {
  readonly kind: MistakeKind;
  readonly position: Position;
  readonly turns: readonly Turn[];
  /** The way that is taught for the position. */
  readonly taught: readonly Turn[];
  /** What the explanation of it should name, as text: a case, a home, a slip. */
  readonly detail: string;
}

/** A try at a mistake of a kind; none where the position leaves no room for it. */
function makeMistake(
  learner: SimulatedLearner,
  kind: MistakeKind,
): Made | undefined {
  switch (kind) {
    case "stopped-early":
      return stoppedEarly(learner);
    case "lined-up-wrongly":
      return linedUpWrongly(learner);
    case "wrong-piece":
      return wrongPiece(learner);
    case "another-home":
      return anotherHome(learner);
    case "one-turn":
      return oneTurnChanged(learner);
    case "twin":
      return otherCase(learner, caseEntry(learner.position.case).twin);
    case "other-side":
      return fromAnotherSide(learner);
    case "inverse":
      return backwards(learner);
    case "other-case":
      return otherCase(
        learner,
        pick(learner.random, casesOfStage(learner.stage)).id,
      );
    case "others-lost":
      return othersLost(learner);
  }
}

/** A position of any case of a stage, opened up in every way. */
function positionOf(random: RandomSource, stage: Stage): Position {
  const { id } = pick(random, casesOfStage(stage));
  const most = mostPlaced(id);
  const variant = randomVariant(random, id, {
    placedCount: random.below(most + 1) as 0 | 1 | 2 | 3,
    turnedAway: true,
    seenFromAnywhere: true,
  });
  return randomPosition(
    random,
    id,
    variant,
    holdFor(stage, pick(random, HOLDS)),
  );
}

/** One wrong answer in a stage. */
export function simulatedMistake(
  random: RandomSource,
  stage: Stage,
  source: WaySource,
): Mistake {
  for (;;) {
    const position = positionOf(random, stage);
    const learner = new SimulatedLearner(random, position, source);
    const taught = learner.right();
    const possible = MISTAKE_KINDS.flatMap((kind) => {
      const made = makeMistake(learner, kind);
      return made === undefined || !isWrong(position, made.turns)
        ? []
        : [{ kind, ...made }];
    });
    if (possible.length === 0) continue;
    const made = pick(random, possible);
    return {
      ...made,
      turns: heldOtherwise(random, simplifyTurns(made.turns)),
      position,
      taught: taught ?? [],
    };
  }
}

function isWrong(position: Position, turns: readonly Turn[]): boolean {
  // The window does not take an answer in which nothing is turned.
  const isTurned = outerBlockTurns(simplifyTurns(turns)) > 0;
  return (
    isTurned && !judge(position, applyTurns(startOf(position), turns)).right
  );
}

/** The same on the body, now and then begun from another side. */
function heldOtherwise(
  random: RandomSource,
  turns: readonly Turn[],
): readonly Turn[] {
  if (random.below(5) > 0) return turns;
  const quarters = pick(random, [1, 2, 3] as const);
  return simplifyTurns([
    { layer: "y", quarters },
    ...turnsThroughSymmetry(turns, rotationAbout("y", quarters)),
  ]);
}
