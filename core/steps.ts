/**
 * Long work that can be driven in slices: a generator that yields how far it
 * has come and returns its value. Core knows neither workers nor clocks; who
 * drives it decides how long a slice is, and cancels by not going on.
 *
 * A promise would need a scheduler and could not be cancelled between two of
 * its own steps; a generator needs neither and runs at once in a test.
 */

/** Work in slices. Yields progress, ascending from 0 to 1; returns the value. */
export type Steps<T> = Generator<number, T, void>;

/** Drives the work to its end without pausing. */
export function runToEnd<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * Part of a larger piece of work: its progress is fitted into [from, to].
 *
 * Units: `from` and `to` are progress of the whole, 0 ≤ from ≤ to ≤ 1.
 */
export function* partOf<T>(
  steps: Steps<T>,
  from: number,
  to: number,
): Steps<T> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield from + (to - from) * step.value;
  }
}
