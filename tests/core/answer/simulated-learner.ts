/** A learner who knows ways and answers positions by them, rightly. */
import type { WaySource } from "../../../core/answer/known-ways";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import { holdFor, holdInStage } from "../../../core/cases/hold-in-stage";
import { type Position, startOf } from "../../../core/cases/position";
import { recognise } from "../../../core/cases/recognise";
import type { Stage } from "../../../core/cases/stage";
import type { HomeIndex } from "../../../core/cases/variant";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { HANDS } from "../../../core/cases/way";
import { applyTurns, viewFace } from "../../../core/cube/held-cube";
import type { Quarters, Turn } from "../../../core/cube/turns";
import { wholeCubeTurnsBetween } from "../../../core/cube/whole-cube-turns";
import { simplifyTurns } from "../../../core/notation/simplify";
import { pick, type RandomSource } from "../../../core/random-source";
import { TWO_LARGEST } from "./table-of-ways";

/** A learner on one position. */
export class SimulatedLearner {
  readonly random: RandomSource;
  readonly position: Position;
  readonly #source: WaySource;
  #rightInTwo: readonly Turn[] | undefined;

  constructor(random: RandomSource, position: Position, source: WaySource) {
    this.random = random;
    this.position = position;
    this.#source = source;
  }

  /** The same learner on another position. */
  on(position: Position): SimulatedLearner {
    return new SimulatedLearner(this.random, position, this.#source);
  }

  get stage(): Stage {
    return caseEntry(this.position.case).stage;
  }

  get home(): HomeIndex {
    return this.position.variant.home;
  }

  /** A way of a case, as written, of either hand. */
  wayOf(id: CaseId, stage: Stage = this.stage): readonly Turn[] | undefined {
    const hold = holdFor(stage, this.position.hold);
    const ways = HANDS.flatMap((hand) => this.#source(id, hold, hand));
    return ways.length === 0 ? undefined : pick(this.random, ways).turns;
  }

  /** The turns of the whole cube that bring a home to where ways begin. */
  bringToFront(home: HomeIndex): readonly Turn[] {
    const { hold } = this.position;
    return wholeCubeTurnsBetween(
      startOf(this.position).hold,
      holdInStage(this.stage, { home, seenFrom: 0 }, hold),
    );
  }

  /** The turn that takes the free layer back by so many quarters. */
  lineUp(turnedAway: number): readonly Turn[] {
    const quarters = (((-turnedAway % 4) + 4) % 4) as 0 | Quarters;
    const layer = viewFace(startOf(this.position).hold, "D");
    return quarters === 0 ? [] : [{ layer, quarters }];
  }

  /** A way for a home, lined up as told. */
  played(
    home: HomeIndex,
    turnedAway: number,
    way: readonly Turn[],
  ): readonly Turn[] {
    return simplifyTurns([
      ...this.bringToFront(home),
      ...this.lineUp(turnedAway),
      ...way,
    ]);
  }

  /** One right answer, of any way. */
  right(): readonly Turn[] | undefined {
    const { variant, case: id } = this.position;
    if (TWO_LARGEST.includes(this.stage))
      return (this.#rightInTwo ??= this.#findInTwo());
    // Two corners have no way of their own: one after the other.
    if (id === "S1" || id === "S2") return turnsForPosition(this.position);
    const way = this.wayOf(this.position.case);
    return way && this.played(variant.home, variant.turnedAway, way);
  }

  /** Turning the last layer, then placing it: the one way that this learner knows. */
  #findInTwo(): readonly Turn[] | undefined {
    let cube = startOf(this.position);
    const all: Turn[] = [];
    for (const stage of ["last-layer-turned", "last-layer-placed"] as const) {
      const shown = recognise(cube.cubies, stage, this.home);
      if (shown === undefined) continue;
      const way = this.wayOf(shown.case, stage);
      if (way === undefined) return undefined;
      const { hold } = this.position;
      const turns = [
        ...wholeCubeTurnsBetween(
          cube.hold,
          holdInStage(stage, { home: this.home, seenFrom: 0 }, hold),
        ),
        ...this.lineUp(shown.turnedAway),
        ...way,
      ];
      all.push(...turns);
      cube = applyTurns(cube, turns);
    }
    return simplifyTurns(all);
  }
}
