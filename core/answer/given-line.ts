/** An answer with all that the rules of diagnosis look at, each worked out once and only when it is asked for. */
import { type CaseGoal } from "../cases/case-goal";
import { type CaseEntry } from "../cases/case-entry";
import { caseEntry } from "../cases/case-table";
import {
  goalOf,
  isInFreeLayer,
  markedOf,
  targetsOf,
} from "../cases/constraint";
import { type Position, startOf } from "../cases/position";
import { homeAfter } from "../cases/stage";
import { HOME_INDICES, type HomeIndex } from "../cases/variant";
import { compose, type Cubies, type PartlyKnownCubies } from "../cube/cubies";
import { holdAfterTurn } from "../cube/held-cube";
import type { Pieces } from "../cube/pieces";
import type { Rotation } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { type BodyStep, bodyLine } from "./body-line";
import { goalTest, type GoalTest } from "./goal-test";
import {
  effectOfSteps,
  type KnownWay,
  splitFrom,
  type SplitLine,
  splitLine,
  type StageWays,
  stageWays,
  type WaySource,
} from "./known-ways";
import { rightLines, type RightLine } from "./right-lines";

/** A whole way that the answer is but for its lining up. */
export interface Reading {
  readonly way: KnownWay;
  /** How many homes further on than the one asked for: 0–3. */
  readonly steps: HomeIndex;
  /** Quarters of the free layer by which the learner lined up for it: 0–3. */
  readonly linedUpBy: number;
}

/** An answer, as the rules see it. */
export class GivenLine {
  readonly position: Position;
  readonly turns: readonly Turn[];
  /** The way that is taught for this position. */
  readonly taught: readonly Turn[];
  readonly entry: CaseEntry;
  readonly hold: Rotation;
  readonly line: readonly BodyStep[];
  readonly split: SplitLine;
  /** What the answer does, whatever it is done to. */
  readonly effect: Cubies;
  readonly after: PartlyKnownCubies;
  readonly goal: CaseGoal;
  readonly isRight: GoalTest;
  readonly ways: StageWays;
  #targets: Pieces | undefined;
  #marked: Pieces | undefined;
  #rightLines: readonly RightLine[] | undefined;
  #readings: readonly Reading[] | undefined;

  constructor(
    position: Position,
    turns: readonly Turn[],
    taught: readonly Turn[],
    source: WaySource,
  ) {
    this.position = position;
    this.turns = turns;
    this.taught = taught;
    const { hold } = startOf(position);
    this.hold = hold;
    this.entry = caseEntry(position.case);
    this.line = bodyLine(hold, turns);
    this.split = splitLine(this.line);
    this.effect = effectOfSteps(this.line);
    this.after = compose(position.cubies, this.effect);
    this.goal = goalOf(position);
    this.isRight = goalTest(this.goal);
    this.ways = stageWays(this.entry.stage, source);
  }

  get start(): PartlyKnownCubies {
    return this.position.cubies;
  }

  /** The pieces to bring home. */
  get targets(): Pieces {
    return (this.#targets ??= targetsOf(this.position));
  }

  /** The pieces that are placed and must be so after the answer. */
  get marked(): Pieces {
    return (this.#marked ??= markedOf(this.position));
  }

  /** Every way that is known to answer the position, the taught one first. */
  get rightLines(): readonly RightLine[] {
    return (this.#rightLines ??= rightLines(this));
  }

  /** How many turns of the answer commit. */
  get committing(): number {
    return this.split.core.length;
  }

  /** The turns of the free layer that line the piece up: 0–3; undefined where there is nothing to line up. */
  get linedUpBy(): number | undefined {
    const { case: id, variant } = this.position;
    return isInFreeLayer(id) ? (4 - variant.turnedAway) % 4 : undefined;
  }

  /** The whole ways that the answer is, of any case and for any home. */
  get readings(): readonly Reading[] {
    return (this.#readings ??= HOME_INDICES.flatMap((steps) => {
      const home = homeAfter(this.position.variant.home, steps);
      const split = splitFrom(home, this.hold, this.turns);
      // One turn for another home is no way: any turn is one.
      if (split.core.length < (steps === 0 ? 1 : 2)) return [];
      return this.ways.withCore(split.core).map((way) => ({
        way,
        steps,
        linedUpBy: (split.lead - way.lead + 4) % 4,
      }));
    }));
  }

  /** How the cube is held after the first so many turns. */
  holdAfter(turns: number): Rotation {
    return this.turns.slice(0, turns).reduce(holdAfterTurn, this.hold);
  }
}
