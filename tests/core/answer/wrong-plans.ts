/** A way for something else than what was asked. */
import type { CaseId } from "../../../core/cases/case-ids";
import type { CaseGoal } from "../../../core/cases/case-goal";
import { piecesOfHome, targetsOf } from "../../../core/cases/constraint";
import { demandOf } from "../../../core/cases/last-layer-goal";
import { startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { recognise } from "../../../core/cases/recognise";
import { isLastLayerStage } from "../../../core/cases/stage";
import { HOME_INDICES } from "../../../core/cases/variant";
import { pick } from "../../../core/random-source";
import { createCaseSearch } from "../../../core/solver/case-search";
import { turnSeen } from "../../../core/solver/face-turn-sequence";
import { runToEnd } from "../../../core/steps";
import { shownFor } from "./shown-for-another-home";
import type { SimulatedLearner } from "./simulated-learner";
import { TWO_LARGEST } from "./table-of-ways";
import type { Made } from "./wrong-turns";

/** Another piece of the stage that is not home: brought home, or into the home asked for. */
export function wrongPiece(learner: SimulatedLearner): Made | undefined {
  const { variant, cubies } = learner.position;
  const stage = learner.stage;
  if (isLastLayerStage(stage)) return undefined;
  const other = pick(learner.random, HOME_INDICES);
  if (other === variant.home || variant.placed.includes(other))
    return undefined;
  const into = pick(learner.random, [other, variant.home]);
  const targets = targetsOf(learner.position);
  const pieces = piecesOfHome(stage, other);
  if (pieces.corners.some((piece) => targets.corners.includes(piece)))
    return undefined;
  const shown = shownFor(learner.position, other, into);
  const taken = recognise(cubies, stage, other);
  const way = shown && learner.wayOf(shown.case);
  if (taken === undefined || shown === undefined || way === undefined)
    return undefined;
  return {
    turns: learner.played(into, shown.turnedAway, way),
    detail: String(into),
  };
}

/** What is asked for, brought to another home. */
export function anotherHome(learner: SimulatedLearner): Made | undefined {
  const home = pick(learner.random, HOME_INDICES);
  if (home === learner.home) return undefined;
  const { corners, edges } = targetsOf(learner.position);
  if (corners.length > 1) return undefined;
  if (corners.length + edges.length === 0) return undefined;
  const shown = shownFor(learner.position, learner.home, home);
  const way = shown && learner.wayOf(shown.case);
  if (shown === undefined || way === undefined) return undefined;
  return {
    turns: learner.played(home, shown.turnedAway, way),
    detail: String(home),
  };
}

/** Answered as another case. */
export function otherCase(
  learner: SimulatedLearner,
  other: CaseId,
): Made | undefined {
  const { variant, case: id } = learner.position;
  if (other === id) return undefined;
  if (TWO_LARGEST.includes(learner.stage)) {
    const asked = randomPosition(
      learner.random,
      other,
      { ...variant, turnedAway: 0 },
      learner.position.hold,
    );
    const right = learner.on(asked).right();
    return (
      right && {
        turns: [...learner.lineUp(variant.turnedAway), ...right],
        detail: other,
      }
    );
  }
  const way = learner.wayOf(other);
  return (
    way && {
      turns: learner.played(variant.home, variant.turnedAway, way),
      detail: other,
    }
  );
}

const CRUDE = createCaseSearch();

/** What is asked for is brought home by the first turns that do it, whatever they take along. */
export function othersLost(learner: SimulatedLearner): Made | undefined {
  const stage = learner.stage;
  const targets = targetsOf(learner.position);
  const goal: CaseGoal = isLastLayerStage(stage)
    ? {
        placed: { corners: [], edges: [] },
        [demandOf(stage, "edge")]: targets,
      }
    : { placed: targets };
  if (isLastLayerStage(stage) && stage !== "last-layer-edges-turned")
    return undefined;
  const found = runToEnd(
    CRUDE.answers({
      from: learner.position.cubies,
      goal,
      mostTurns: 5,
      extraTurns: 1,
    }),
  ).filter(({ turns }) => turns.length > 0);
  if (found.length === 0) return undefined;
  const crude = pick(learner.random, found);
  const { hold } = startOf(learner.position);
  return {
    turns: [
      ...learner.lineUp(-crude.before),
      ...crude.turns.map((turn) => turnSeen(hold, turn)),
    ],
    detail: "",
  };
}
