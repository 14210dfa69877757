/**
 * Chance without a seed, for what nobody has to draw again: a seed of 32 bits
 * reaches 4 billion of the cube's 43 trillion million states.
 */
import type { RandomSource } from "../../core/random-source";

const TWO_TO_32 = 4_294_967_296;

/** The machine's own chance. */
export const CHANCE: RandomSource = {
  below(n) {
    // Numbers above the last whole multiple would favour the small ones.
    const limit = TWO_TO_32 - (TWO_TO_32 % n);
    for (;;) {
      const [drawn = 0] = crypto.getRandomValues(new Uint32Array(1));
      if (drawn < limit) return drawn % n;
    }
  },
};
