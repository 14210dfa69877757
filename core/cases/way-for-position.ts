/**
 * From a way, written for a lined-up position with the home in front, to the
 * turns that answer one concrete position.
 */
import type { PartlyKnownCubies } from "../cube/cubies";
import { applyTurns, type HeldCube } from "../cube/held-cube";
import { rotationAbout } from "../cube/symmetries";
import {
  type Quarters,
  type Turn,
  turnAxis,
  type TurnLayer,
} from "../cube/turns";
import { wholeCubeTurnsBetween } from "../cube/whole-cube-turns";
import { present } from "../invariant";
import { turnsThroughSymmetry } from "../notation/mirror";
import { simplifyTurns } from "../notation/simplify";
import { caseEntry, wayOfSchool } from "./case-table";
import { targetsOf } from "./constraint";
import { type Position, startOf } from "./position";
import { recognise } from "./recognise";
import { FREE_LAYER, homeOfCorner, homeOfEdge, type Stage } from "./stage";
import { holdInStage } from "./hold-in-stage";
import type { Hold, HomeIndex, Variant } from "./variant";
import type { Hand, Way, WaySchool } from "./way";

/** Which of the ways of a case to take. */
export interface WayChoice {
  readonly school: WaySchool;
  readonly hand: Hand;
}

/** The way taught first, for the right hand. */
export const TAUGHT_FIRST: WayChoice = { school: "first", hand: "right" };

/** About which the free layer turns, however the first layer is held. */
const FREE_AXIS = turnAxis({ layer: FREE_LAYER, quarters: 1 });

function quarterTurns(layer: TurnLayer, quarters: number): readonly Turn[] {
  const rest = ((quarters % 4) + 4) % 4;
  return rest === 0 ? [] : [{ layer, quarters: rest as Quarters }];
}

function inHold(turns: readonly Turn[], hold: Hold): readonly Turn[] {
  return hold === "up"
    ? turns
    : turnsThroughSymmetry(turns, rotationAbout("z", 2));
}

/** The turn of the whole cube, if any, that brings the home to the front, as the learner sees it. */
export function bringHomeInFront(
  variant: Pick<Variant, "seenFrom">,
  hold: Hold,
): readonly Turn[] {
  return inHold(quarterTurns("y", -variant.seenFrom), hold);
}

/**
 * The turn of the free layer, if any, that lines the piece up, as the learner
 * sees it: of the bottom when the first layer is held up, of the top when it
 * is held down.
 */
export function lineUp(
  variant: Pick<Variant, "turnedAway">,
  hold: Hold,
): readonly Turn[] {
  return inHold(quarterTurns(FREE_LAYER, -variant.turnedAway), hold);
}

/** What comes before a way: the home brought to the front, then the piece lined up. */
export function lineUpTurns(
  position: Pick<Position, "variant" | "hold">,
): readonly Turn[] {
  const { variant, hold } = position;
  return [...bringHomeInFront(variant, hold), ...lineUp(variant, hold)];
}

/**
 * What comes before a way, and the way. Where a way begins with turns about
 * the axis of the free layer they are one with the lining up: nobody turns a
 * layer and then the same layer again.
 */
function joined(
  before: readonly Turn[],
  way: readonly Turn[],
): readonly Turn[] {
  if (before.length === 0) return way;
  const begin = way.findIndex((turn) => turnAxis(turn) !== FREE_AXIS);
  const along = begin < 0 ? way.length : begin;
  return [
    ...simplifyTurns([...before, ...way.slice(0, along)]),
    ...way.slice(along),
  ];
}

/** A way as it is played on this position. `way` is one of `waysOf(position.case, position.hold)`, or a coach's own. */
export function wayForPosition(
  position: Pick<Position, "variant" | "hold">,
  way: Pick<Way, "turns">,
): readonly Turn[] {
  return joined(lineUpTurns(position), way.turns);
}

/**
 * The turns that answer what a home shows on any cube: the home brought to the
 * front, the free layer lined up, the way of the case. In the last layer the
 * home says which side is in front. Undefined where nothing is left to do,
 * where a piece is not known, and where the stage's ways are found on demand.
 */
export function turnsToAnswer(
  cube: HeldCube<PartlyKnownCubies>,
  stage: Stage,
  home: HomeIndex,
  hold: Hold,
  choice: WayChoice = TAUGHT_FIRST,
): readonly Turn[] | undefined {
  const shown = recognise(cube.cubies, stage, home);
  if (shown === undefined) return undefined;
  const way = wayOfSchool(shown.case, choice.school, hold, choice.hand);
  if (way === undefined) return undefined;
  const inFront = holdInStage(stage, { home, seenFrom: 0 }, hold);
  return joined(
    [...wholeCubeTurnsBetween(cube.hold, inFront), ...lineUp(shown, hold)],
    way.turns,
  );
}

/**
 * What is answered one after the other where a case has no way of its own:
 * first turning the last layer, then placing it.
 */
const LAST_LAYER_STEPS: readonly Stage[] = [
  "last-layer-turned",
  "last-layer-placed",
];

/** The stages and homes to answer for a position, one after the other. */
function stepsOf(
  position: Position,
): readonly (readonly [stage: Stage, home: HomeIndex])[] {
  const { stage, group, ways } = caseEntry(position.case);
  const { home } = position.variant;
  if (group === "last-layer" && ways.length === 0)
    return LAST_LAYER_STEPS.map((step) => [step, home]);
  if (group !== "first-layer") return [[stage, home]];
  const { corners, edges } = targetsOf(position);
  return [...corners.map(homeOfCorner), ...edges.map(homeOfEdge)].map(
    (target) => [stage, present(target, "targets are of the first layer")],
  );
}

/**
 * The turns that answer a position, whatever it asks. Two corners in each
 * other's homes are answered one after the other: the first as the case it
 * shows, which brings the other down, then that one. A last layer for which
 * there is no one way is first turned, then placed.
 */
export function turnsForPosition(
  position: Position,
  choice: WayChoice = TAUGHT_FIRST,
): readonly Turn[] {
  let cube = startOf(position);
  const all: Turn[] = [];
  for (const [stage, home] of stepsOf(position)) {
    const turns = turnsToAnswer(cube, stage, home, position.hold, choice);
    if (turns === undefined) continue;
    all.push(...turns);
    cube = applyTurns(cube, turns);
  }
  return all;
}
