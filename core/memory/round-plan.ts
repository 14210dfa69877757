/** Which of a day makes the next round, and in what order it is first asked. */
import type { DayPlan } from "./day-plan";
import { type AreAlike, freshOfRound } from "./fresh-order";
import type { PlannedCase } from "./plan-candidates";
import { arranged } from "./round-arrangement";

/** How many answers asked alone a round has by default. */
export const ROUND_SIZE = 12;

/** How many answers asked alone a new case takes in its first round. */
const ANSWERS_PER_NEW_CASE = 4;

/** How often at most a case is asked in a round of extra practice. */
export const EXTRA_TIMES = 4;

/** How a round is cut from a day. */
export interface RoundChoice {
  /** About how many answers asked alone. */
  readonly size?: number;
  /** Whether to practise resting cases when nothing is due and nothing new. */
  readonly extra?: boolean;
  /** Whether two cases are easily taken for each other; absent: none are. */
  readonly areAlike?: AreAlike;
}

/**
 * The cases of the next round, in the order in which they should first be
 * asked; none where the day is done.
 *
 * What is due comes before anything new, and new cases come in only where
 * their answers still fit. A due case goes before the first new one to warm
 * up, two between new ones: they are the others that space the repeats.
 */
export function planRound(
  day: DayPlan,
  {
    size = ROUND_SIZE,
    extra = false,
    areAlike = () => false,
  }: RoundChoice = {},
): readonly PlannedCase[] {
  const due = arranged(day.due.slice(0, size), areAlike);
  // With nothing due a round is as long as its deck wants it.
  const room =
    due.length === 0
      ? day.newPerRound
      : Math.floor((size - due.length) / ANSWERS_PER_NEW_CASE);
  const fresh = freshOfRound(
    day.fresh,
    Math.min(day.newPerRound, room),
    areAlike,
  );
  if (due.length + fresh.length === 0) {
    const resting = extra ? day.resting.slice(0, size) : [];
    const fitting = Math.floor(size / Math.max(1, resting.length));
    const times = Math.min(EXTRA_TIMES, fitting);
    return arranged(resting, areAlike).map((planned) => ({
      ...planned,
      times,
    }));
  }
  const between = fresh.flatMap((planned, i) => [
    planned,
    ...due.slice(1 + 2 * i, 3 + 2 * i),
  ]);
  return arranged(
    [...due.slice(0, 1), ...between, ...due.slice(1 + 2 * fresh.length)],
    areAlike,
  );
}
