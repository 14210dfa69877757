/** Which of a day makes the next round, and in what order it is first asked. */
import type { CaseId } from "../cases/case-ids";
import type { DayPlan } from "./day-plan";
import type { PlannedCase } from "./plan-candidates";
import { arranged } from "./round-arrangement";

/** How many answers asked alone a round has by default. */
export const ROUND_SIZE = 12;

/** How many answers asked alone a new case takes in its first round. */
const ANSWERS_PER_NEW_CASE = 4;

/** How often at most a case is asked in a round of extra practice. */
export const EXTRA_TIMES = 4;

/** How far down the deck a new case is looked for that is like none met just now. */
const LOOK_AHEAD = 3;

/** So many new cases a round has at least where it has any: repeats want others between them. */
const LEAST_NEW = 2;

/** How a round is cut from a day. */
export interface RoundChoice {
  /** About how many answers asked alone. */
  readonly size?: number;
  /** Whether to practise resting cases when nothing is due and nothing new. */
  readonly extra?: boolean;
  /** Whether two cases are easily taken for each other; absent: none are. */
  readonly areAlike?: (a: CaseId, b: CaseId) => boolean;
}

/**
 * The new cases of a round: in the decks' order, but look-alikes on days of
 * their own as far as the next few cases allow it. Twins and cases that face
 * another way in the same place are taken for each other the more the closer
 * together they are met.
 */
function freshOf(
  { fresh, justMet }: DayPlan,
  count: number,
  areAlike: (a: CaseId, b: CaseId) => boolean,
): readonly PlannedCase[] {
  const chosen: PlannedCase[] = [];
  const met = [...justMet];
  for (const planned of fresh.slice(0, count + LOOK_AHEAD)) {
    if (chosen.length === count) break;
    if (met.some((other) => areAlike(planned.case, other.case))) continue;
    chosen.push(planned);
    met.push(planned);
  }
  const missing = Math.max(0, Math.min(LEAST_NEW, count) - chosen.length);
  const others = fresh.filter((planned) => !chosen.includes(planned));
  const filled = [...chosen, ...others.slice(0, missing)];
  return filled.toSorted((a, b) => fresh.indexOf(a) - fresh.indexOf(b));
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
  const fresh = freshOf(day, Math.min(day.newPerRound, room), areAlike);
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
  return [...due.slice(0, 1), ...between, ...due.slice(1 + 2 * fresh.length)];
}
