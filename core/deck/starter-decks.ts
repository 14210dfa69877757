/**
 * The decks that come with the app: the first layer in three parts, with the
 * starting targets. Order and targets are read from the table of cases, so
 * that they are written down once.
 */
import type { CaseEntry } from "../cases/case-entry";
import { FIRST_LAYER_TABLE, starterOrder } from "../cases/case-table";
import type { Deck, DeckCase } from "./deck";

function withStartingTarget(entry: CaseEntry): DeckCase {
  return { case: entry.id, target: entry.targets.starting };
}

/**
 * The starter decks in the order in which they are learnt.
 *
 * New edges come three a round, because the first ways are one turn long;
 * everything else two.
 */
export const STARTER_DECKS: readonly Deck[] = [
  {
    id: "starter-edges",
    name: "First-layer edges",
    description:
      "Bring the four edges home, one by one, until the top shows a cross.",
    cases: starterOrder("first-layer-edges").map(withStartingTarget),
    newPerRound: 3,
  },
  {
    id: "starter-corners",
    name: "First-layer corners",
    description: "With the cross done, bring the corners home and keep it.",
    cases: starterOrder("first-layer-corners").map(withStartingTarget),
    newPerRound: 2,
  },
  {
    id: "starter-rest",
    name: "The rest of the first layer",
    description:
      "Pieces that stand in another's home, and two corners that changed places.",
    cases: FIRST_LAYER_TABLE.filter((entry) => entry.order === undefined).map(
      withStartingTarget,
    ),
    newPerRound: 2,
  },
];

/** Whether a deck came with the app: it is copied, never changed, and not stored. */
export function isStarterDeck({ id }: Pick<Deck, "id">): boolean {
  return STARTER_DECKS.some((deck) => deck.id === id);
}
