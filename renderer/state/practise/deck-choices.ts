/** What a learner's decks and settings decide together: what is planned, how it is answered, what is marked. */
import type { CaseEntry } from "../../../core/cases/case-entry";
import { caseEntry } from "../../../core/cases/case-table";
import type { Deck } from "../../../core/deck/deck";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import type { TurnedWay } from "../../../core/memory/review";
import type { Memory } from "../../../core/memory/schedule";
import type { RoundItem } from "../../../core/memory/round";
import type { LearnerSettings } from "../learner-settings";
import { entriesPractised, type Practised } from "./practised";

/** The deck that a case counts for which was chosen from a shelf and is in no deck. Stored in rounds and reviews: never renamed. */
const SHELF_DECK = "shelf";

/** Some cases as a deck of its own, with the starting targets. */
function shelfDeck(entries: readonly CaseEntry[]): Deck {
  return {
    id: SHELF_DECK,
    name: "From the shelf",
    description: "",
    cases: entries.map(({ id, targets }) => ({
      case: id,
      target: targets.starting,
    })),
    newPerRound: 2,
  };
}

/** Every case that a learner has met as a deck, for those that none of their decks has any more. */
export function metDeck({
  memories,
}: {
  readonly memories: ReadonlyMap<string, Memory>;
}): Deck {
  const ids = new Set(Array.from(memories.values(), (memory) => memory.case));
  return shelfDeck([...ids].map(caseEntry));
}

/**
 * The decks that a round is planned from: the learner's own; where somebody
 * chose a case or a shelf also the cases that none of them has.
 */
export function decksToPlan(
  decks: readonly Deck[],
  of: Practised | undefined,
): readonly Deck[] {
  if (of === undefined) return decks;
  const own = new Set(
    decks.flatMap((deck) => deck.cases.map((entry) => entry.case)),
  );
  const others = STARTER_DECKS.map((deck) => ({
    ...deck,
    cases: deck.cases.filter((entry) => !own.has(entry.case)),
  }));
  return [...decks, ...others, shelfDeck(entriesPractised(of))];
}

/** How an item is answered: as the learner chose, where its deck allows that. */
export function answerWayOf(
  { choice }: Pick<RoundItem, "choice">,
  { answerWay }: Pick<LearnerSettings, "answerWay">,
): TurnedWay {
  const allowed = choice?.answerWays ?? [answerWay];
  return allowed.includes(answerWay) ? answerWay : (allowed[0] ?? answerWay);
}

/** Whether the piece and its home are marked: as the deck says, else while the case is being learnt and the learner wants it. */
export function isMarked(
  { asking, bare, choice }: RoundItem,
  { marks }: Pick<LearnerSettings, "marks">,
): boolean {
  // Who is shown a case is shown where to look.
  if (asking === "shown") return true;
  return choice?.pieces === undefined
    ? bare && marks
    : choice.pieces === "marked";
}
