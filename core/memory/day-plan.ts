/**
 * What a learner should be asked today, and which of it makes a round.
 *
 * Nothing here is stored: a plan is computed from the decks and the log
 * whenever one is needed.
 */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import { caseEntry } from "../cases/case-table";
import { holdFor } from "../cases/hold-in-stage";
import type { AskingChoice, Deck, DeckCase } from "../deck/deck";
import { dueDay } from "./due-day";
import type { LocalDay } from "./review";
import {
  chanceNow,
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
  /** How the deck wants it asked; absent: as the memory of it opens up. */
  readonly choice?: AskingChoice;
}

/** A learner's day. */
export interface DayPlan {
  readonly today: LocalDay;
  /** Cases that are due: the fading ones first, then the least likely to be known. */
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

/** What a day is planned from. */
export interface DayPlanInput {
  readonly learner: string;
  /** In the learner's order. */
  readonly decks: readonly Deck[];
  /** The learner's own; a deck's goes before it. */
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
  /** Undefined for what is new. */
  readonly due: LocalDay | undefined;
  readonly newPerRound: number;
}

/** A deck's cases in the order in which they are to be learnt. */
function inOrderOfStages({ cases, stages }: Deck): readonly DeckCase[] {
  if (stages === undefined) return cases;
  const rank = ({ case: id }: DeckCase) => {
    const place = stages.indexOf(caseEntry(id).stage);
    return place < 0 ? stages.length : place;
  };
  return cases.toSorted((a, b) => rank(a) - rank(b));
}

function choiceOf(deckCase: DeckCase): AskingChoice | undefined {
  const { placed, home, lining, pieces, answerWays } = deckCase;
  const choice: AskingChoice = {
    ...(placed === undefined ? {} : { placed }),
    ...(home === undefined ? {} : { home }),
    ...(lining === undefined ? {} : { lining }),
    ...(pieces === undefined ? {} : { pieces }),
    ...(answerWays === undefined ? {} : { answerWays }),
  };
  return Object.keys(choice).length === 0 ? undefined : choice;
}

function candidates(input: DayPlanInput): readonly Candidate[] {
  const { decks, learner, memories, today, settings = {} } = input;
  const seen = new Set<string>();
  return decks.flatMap((deck) =>
    inOrderOfStages(deck).flatMap((deckCase) => {
      const { case: id, target } = deckCase;
      const hold = holdFor(caseEntry(id).stage, deck.hold ?? input.hold);
      const key = memoryKey(learner, id, hold);
      if (seen.has(key) || input.only?.(id) === false) return [];
      seen.add(key);
      const memory = memories.get(key);
      const choice = choiceOf(deckCase);
      const planned: PlannedCase = {
        case: id,
        hold,
        deck: deck.id,
        target,
        memory: memoryState(memory, today, settings),
        times: 1,
        ...(choice === undefined ? {} : { choice }),
      };
      return {
        planned,
        chance: memory === undefined ? 0 : chanceNow(memory, today, settings),
        due: memory === undefined ? undefined : dueDay(memory, deck.ceiling),
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
  const unmet = all.filter(({ planned }) => planned.memory === "new");
  const fresh = unmet.filter(({ newPerRound }) => newPerRound > 0);
  const known = all
    .filter(({ planned }) => planned.memory !== "new")
    .toSorted(bySinking);
  const planned = (list: readonly Candidate[]) => list.map((c) => c.planned);
  const isDue = ({ due }: Candidate) => due !== undefined && due <= input.today;
  const resting = known.filter((candidate) => !isDue(candidate));
  return {
    today: input.today,
    due: planned(known.filter(isDue)),
    fresh: planned(fresh),
    heldBack: unmet.length - fresh.length,
    resting: planned(resting),
    nextDue: resting
      .map(({ due }) => due)
      .toSorted((a, b) => (a ?? 0) - (b ?? 0))[0],
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
  // With nothing due a round is as long as its deck wants it.
  const room =
    due.length === 0
      ? day.newPerRound
      : Math.floor((size - due.length) / ANSWERS_PER_NEW_CASE);
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
