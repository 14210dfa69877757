/**
 * Chance, as an argument: core draws from a source it is given, so that a
 * position, a round or a test can be repeated from its seed.
 *
 * The generator is a library's (xoroshiro128+, 128 bits of state). Integers in
 * a range are drawn from its high bits, the good ones, by Lemire's
 * multiplication ("Fast random integer generation in an interval", 2019),
 * which is exactly uniform and seldom draws twice.
 */
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** A source of random integers. Drawing changes the source. */
export interface RandomSource {
  /** A uniform integer in [0, n). Units: n is an integer, 1 ≤ n ≤ 2^21. */
  below(n: number): number;
}

const TWO_TO_32 = 4_294_967_296;

/**
 * A seed of its own for the n-th thing drawn from another seed.
 *
 * The two are mixed, because the generator's first numbers from neighbouring
 * seeds are neighbours too.
 *
 * Units: 32-bit integers.
 * Source: the finaliser of MurmurHash3 (Appleby), a bijection whose every
 *         input bit reaches every output bit; 0x9E3779B9 is 2^32 over the
 *         golden ratio.
 */
export function seedFrom(seed: number, n: number): number {
  let mixed = (seed + Math.imul(n + 1, 0x9e3779b9)) | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}

/**
 * A source that always draws the same numbers from the same seed.
 *
 * Units: `seed` is any 32-bit integer.
 */
export function randomSource(seed: number): RandomSource {
  const generator = xoroshiro128plus(seedFrom(seed, 0));
  return {
    below(n) {
      let product = (generator.next() >>> 0) * n;
      let low = product >>> 0;
      if (low < n) {
        const threshold = TWO_TO_32 % n;
        while (low < threshold) {
          product = (generator.next() >>> 0) * n;
          low = product >>> 0;
        }
      }
      return Math.floor(product / TWO_TO_32);
    },
  };
}

/** A uniform element of a list. Errors: the list must not be empty. */
export function pick<T>(random: RandomSource, list: readonly T[]): T {
  const chosen = list[random.below(list.length)];
  if (chosen === undefined) throw new RangeError("nothing to pick from");
  return chosen;
}

/** The list in a uniformly random order, as a new array. */
export function shuffled<T>(random: RandomSource, list: readonly T[]): T[] {
  const result = [...list];
  for (let i = result.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    const [a, b] = [result[i], result[j]];
    if (a !== undefined) result[j] = a;
    if (b !== undefined) result[i] = b;
  }
  return result;
}
