/**
 * Permutations of up to eight things as numbers, and back.
 *
 * Lexicographic rank in the factorial number system, read from nibbles packed
 * in one word: a permutation of eight is ranked in seven shifts, where counting
 * inversions looks at 28 pairs.
 */

/**
 * The lexicographic rank of `permutation[from … from + length − 1]`.
 *
 * Shape:  these entries are a permutation of base … base + length − 1,
 *         length ≤ 8.
 * Result: an integer in [0, length!).
 */
export function permutationRank(
  permutation: Uint8Array,
  from: number,
  length: number,
  base: number,
): number {
  // Nibble v holds how many of 0 … v − 1 have not been met yet.
  let unmet = 0x76543210;
  let rank = 0;
  for (let i = 0; i < length - 1; i++) {
    const shift = (permutation[from + i]! - base) << 2;
    rank = rank * (length - i) + ((unmet >>> shift) & 15);
    unmet -= 0x11111110 << shift;
  }
  return rank;
}

/** Writes the permutation of a rank: the inverse of `permutationRank`. */
export function writePermutation(
  rank: number,
  permutation: Uint8Array,
  from: number,
  length: number,
  base: number,
): void {
  let rest = rank;
  for (let i = length - 1; i >= 0; i--) {
    const radix = length - i;
    const digit = rest % radix;
    rest = (rest - digit) / radix;
    permutation[from + i] = digit;
    for (let j = i + 1; j < length; j++)
      if (permutation[from + j]! >= digit) permutation[from + j]!++;
  }
  for (let i = 0; i < length; i++) permutation[from + i]! += base;
}
