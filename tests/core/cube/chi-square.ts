/**
 * Pearson's test of drawn samples against known chances.
 *
 * The limit is the chi-square quantile by Wilson and Hilferty's cube-root
 * approximation (1931) at a given number of standard deviations of the normal
 * law. With 4.5 a fair generator exceeds it about once in 300,000 tests; seeds
 * are fixed, so that a test either always passes or always fails.
 */
export const SIGMAS = 4.5;

/** What a test of samples found. */
export interface ChiSquare {
  /** Whether the samples look as expected. */
  readonly passes: boolean;
  readonly statistic: number;
  readonly limit: number;
  /** Samples that belong to no cell. */
  readonly strays: number;
  readonly smallestExpected: number;
}

export function chiSquareLimit(degrees: number, sigmas = SIGMAS): number {
  const a = 2 / (9 * degrees);
  return degrees * (1 - a + sigmas * Math.sqrt(a)) ** 3;
}

/**
 * Compares counts with chances.
 *
 * Shape: `chances` sums to 1; a sample whose cell is not in it is a stray, and
 *        one stray fails the test.
 */
export function chiSquare<Cell>(
  samples: Iterable<Cell>,
  chances: ReadonlyMap<Cell, number>,
): ChiSquare {
  const counts = new Map<Cell, number>();
  let n = 0;
  let strays = 0;
  for (const sample of samples) {
    n++;
    if (!chances.has(sample)) strays++;
    counts.set(sample, (counts.get(sample) ?? 0) + 1);
  }
  let statistic = 0;
  let smallestExpected = Infinity;
  for (const [cell, chance] of chances) {
    const expected = n * chance;
    smallestExpected = Math.min(smallestExpected, expected);
    statistic += ((counts.get(cell) ?? 0) - expected) ** 2 / expected;
  }
  const limit = chiSquareLimit(chances.size - 1);
  return {
    passes: strays === 0 && statistic <= limit && smallestExpected >= 20,
    statistic,
    limit,
    strays,
    smallestExpected,
  };
}

/** Equal chances for every cell. */
export function evenly<Cell>(
  cells: readonly Cell[],
): ReadonlyMap<Cell, number> {
  return new Map(cells.map((cell) => [cell, 1 / cells.length]));
}
