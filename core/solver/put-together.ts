/**
 * Set-ups put together from short sequences that keep what is placed: of the
 * last layer, and of one slot. There are always some, they are short, and a
 * search for so many named pieces takes seconds.
 */
import { caseEntry } from "../cases/case-table";
import { isUnmarkedPlaced } from "../cases/constraint";
import type { Position } from "../cases/position";
import { homeAfter } from "../cases/stage";
import type { HomeIndex } from "../cases/variant";
import { isFullyKnown, type PartlyKnownCubies } from "../cube/cubies";
import type { HeldCube } from "../cube/held-cube";
import type { Turn } from "../cube/turns";
import { type RandomSource, shuffled } from "../random-source";
import { afterSequence, type FaceTurnSequence } from "./face-turn-sequence";
import {
  differInLastLayer,
  type LastLayerSequences,
} from "./last-layer-set-ups";
import { differInSlots, sequencesForSlots } from "./slot-set-ups";
import { partOf, type Steps } from "../steps";
import { lightest, setUpScales } from "./weigh-set-up";

/** How many sequences are dressed and weighed: a tenth of a millisecond each. */
const MOST_WEIGHED = 60;

/** Where the stage leaves pieces open, so many sets of them are imagined. */
const IMAGINED = 3;

/** Fewer single ones would be learnt by heart: then two together are weighed as well. */
const ENOUGH_SINGLE = 8;

/** Where fewer than so many are left that show no way, a search finds others. */
const ENOUGH_OF_SLOT = 2;

/** Which kind of set-up can be put together: what is to be moved is in the last layer, or in it and one slot. */
export function togetherFor(
  from: PartlyKnownCubies,
  to: Position,
): "last-layer" | "slot" | undefined {
  switch (caseEntry(to.case).group) {
    case "last-layer":
      return differInLastLayer(from, to.cubies) ? "last-layer" : undefined;
    case "slot":
      return !isFullyKnown(to.cubies) &&
        differInSlots(from, to.cubies, slotsOf(to))
        ? "slot"
        : undefined;
    case "first-layer":
      return undefined;
  }
}

/** The slot to fill, and those in which its pieces stand. */
function slotsOf({ case: id, variant }: Position): readonly HomeIndex[] {
  const entry = caseEntry(id);
  const others = entry.group === "slot" ? entry.shows.slotsTakenUp : [];
  return [variant.home, ...others.map((slot) => homeAfter(slot, variant.home))];
}

/** The shortest of some sequences, in any order where they are as long. */
function shortestOf(
  sequences: readonly FaceTurnSequence[],
  random: RandomSource,
): readonly FaceTurnSequence[] {
  return shuffled(random, sequences)
    .toSorted((a, b) => a.length - b.length)
    .slice(0, MOST_WEIGHED);
}

/** A set-up that keeps the first two layers; undefined where every one shows a way. */
export function* lastLayerSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  random: RandomSource,
  sequences: LastLayerSequences,
): Steps<readonly Turn[] | undefined> {
  const weigh = setUpScales(from.hold, to);
  const singles = yield* partOf(
    sequences.single(from.cubies, to.cubies),
    0,
    0.4,
  );
  const candidates = shortestOf(singles, random).flatMap((sequence) =>
    weigh(sequence, true),
  );
  const most = isFullyKnown(to.cubies) ? 1 : IMAGINED;
  for (let i = 0; candidates.length < ENOUGH_SINGLE && i < most; i++) {
    const doubles = yield* partOf(
      sequences.double(from.cubies, to.cubies, random),
      0.4 + (0.6 * i) / most,
      0.4 + (0.6 * (i + 1)) / most,
    );
    candidates.push(
      ...shortestOf(doubles, random).flatMap((sequence) =>
        weigh(sequence, false),
      ),
    );
  }
  return lightest(candidates, random);
}

/** A set-up that keeps the first two layers but for some slots; undefined where there are not enough to choose from. */
export function* slotSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  random: RandomSource,
): Steps<readonly Turn[] | undefined> {
  const weigh = setUpScales(from.hold, to);
  const found = yield* sequencesForSlots(from.cubies, to.cubies, slotsOf(to));
  const fitting = found.filter(
    (turns) => !isUnmarkedPlaced(to, afterSequence(from.cubies, turns)),
  );
  const candidates = shortestOf(fitting, random).flatMap((sequence) =>
    weigh(sequence, true),
  );
  return candidates.length < ENOUGH_OF_SLOT
    ? undefined
    : lightest(candidates, random);
}
