import { localDay } from "../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../core/memory/review";

/** Tuesday 25 November 2025, 09:00 UTC. */
export const TUESDAY_NINE = Date.UTC(2025, 10, 25, 9) as Milliseconds;

/** A review as the app writes it, with what a test says about it. */
export function sampleReview(told: Partial<Review> = {}): Review {
  const at = told.at ?? TUESDAY_NINE;
  return {
    id: crypto.randomUUID(),
    learner: "ann",
    case: "E1",
    hold: "up",
    variant: { home: 0, placed: [1, 2, 3], turnedAway: 0, seenFrom: 0 },
    firstColour: "white",
    position: "?".repeat(54),
    answerWay: "on-screen",
    asking: "alone",
    at,
    utcOffset: 0,
    localDay: localDay(at, 0),
    thinking: 2000 as Milliseconds,
    turning: 1000 as Milliseconds,
    total: 3000 as Milliseconds,
    turns: [{ turn: "F2", at: 2000 as Milliseconds }],
    verdict: "right",
    corrections: 0,
    slips: 0,
    hints: [],
    reported: false,
    interrupted: false,
    deck: "starter-edges",
    target: 8,
    gradingVersion: 1,
    weightsVersion: 1,
    ...told,
  };
}

/** `count` reviews a second apart, the oldest first. */
export function sampleReviews(
  count: number,
  told: Partial<Review> = {},
): readonly Review[] {
  return Array.from({ length: count }, (_, i) =>
    sampleReview({ ...told, at: (TUESDAY_NINE + 1000 * i) as Milliseconds }),
  );
}
