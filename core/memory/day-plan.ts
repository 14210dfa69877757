/**
 * What a learner could be asked today: what is due, what is new, what may
 * rest.
 *
 * Nothing here is stored: a plan is computed from the decks and the log
 * whenever one is needed. `today.ts` says what of it fits the learner's
 * minutes, `round-plan.ts` which of it makes a round.
 */
import {
  type Candidate,
  type DayPlanInput,
  planCandidates,
  type PlannedCase,
} from "./plan-candidates";
import type { LocalDay } from "./review";

/** A learner's day. */
export interface DayPlan {
  readonly today: LocalDay;
  /** Cases that are due: the fading ones first, then those whose deck wants them sooner than their memory, then the least likely to be known. */
  readonly due: readonly PlannedCase[];
  /** Cases not met yet, in the decks' order; none of decks that bring no new ones. */
  readonly fresh: readonly PlannedCase[];
  /** How many cases not met yet such decks hold back. */
  readonly heldBack: number;
  /** Cases that need no practice today, the least likely to be known first. */
  readonly resting: readonly PlannedCase[];
  /** When the first of the resting ones is due; undefined without any. */
  readonly nextDue: LocalDay | undefined;
  /** How many fresh cases a round may bring in. */
  readonly newPerRound: number;
}

/** A ceiling is kept only by going before what can wait. */
function urgency({ planned, due, memory }: Candidate): number {
  if (planned.memory === "fading") return 0;
  const isDeckSooner = (due ?? Infinity) < (memory?.lastsUntil ?? 0);
  return isDeckSooner ? 1 : 2;
}

function bySinking(a: Candidate, b: Candidate): number {
  return urgency(a) - urgency(b) || a.chance - b.chance;
}

/** The candidates of a day, sorted for a plan. */
export interface SortedCandidates {
  readonly due: readonly Candidate[];
  readonly fresh: readonly Candidate[];
  readonly heldBack: number;
  readonly resting: readonly Candidate[];
}

/** What is due, new and resting. Order: as `DayPlan` says. */
export function sortedCandidates(input: DayPlanInput): SortedCandidates {
  const all = planCandidates(input);
  const unmet = all.filter(({ memory }) => memory === undefined);
  const fresh = unmet.filter(({ newPerRound }) => newPerRound > 0);
  const isDue = ({ due }: Candidate) => due !== undefined && due <= input.today;
  const known = all.filter(({ memory }) => memory !== undefined);
  return {
    due: known.filter(isDue).toSorted(bySinking),
    fresh,
    heldBack: unmet.length - fresh.length,
    resting: known
      .filter((candidate) => !isDue(candidate))
      .toSorted((a, b) => a.chance - b.chance),
  };
}

/** The cases of candidates. */
export function plannedOf(
  candidates: readonly Candidate[],
): readonly PlannedCase[] {
  return candidates.map(({ planned }) => planned);
}

/** Sorted candidates as a day. */
export function dayOf(today: LocalDay, sorted: SortedCandidates): DayPlan {
  const { due, fresh, heldBack, resting } = sorted;
  const days = resting.flatMap((one) => one.due ?? []);
  return {
    today,
    due: plannedOf(due),
    fresh: plannedOf(fresh),
    heldBack,
    resting: plannedOf(resting),
    nextDue: days.toSorted((a, b) => a - b)[0],
    newPerRound: fresh[0]?.newPerRound ?? 0,
  };
}

/** What is due today, what is new, and what may rest. */
export function planDay(input: DayPlanInput): DayPlan {
  return dayOf(input.today, sortedCandidates(input));
}
