/**
 * How far a case is opened up: a new case has its home in front and its piece
 * lined up, a settling one may be turned away, a kept one is seen from
 * anywhere with all its stickers.
 */
import type { CaseId } from "../cases/case-ids";
import { randomVariant } from "../cases/random-variant";
import { HOME_INDICES, type HomeIndex, type Variant } from "../cases/variant";
import type { AskingChoice } from "../deck/deck";
import { present } from "../invariant";
import { type RandomSource, shuffled } from "../random-source";
import type { MemoryState } from "./schedule";

/** How much of a case varies, least first. */
export const OPENINGS = ["front", "turned", "anywhere"] as const;

export type Opening = (typeof OPENINGS)[number];

const OPENING_OF: Readonly<Record<MemoryState, Opening>> = {
  new: "front",
  settling: "turned",
  // What is slipping away is asked as when it was being learnt.
  fading: "turned",
  kept: "anywhere",
};

/** How far the memory of a case opens it up. */
export function openingOf(memory: MemoryState): Opening {
  return OPENING_OF[memory];
}

/** Whether pieces that do not matter are bare plastic: until the case is kept. */
export function isBare(memory: MemoryState): boolean {
  return memory !== "kept";
}

/**
 * The homes of a case in the order in which a round asks them, a cycle of all
 * four: no two askings in a row share a home, and so none share a front
 * colour. A new case begins with the reference home.
 */
export function homesInOrder(
  random: RandomSource,
  memory: MemoryState,
): readonly HomeIndex[] {
  return memory === "new"
    ? [0, ...shuffled(random, [1, 2, 3] as const)]
    : shuffled(random, HOME_INDICES);
}

/**
 * A variant of a case as far as it is opened up, in a given home; what a deck
 * wants goes before that. Where it does not say, the other homes are placed as
 * far as the case allows.
 */
export function drawVariant(
  random: RandomSource,
  id: CaseId,
  opening: Opening,
  home: HomeIndex,
  choice: Pick<AskingChoice, "placed" | "home" | "lining"> = {},
): Variant {
  const { placed, home: seen, lining } = choice;
  return randomVariant(random, id, {
    homes: [home],
    ...(placed === undefined ? {} : { placedCount: placed }),
    turnedAway:
      lining === undefined ? opening !== "front" : lining === "turned-away",
    seenFromAnywhere:
      seen === undefined ? opening === "anywhere" : seen === "anywhere",
  });
}

/** The home of the n-th asking in a round. */
export function homeOfAsking(
  homes: readonly HomeIndex[],
  asking: number,
): HomeIndex {
  return present(homes[asking % homes.length], "a cycle of homes is not empty");
}
