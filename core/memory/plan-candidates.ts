/** The cases of a learner's decks, each once, as a day could ask them. */
import { caseEntry } from "../cases/case-table";
import type { CaseId } from "../cases/case-ids";
import { holdFor } from "../cases/hold-in-stage";
import type { Hold } from "../cases/variant";
import type { AskingChoice, Deck, DeckCase, DeckCeiling } from "../deck/deck";
import { dueDay } from "./due-day";
import type { LocalDay, RecognisingWay } from "./review";
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
  /** Whether its answers count for memory, or it is asked beyond the schedule; absent: alone, they count. */
  readonly asking?: "alone" | "extra";
  /** Absent: turned, as the learner chose and the deck allows. */
  readonly answerWay?: RecognisingWay;
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

/** A case that could be asked. */
export interface Candidate {
  readonly planned: PlannedCase;
  /** The chance that it would be known today. Units: 0–1, 0 for what is new. */
  readonly chance: number;
  /** Undefined for what is new. */
  readonly memory: Memory | undefined;
  /** When it comes back; undefined for what is new. */
  readonly due: LocalDay | undefined;
  /** Of its deck. */
  readonly newPerRound: number;
  /** Of its deck. */
  readonly ceiling: DeckCeiling | undefined;
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

/** Every case of the decks, in their order and the order in which they are to be learnt. */
export function planCandidates(input: DayPlanInput): readonly Candidate[] {
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
        memory,
        chance: memory === undefined ? 0 : chanceNow(memory, today, settings),
        due: memory === undefined ? undefined : dueDay(memory, deck.ceiling),
        newPerRound: deck.newPerRound,
        ceiling: deck.ceiling,
      };
    }),
  );
}
