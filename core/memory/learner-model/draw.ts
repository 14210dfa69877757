/** Draws from the usual distributions, over core's source of random integers. */
import type { RandomSource } from "../../random-source";

const STEPS = 2 ** 21;

/** A number from 0 up to but not including 1, in steps of 2^-21. */
export function drawUnit(random: RandomSource): number {
  return random.below(STEPS) / STEPS;
}

/** Whether something with this chance happens. */
export function happens(random: RandomSource, chance: number): boolean {
  return drawUnit(random) < chance;
}

/**
 * A normally distributed number.
 *
 * Source: Box and Muller, 1958.
 */
export function drawNormal(
  random: RandomSource,
  mean: number,
  deviation: number,
): number {
  const radius = Math.sqrt(-2 * Math.log(1 - drawUnit(random)));
  return mean + deviation * radius * Math.cos(2 * Math.PI * drawUnit(random));
}
