/**
 * Averages and means as competitions count them, in hundredths of a second.
 *
 * Source: WCA Regulations, 9f1 (results are cut to a hundredth, averages
 *         rounded to one), 9b1 with 9f8 and 9f9 (average of 5), 9f10 (mean of
 *         3). Their rule for results over ten minutes is left out: no answer
 *         to one case takes so long.
 */

/** A result, or the absence of one. Units: hundredths of a second. */
export type Attempt = number | "unfinished";

/** The result of a measured time. Units: milliseconds in, hundredths of a second out. */
export function resultOf(total: number): number {
  return Math.floor(total / 10);
}

function meanOf(results: readonly number[]): number {
  return Math.round(
    results.reduce((sum, result) => sum + result, 0) / results.length,
  );
}

/**
 * The average of five attempts: the best and the worst are left out. One
 * unfinished counts as the worst; with two there is no average.
 */
export function averageOfFive(
  attempts: readonly [Attempt, Attempt, Attempt, Attempt, Attempt],
): Attempt {
  const finished = attempts
    .filter((attempt) => attempt !== "unfinished")
    .toSorted((a, b) => a - b);
  return finished.length < 4 ? "unfinished" : meanOf(finished.slice(1, 4));
}

/** The mean of three attempts; with one unfinished there is none. */
export function meanOfThree(
  attempts: readonly [Attempt, Attempt, Attempt],
): Attempt {
  const finished = attempts.filter((attempt) => attempt !== "unfinished");
  return finished.length < 3 ? "unfinished" : meanOf(finished);
}
