import { dayNumber } from "../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../core/memory/review";

/** A duration or instant for tests. */
export function ms(value: number): Milliseconds {
  return value as Milliseconds;
}

const NOON = 12 * 3_600_000;

/** Noon UTC of a day, as an instant. */
export function noonOf(day: number): Milliseconds {
  return ms(day * 86_400_000 + NOON);
}

/** A clean answer of E1 asked alone at noon of a day, changed where a test says so. */
export function sampleReview(
  day: number,
  changes: Partial<Review> = {},
): Review {
  return {
    id: `review-${day}`,
    learner: "ada",
    case: "E1",
    hold: "up",
    variant: { home: 0, placed: [1, 2, 3], turnedAway: 0, seenFrom: 0 },
    firstColour: "white",
    position: "?".repeat(54),
    answerWay: "on-screen",
    asking: "alone",
    at: noonOf(day),
    utcOffset: 0,
    localDay: dayNumber(day),
    thinking: ms(2667),
    total: ms(5000),
    turns: [],
    verdict: "right",
    corrections: 0,
    slips: 0,
    hints: [],
    reported: false,
    interrupted: false,
    deck: "starter",
    target: 8,
    gradingVersion: 2,
    weightsVersion: 1,
    ...changes,
  };
}
