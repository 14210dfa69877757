/**
 * The decks that come with the app, one after the other from the first edge to
 * the last layer in two looks, with the starting targets. Orders and targets
 * are read from the tables of cases, so that they are written down once.
 */
import type { CaseEntry } from "../cases/case-entry";
import { shelfFamilies } from "../cases/case-families";
import {
  caseEntry,
  FIRST_LAYER_TABLE,
  starterOrder,
} from "../cases/case-table";
import {
  type LastLayerFamily,
  lastLayerFamilyOf,
} from "../cases/last-layer-families";
import {
  LAST_LAYER_COURSES,
  type LastLayerStage,
} from "../cases/last-layer-stages";
import { slotCasesBeside } from "../cases/slot-cases";
import type { Stage } from "../cases/stage";
import type { Deck, DeckCase } from "./deck";

function withStartingTarget(entry: CaseEntry): DeckCase {
  return { case: entry.id, target: entry.targets.starting };
}

/** How long the way is that is taught; the same for all where no ways are known. Units: turns. */
function lengthOfWay({ ways }: CaseEntry): number {
  return ways[0]?.turns.length ?? 0;
}

/**
 * A stage's cases, the easiest first: by rank, then by the length of the
 * taught way, then as they stand on the shelf. Mirror twins stay together, by
 * the easier of the two.
 */
function easiestFirst(
  stage: Stage,
  rankOf: (entry: CaseEntry) => number = () => 0,
  isWanted: (entry: CaseEntry) => boolean = () => true,
): readonly CaseEntry[] {
  const groups = shelfFamilies(stage)
    .flatMap((family) => family.groups)
    .map((ids) => ids.map(caseEntry).filter(isWanted))
    .filter((entries) => entries.length > 0);
  const ease = (entries: readonly CaseEntry[]) =>
    Math.min(...entries.map(lengthOfWay));
  const rank = (entries: readonly CaseEntry[]) =>
    Math.min(...entries.map(rankOf));
  return groups
    .toSorted((a, b) => rank(a) - rank(b) || ease(a) - ease(b))
    .map((entries) =>
      entries.toSorted((a, b) => lengthOfWay(a) - lengthOfWay(b)),
    )
    .flat();
}

/** Second-layer edges: from the top, then flipped at home, then those that stand in another slot and come out first. */
const SLOT_RANK = { "last-layer": 0, home: 1, elsewhere: 2 } as const;

function secondLayerRank(entry: CaseEntry): number {
  return entry.group === "slot" ? SLOT_RANK[entry.shows.family.edge] : 0;
}

/** The pairs of which neither piece stands in another slot. */
function isPairOfShelf(): (entry: CaseEntry) => boolean {
  const ids = new Set(slotCasesBeside("pairs", [1, 2, 3]).map(({ id }) => id));
  return (entry) => entry.group === "slot" && ids.has(entry.id);
}

/**
 * Which family of turning or placing the last layer comes before which: first
 * what a learner of two looks knows already, all edges up, or only edges to
 * move; last what has the most to look at.
 */
function familyRank(family: LastLayerFamily): number {
  switch (family.kind) {
    case "up":
      return family.edges === "all" ? 0 : family.edges === "none" ? 2 : 1;
    case "moved":
      return family.corners === "none" ? 0 : family.edges === "none" ? 1 : 2;
    case "shows":
      return 0;
  }
}

function lastLayerRank(entry: CaseEntry): number {
  return entry.group === "last-layer"
    ? familyRank(lastLayerFamilyOf(entry.shows))
    : 0;
}

/** The cases of several stages of the last layer, one stage after the other. */
function lastLayerCourse(
  stages: readonly LastLayerStage[],
): readonly CaseEntry[] {
  return stages.flatMap((stage) => easiestFirst(stage, lastLayerRank));
}

/** A deck whose cases are found when they are first asked for: a window's start need not wait for them. */
function starterDeck(
  about: Omit<Deck, "cases">,
  entries: () => readonly CaseEntry[],
): Deck {
  let cases: readonly DeckCase[] | undefined;
  return {
    ...about,
    get cases() {
      return (cases ??= entries().map(withStartingTarget));
    },
  };
}

/**
 * The starter decks in the order in which they are learnt: the beginner's solve
 * from the first edge to the last corner, then pairs, then the last layer in
 * two looks each and in one look each.
 *
 * New first-layer edges come three a round, because the first ways are one
 * turn long, and so do the few cases of a beginner's last layer, which share
 * their ways; everything else two.
 */
export const STARTER_DECKS: readonly Deck[] = [
  starterDeck(
    {
      id: "starter-edges",
      name: "First-layer edges",
      description:
        "Bring the four edges home, one by one, until they make a cross.",
      newPerRound: 3,
    },
    () => starterOrder("first-layer-edges"),
  ),
  starterDeck(
    {
      id: "starter-corners",
      name: "First-layer corners",
      description: "With the cross done, bring the corners home and keep it.",
      newPerRound: 2,
    },
    () => starterOrder("first-layer-corners"),
  ),
  starterDeck(
    {
      id: "starter-rest",
      name: "The rest of the first layer",
      description:
        "Pieces that stand in another's home, and two corners that changed places.",
      newPerRound: 2,
    },
    () => FIRST_LAYER_TABLE.filter((entry) => entry.order === undefined),
  ),
  starterDeck(
    {
      id: "starter-second-layer",
      name: "Second-layer edges",
      description:
        "With the first layer underneath, bring the four edges of the middle home.",
      newPerRound: 2,
    },
    () => easiestFirst("second-layer-edges", secondLayerRank),
  ),
  starterDeck(
    {
      id: "starter-last-steps",
      name: "Last layer, step by step",
      description:
        "Edges up, edges home, corners to their places, corners turned: the whole cube is done.",
      newPerRound: 3,
    },
    () => lastLayerCourse(LAST_LAYER_COURSES["beginners-steps"]),
  ),
  starterDeck(
    {
      id: "starter-pairs",
      name: "Pairs",
      description:
        "Bring a corner and the edge above it home together: the first two layers in four steps.",
      newPerRound: 2,
    },
    () => easiestFirst("pairs", () => 0, isPairOfShelf()),
  ),
  starterDeck(
    {
      id: "starter-two-looks",
      name: "Last layer in two looks each",
      description:
        "Turn the edges up, then the corners; bring the corners home, then the edges.",
      newPerRound: 2,
    },
    () => lastLayerCourse(LAST_LAYER_COURSES["two-looks-each"]),
  ),
  starterDeck(
    {
      id: "starter-turning",
      name: "Turning the last layer",
      description:
        "All 57 ways in which the top can be turned, each put right in one go (OLL).",
      newPerRound: 2,
    },
    () => easiestFirst("last-layer-turned", lastLayerRank),
  ),
  starterDeck(
    {
      id: "starter-placing",
      name: "Placing the last layer",
      description:
        "All 21 ways in which the top can be mixed, each put right in one go (PLL).",
      newPerRound: 2,
    },
    () => easiestFirst("last-layer-placed", lastLayerRank),
  ),
];

/** What a learner practises who chose no decks: the beginner's solve, from the first edge to the last corner. */
export const FIRST_COURSE: readonly Deck[] = STARTER_DECKS.slice(
  0,
  1 + STARTER_DECKS.findIndex(({ id }) => id === "starter-last-steps"),
);

/** Whether a deck came with the app: it is copied, never changed, and not stored. */
export function isStarterDeck({ id }: Pick<Deck, "id">): boolean {
  return STARTER_DECKS.some((deck) => deck.id === id);
}
