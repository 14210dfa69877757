/**
 * Every way that is known to answer a position: the one that is taught, and
 * those of its case, either hand and every school, lined up in each way that
 * makes them right. Whether they are, is found out on the cube.
 */
import type { CaseGoal } from "../cases/case-goal";
import { afterFreeQuarters, FREE_QUARTERS } from "../cases/case-goal";
import type { CaseEntry } from "../cases/case-entry";
import type { Position } from "../cases/position";
import { holdInStage } from "../cases/hold-in-stage";
import { FREE_LAYER, homeAfter } from "../cases/stage";
import { HOME_INDICES, type HomeIndex } from "../cases/variant";
import { lineUp } from "../cases/way-for-position";
import { compose } from "../cube/cubies";
import { type Rotation, rotationAbout } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { wholeCubeTurnsBetween } from "../cube/whole-cube-turns";
import { turnsThroughSymmetry } from "../notation/mirror";
import { simplifyTurns } from "../notation/simplify";
import { type BodyStep, bodyLine } from "./body-line";
import type { GoalTest } from "./goal-test";
import {
  effectForHome,
  effectOfSteps,
  type FaceStep,
  type KnownWay,
  lineKey,
  type StageWays,
  writtenHold,
} from "./known-ways";

/** A way as it is played on a position. */
export interface RightLine {
  /** As the learner sees them. */
  readonly turns: readonly Turn[];
  readonly line: readonly BodyStep[];
  /** The line without what is free at its end. */
  readonly steps: readonly FaceStep[];
  /** Whether it is made from where ways are written: with the home in front. */
  readonly isFromHome: boolean;
}

/** What the ways of a position depend on. */
interface Asked {
  readonly position: Position;
  readonly hold: Rotation;
  readonly taught: readonly Turn[];
  readonly entry: CaseEntry;
  readonly goal: CaseGoal;
  readonly isRight: GoalTest;
  readonly ways: StageWays;
}

function withoutFreeEnd(line: readonly BodyStep[]): readonly FaceStep[] {
  const isFree = line.length > 1 && line.at(-1)?.face === FREE_LAYER;
  return isFree ? line.slice(0, -1) : line;
}

/** A way as it is played for a home, the free layer turned by so many quarters first. */
function playedFor(
  { position, hold, entry }: Asked,
  way: KnownWay,
  home: HomeIndex,
  quarters: number,
): readonly Turn[] {
  const { stage } = entry;
  const inFront = holdInStage(stage, { home, seenFrom: 0 }, position.hold);
  const isTurnedOver = position.hold !== writtenHold(stage);
  return simplifyTurns([
    ...wholeCubeTurnsBetween(hold, inFront),
    ...lineUp({ turnedAway: homeAfter(0, -quarters) }, position.hold),
    ...(isTurnedOver
      ? turnsThroughSymmetry(way.turns, rotationAbout("z", 2))
      : way.turns),
  ]);
}

/** All that is known to answer a position, without repetition. */
export function rightLines(asked: Asked): readonly RightLine[] {
  const { position, hold, taught, entry, isRight, ways } = asked;
  const lines: RightLine[] = [];
  const seen = new Set<string>();
  const add = (turns: readonly Turn[], isFromHome: boolean) => {
    const line = bodyLine(hold, turns);
    if (!isRight(compose(position.cubies, effectOfSteps(line)))) return;
    const steps = withoutFreeEnd(line);
    const key = lineKey(steps);
    if (steps.length > 0 && !seen.has(key))
      lines.push({ turns, line, steps, isFromHome });
    seen.add(key);
  };
  add(taught, true);
  // Only in the last layer may a way be begun from any side.
  const sides = entry.group === "last-layer" ? HOME_INDICES : ([0] as const);
  for (const way of ways.ofCase(position.case))
    for (const steps of sides) {
      const home = homeAfter(position.variant.home, steps);
      const done = effectForHome(way.effect, home);
      for (const quarters of FREE_QUARTERS) {
        const linedUp = afterFreeQuarters(position.cubies, quarters);
        if (!isRight(compose(linedUp, done))) continue;
        const lined = (quarters - way.lead + 4) % 4;
        add(playedFor(asked, way, home, lined), steps === 0);
      }
    }
  return lines;
}
