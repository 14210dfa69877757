/**
 * Which of many sequences a learner is given as a set-up: none that shows a
 * way, and of the rest any of those that are the least trouble for the hands.
 */
import { type Position, startOf } from "../cases/position";
import type { Rotation } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { pick, type RandomSource } from "../random-source";
import { dressed, type DressedSequence } from "./dressing";
import type { FaceTurnSequence } from "./face-turn-sequence";
import { giveawayJudge } from "./giveaway";

/** A set-up as the learner makes it, and how much trouble it is; what it gives away counts as trouble. */
export type WeighedSetUp = DressedSequence;

/** A choice is made among set-ups this much more trouble than the best. */
const TROUBLE_TO_SPARE = 1;

/** Ending with what undoes a way's first turn is as bad as this much more trouble. */
const TROUBLE_OF_FIRST_TURN = 1.5;

/**
 * Weighs the set-ups of one position, for a cube that is held so at first.
 *
 * Shape: of a sequence that shows a way nothing comes back.
 */
export function setUpScales(
  from: Rotation,
  to: Position,
): (
  sequence: FaceTurnSequence,
  mustTurnWhole: boolean,
) => readonly WeighedSetUp[] {
  const giveaway = giveawayJudge(to);
  const end = startOf(to).hold;
  return (sequence, mustTurnWhole) => {
    const given = giveaway(sequence);
    if (given === "way") return [];
    const { turns, trouble } = dressed(sequence, from, end, mustTurnWhole);
    const extra = given === "first-turn" ? TROUBLE_OF_FIRST_TURN : 0;
    return [{ turns, trouble: trouble + extra }];
  };
}

/** One of those that are the least trouble; undefined where there are none. */
export function lightest(
  candidates: readonly WeighedSetUp[],
  random: RandomSource,
): readonly Turn[] | undefined {
  const least = Math.min(...candidates.map(({ trouble }) => trouble));
  const good = candidates.filter(
    ({ trouble }) => trouble <= least + TROUBLE_TO_SPARE,
  );
  return good.length === 0 ? undefined : pick(random, good).turns;
}
