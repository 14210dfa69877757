/**
 * Turns made by the learner one after the other on the cube in their hands,
 * each shown before it is made: a set-up, or a piece brought back home.
 */
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";

/** Shape: `done` turns of `turns` are made, 0 to all of them. */
export interface TurnWalk {
  readonly start: HeldCube<PartlyKnownCubies>;
  readonly turns: readonly Turn[];
  readonly done: number;
}

/** A walk before its first turn. */
export function beginWalk(
  start: HeldCube<PartlyKnownCubies>,
  turns: readonly Turn[],
): TurnWalk {
  return { start, turns, done: 0 };
}

/** The cube as it should look now, before the turn that is asked for. */
export function cubeOfWalk(walk: TurnWalk): HeldCube<PartlyKnownCubies> {
  return applyTurns(walk.start, walk.turns.slice(0, walk.done));
}

/** The turn that is asked for; undefined when all are made. */
export function turnAskedFor(walk: TurnWalk): Turn | undefined {
  return walk.turns[walk.done];
}

/** The learner made the turn. */
export function walkOn(walk: TurnWalk): TurnWalk {
  return { ...walk, done: Math.min(walk.turns.length, walk.done + 1) };
}

/** The learner took the last turn back. */
export function walkBack(walk: TurnWalk): TurnWalk {
  return { ...walk, done: Math.max(0, walk.done - 1) };
}
