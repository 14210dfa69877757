/**
 * Sequences that bring the pieces of a slot to where a case has them and keep
 * the rest of the first two layers: a short sequence between turns of the last
 * layer, or two of them. Where the case's pieces stand in other slots, these
 * are emptied in the same way. A search for so many named pieces takes ten
 * times as long.
 */
import { afterFreeQuarters, FREE_QUARTERS } from "../cases/case-goal";
import { arePlaced } from "../cases/recognise-slot";
import { FIRST_TWO_LAYERS, piecesOfSlot } from "../cases/slot-stages";
import { FREE_LAYER, rotationToHome } from "../cases/stage";
import type { HomeIndex } from "../cases/variant";
import { compose, invert, type PartlyKnownCubies } from "../cube/cubies";
import { faceTurnIndex } from "../cube/face-turns";
import { agreesWith } from "../cube/partly-known";
import type { Pieces } from "../cube/pieces";
import { sequenceImage } from "./case-starts";
import {
  afterSequence,
  effectOf,
  type FaceTurnSequence,
  normalised,
} from "./face-turn-sequence";
import { sequencesKeepingAllButSlot0 } from "./short-sequences";
import type { Steps } from "../steps";

/** All pieces of the first two layers but those of some slots. */
function allBut(slots: readonly HomeIndex[]): Pieces {
  const out = slots.map((slot) => piecesOfSlot("pairs", slot));
  return {
    corners: FIRST_TWO_LAYERS.corners.filter(
      (piece) => !out.some(({ corners }) => corners.includes(piece)),
    ),
    edges: FIRST_TWO_LAYERS.edges.filter(
      (piece) => !out.some(({ edges }) => edges.includes(piece)),
    ),
  };
}

/** Whether two states differ in some slots and the last layer only, so that a sequence can be put together. */
export function differInSlots(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
  slots: readonly HomeIndex[],
): boolean {
  const kept = allBut(slots);
  return arePlaced(from, kept) && arePlaced(to, kept);
}

/** Of two the first has at most so many turns: 18 sequences a slot. */
const MOST_OF_FIRST = 5;

/** Sequences dealt with between two pauses: about 2 ms. */
const SEQUENCES_A_STEP = 64;

const free = (quarters: number): FaceTurnSequence =>
  quarters === 0 ? [] : [faceTurnIndex(FREE_LAYER, quarters)];

interface Begun {
  readonly turns: FaceTurnSequence;
  readonly isFirst: boolean;
  readonly state: PartlyKnownCubies;
}

/** What has been begun: turns of the last layer, and a brief sequence after them. */
function begunFrom(
  from: PartlyKnownCubies,
  brief: readonly FaceTurnSequence[],
): readonly Begun[] {
  return FREE_QUARTERS.flatMap((before) => [
    {
      turns: free(before),
      isFirst: false,
      state: afterFreeQuarters(from, before),
    },
    ...brief.map((first) => {
      const turns = [...free(before), ...first];
      return { turns, isFirst: true, state: afterSequence(from, turns) };
    }),
  ]);
}

/**
 * The sequences from one state to the other.
 *
 * Shape: both states as `differInSlots` asks for; the first slot is the one to
 *        fill; each sequence normalised.
 */
export function* sequencesForSlots(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
  slots: readonly HomeIndex[],
): Steps<readonly FaceTurnSequence[]> {
  const all = slots.flatMap((slot) =>
    sequencesKeepingAllButSlot0().map((turns) =>
      sequenceImage(rotationToHome(slot), turns),
    ),
  );
  const keyOf = placesOfTargets(to, slots[0] ?? 0);
  const begun = new Map<number, Begun[]>();
  const brief = all.filter(({ length }) => length <= MOST_OF_FIRST);
  for (const one of begunFrom(from, brief)) {
    const key = keyOf(one.state);
    begun.set(key, [...(begun.get(key) ?? []), one]);
  }
  const found: FaceTurnSequence[] = [];
  for (const [i, last] of all.entries()) {
    if (i % SEQUENCES_A_STEP === 0) yield i / all.length;
    const undone = invert(effectOf(last));
    for (const after of FREE_QUARTERS) {
      const before = compose(afterFreeQuarters(to, (4 - after) % 4), undone);
      for (const between of FREE_QUARTERS) {
        const wanted = afterFreeQuarters(before, (4 - between) % 4);
        for (const { turns, isFirst, state } of begun.get(keyOf(wanted)) ?? [])
          if ((isFirst || between === 0) && agreesWith(state, wanted))
            found.push(
              normalised([...turns, ...free(between), ...last, ...free(after)]),
            );
      }
    }
  }
  return found;
}

/** A number for where a slot's own pieces are that a state names: most of what tells two states apart. */
function placesOfTargets(
  named: PartlyKnownCubies,
  slot: HomeIndex,
): (state: PartlyKnownCubies) => number {
  const { corners, edges } = piecesOfSlot("pairs", slot);
  const corner = corners.find((one) => named.cornerPermutation.includes(one));
  const edge = edges.find((one) => named.edgePermutation.includes(one));
  return (state) => {
    let key = 0;
    if (corner !== undefined) {
      const at = state.cornerPermutation.indexOf(corner);
      key = 3 * at + (state.cornerOrientation[at] ?? 0);
    }
    if (edge === undefined) return key;
    const at = state.edgePermutation.indexOf(edge);
    return key * 24 + 2 * at + (state.edgeOrientation[at] ?? 0);
  };
}
