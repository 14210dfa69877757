/**
 * What a learner should be asked today, and which of it makes a round.
 *
 * Nothing here is stored: a plan is computed from the decks and the log
 * whenever one is needed.
 */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import type { Deck } from "../deck/deck";
import type { LocalDay } from "./review";
import {
  chanceNow,
  isDue,
  type Memory,
  memoryKey,
  type MemoryState,
  memoryState,
  type ScheduleSettings,
} from "./schedule";

/** A case as a round asks it. */
export interface PlannedCase {
  readonly case: CaseId;
  readonly hold: Hold;
  /** Id of the first deck in the learner's order that has the case: it gives the target. */
  readonly deck: string;
  /** Units: seconds. */
  readonly target: number;
  readonly memory: MemoryState;
  /** How often a case that is known is asked in the round. */
  readonly times: number;
}

/** A learner's day. */
export interface DayPlan {
  readonly today: LocalDay;
  /** Cases that are due: the fading ones first, then the least likely to be known. */
  readonly due: readonly PlannedCase[];
  /** Cases not met yet, in the decks' order. */
  readonly fresh: readonly PlannedCase[];
  /** Cases that need no practice today, the least likely to be known first. */
  readonly resting: readonly PlannedCase[];
  /** How many fresh cases a round may bring in. */
  readonly newPerRound: number;
}

/** What a day is planned from. */
export interface DayPlanInput {
  readonly learner: string;
  /** In the learner's order. */
  readonly decks: readonly Deck[];
  readonly hold: Hold;
  /** As `memoriesOf` returns them; keyed by `memoryKey`. */
  readonly memories: ReadonlyMap<string, Memory>;
  readonly today: LocalDay;
  readonly settings?: ScheduleSettings;
  /** Only these cases; all of the decks' where absent. */
  readonly only?: (id: CaseId) => boolean;
}

interface Candidate {
  readonly planned: PlannedCase;
  readonly chance: number;
  readonly isDue: boolean;
  readonly newPerRound: number;
}

function candidates(input: DayPlanInput): readonly Candidate[] {
  const { decks, hold, learner, memories, today, settings = {} } = input;
  const seen = new Set<CaseId>();
  return decks.flatMap((deck) =>
    deck.cases.flatMap(({ case: id, target }) => {
      if (seen.has(id) || input.only?.(id) === false) return [];
      seen.add(id);
      const memory = memories.get(memoryKey(learner, id, hold));
      const planned: PlannedCase = {
        case: id,
        hold,
        deck: deck.id,
        target,
        memory: memoryState(memory, today, settings),
        times: 1,
      };
      return {
        planned,
        chance: memory === undefined ? 0 : chanceNow(memory, today, settings),
        isDue: memory !== undefined && isDue(memory, today),
        newPerRound: deck.newPerRound,
      };
    }),
  );
}

function bySinking(a: Candidate, b: Candidate): number {
  const fading = (c: Candidate) => (c.planned.memory === "fading" ? 0 : 1);
  return fading(a) - fading(b) || a.chance - b.chance;
}

/** What is due today, what is new, and what may rest. */
export function planDay(input: DayPlanInput): DayPlan {
  const all = candidates(input);
  const fresh = all.filter(({ planned }) => planned.memory === "new");
  const known = all
    .filter(({ planned }) => planned.memory !== "new")
    .toSorted(bySinking);
  const planned = (list: readonly Candidate[]) => list.map((c) => c.planned);
  return {
    today: input.today,
    due: planned(known.filter((c) => c.isDue)),
    fresh: planned(fresh),
    resting: planned(known.filter((c) => !c.isDue)),
    newPerRound: fresh[0]?.newPerRound ?? 0,
  };
}

/** How many answers asked alone a round has by default. */
export const ROUND_SIZE = 12;

/** How many answers asked alone a new case takes in its first round. */
const ANSWERS_PER_NEW_CASE = 4;

/** How often at most a case is asked in a round of extra practice. */
const EXTRA_TIMES = 4;

/** How a round is cut from a day. */
export interface RoundChoice {
  /** About how many answers asked alone. */
  readonly size?: number;
  /** Whether to practise resting cases when nothing is due and nothing new. */
  readonly extra?: boolean;
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
  { size = ROUND_SIZE, extra = false }: RoundChoice = {},
): readonly PlannedCase[] {
  const due = day.due.slice(0, size);
  const room = Math.floor((size - due.length) / ANSWERS_PER_NEW_CASE);
  const fresh = day.fresh.slice(0, Math.min(day.newPerRound, room));
  if (due.length + fresh.length === 0) {
    const resting = extra ? day.resting.slice(0, size) : [];
    const fitting = Math.floor(size / Math.max(1, resting.length));
    const times = Math.min(EXTRA_TIMES, fitting);
    return resting.map((planned) => ({ ...planned, times }));
  }
  const between = fresh.flatMap((planned, i) => [
    planned,
    ...due.slice(1 + 2 * i, 3 + 2 * i),
  ]);
  return [...due.slice(0, 1), ...between, ...due.slice(1 + 2 * fresh.length)];
}
