/** "How long will today take me?" as data. */
import type { PlannedCase } from "../memory/day-plan";
import type { Review } from "../memory/review";

/** How many of the last answers the estimate looks at. */
const RECENT = 50;

/** Between two answers: reading what happened, and setting the next one up. Units: seconds. Source: our guess, until it is measured. */
const BETWEEN_ANSWERS = 6;

/** How often a new case is asked or shown in its first round, and a known one with its share of returns. */
const ASKINGS = { new: 6, known: 1.2 } as const;

/** How long a known case takes to ask, with what lies between answers and its share of returns. Units: seconds, in and out. */
export function secondsToAsk(answerSeconds: number): number {
  return ASKINGS.known * (answerSeconds + BETWEEN_ANSWERS);
}

function median(values: readonly number[]): number | undefined {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)];
}

/**
 * How long answering some cases should take, from the learner's own times: the
 * median share of the target that their last answers took, at first the whole.
 *
 * Units: `recent` in any order, the newest are looked at; the result in
 *        minutes, rounded up; 0 for no cases.
 */
export function minutesNeeded(
  planned: readonly PlannedCase[],
  recent: readonly Review[],
): number {
  const shares = recent
    .filter((review) => review.asking !== "shown" && !review.interrupted)
    .toSorted((a, b) => b.at - a.at)
    .slice(0, RECENT)
    .map((review) => review.total / (review.target * 1000));
  const share = median(shares) ?? 1;
  const seconds = planned.reduce((sum, { target, memory, times }) => {
    const askings = memory === "new" ? ASKINGS.new : ASKINGS.known * times;
    return sum + askings * (share * target + BETWEEN_ANSWERS);
  }, 0);
  return Math.ceil(seconds / 60);
}
