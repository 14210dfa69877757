/**
 * Averages of results.
 *
 * Source: WCA Regulations, Article 9f, from memory. Of five attempts the best
 * and the worst are left out, and the arithmetic mean of the other three
 * counts; one that did not finish is the worst, with two the average did not
 * finish. A mean of three is the arithmetic mean; with one that did not finish
 * it did not. Best and usual are ours.
 */
import type { Milliseconds } from "../memory/review";
import { median } from "../progress/median";
import { recordedMean, type RunResult } from "./run-result";

function isTime(result: RunResult): result is Milliseconds {
  return result !== "did-not-finish";
}

function meanOf(times: readonly number[]): Milliseconds {
  return recordedMean(times.reduce((sum, one) => sum + one, 0) / times.length);
}

/** The average of the last five, best and worst left out; undefined: there are not five yet. */
export function averageOfFive(
  results: readonly RunResult[],
): RunResult | undefined {
  if (results.length < 5) return undefined;
  const sorted = results
    .slice(-5)
    .map((one) => (isTime(one) ? one : Infinity))
    .sort((a, b) => a - b)
    .slice(1, 4);
  return sorted.includes(Infinity) ? "did-not-finish" : meanOf(sorted);
}

/** The mean of the last three; undefined: there are not three yet. */
export function meanOfThree(
  results: readonly RunResult[],
): RunResult | undefined {
  if (results.length < 3) return undefined;
  const last = results.slice(-3);
  return last.every(isTime) ? meanOf(last) : "did-not-finish";
}

/** The best time; undefined: none finished. */
export function bestOf(
  results: readonly RunResult[],
): Milliseconds | undefined {
  const times = results.filter(isTime);
  return times.length === 0
    ? undefined
    : times.reduce((best, one) => (one < best ? one : best));
}

/** So many of the newest say what is usual. */
export const USUAL_OF = 12;

/** From so many on something is usual. */
const FEWEST_USUAL = 3;

/**
 * The usual time: the middle one of the newest that finished. A mean would
 * follow one run that went wrong; the middle one says what to expect.
 */
export function usualOf(
  results: readonly RunResult[],
): Milliseconds | undefined {
  const times = results.filter(isTime).slice(-USUAL_OF);
  const middle = times.length < FEWEST_USUAL ? undefined : median(times);
  return middle === undefined ? undefined : recordedMean(middle);
}
