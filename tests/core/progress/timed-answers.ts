/** Answers of E1 for tests of what the log tells, with the times that they took. */
import type { Review } from "../../../core/memory/review";
import { ms, sampleReview } from "../memory/sample-review";

/** A clean answer of a day, changed where a test says so. */
export const answered = (day: number, changes: Partial<Review> = {}): Review =>
  sampleReview(day, changes);

/** An answer that took so many seconds, thinking and turning. */
export const timed = (
  day: number,
  thinking: number,
  turning: number,
  changes: Partial<Review> = {},
): Review =>
  answered(day, {
    thinking: ms(1000 * thinking),
    turning: ms(1000 * turning),
    total: ms(1000 * (thinking + turning)),
    ...changes,
  });
