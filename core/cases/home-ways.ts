/**
 * The easiest ways of the first two layers' cases: from the reference, with
 * everything placed that can be, and all of it placed again afterwards. A way
 * that keeps so much answers every variant of its case.
 *
 * Pieces are lined up in the reference, so a turn of the free layer that a way
 * begins with is part of it and counted; one at the end never helps.
 */
import { conjugate } from "../cube/symmetries";
import { present } from "../invariant";
import { EASE_PARTS, easeOf, HAND_COSTS } from "../solver/ease-of-turning";
import type { EasyTurns } from "../solver/easiest-writing";
import { inverseFaceTurn } from "../solver/face-turn-sequence";
import { eachKeepingSequence } from "../solver/keeping-sequences";
import {
  HOME_SLOTS,
  movesOfPiece,
  numbersOfPieces,
  pieceSeen,
  piecesOfNumbers,
  slotsOfPieces,
} from "../solver/seen-marks";
import type { Steps } from "../steps";
import { EVERY_TURN } from "../solver/turn-costs";
import { faceTurnsOfSequence } from "../solver/turns-in-holds";
import type { CaseId } from "./case-ids";
import { markedOf, targetsOf } from "./constraint";
import { betterOf, type WayReference } from "./way-reference";

/**
 * Up to which cost ways are looked for by all turns; above it, where all turns
 * would take minutes a step, only by turns of five faces.
 * Units: fifths of an easy quarter turn.
 */
const MOST_OF_ALL_TURNS = 44;

/** The costs up to which ways are looked for, in turn. */
const LIMITS: readonly number[] = Array.from(
  { length: 20 },
  (_, i) => 20 + 4 * i,
);

const ALL_TURNS_MADE = EVERY_TURN.map((_, turn) => turn);
const FIVE_FACES = ALL_TURNS_MADE.filter((turn) =>
  ["U", "R", "F", "D", "L"].includes(EVERY_TURN[turn]?.layer ?? ""),
);

/**
 * The easiest ways, by all sequences up to a cost that keep what is placed:
 * nothing is easier within the model of `hands.ts` and the rules of
 * `keeping-sequences.ts`, where the cost is at most `MOST_OF_ALL_TURNS`.
 */
export function* easiestHomeWays(
  references: readonly WayReference[],
): Steps<ReadonlyMap<CaseId, EasyTurns>> {
  const groups = new Map<string, WayReference[]>();
  for (const reference of references) {
    const name = keptSeen(reference).join();
    groups.set(name, [...(groups.get(name) ?? []), reference]);
  }
  const all = new Map<CaseId, EasyTurns>();
  let done = 0;
  for (const group of groups.values()) {
    for (const most of LIMITS) {
      yield done / groups.size;
      const open = group.filter(({ id }) => !isProved(all.get(id), most));
      if (open.length === 0) break;
      lookUpTo(most, open, all);
    }
    done++;
  }
  return all;
}

/** Whether all easier ways were looked at. */
function isProved(way: EasyTurns | undefined, soFar: number): boolean {
  // The limit before this one was searched to its end.
  const searched = LIMITS[LIMITS.findIndex((limit) => limit === soFar) - 1];
  return (
    way !== undefined &&
    searched !== undefined &&
    way.ease * EASE_PARTS <= searched
  );
}

/** The numbers of the pieces to keep, as they are seen. */
function keptSeen({ id, variant, hold }: WayReference): readonly number[] {
  return numbersOfPieces(markedOf({ case: id, variant }))
    .map((piece) => pieceSeen(hold, piece))
    .toSorted((a, b) => a - b);
}

function lookUpTo(
  most: number,
  group: readonly WayReference[],
  best: Map<CaseId, EasyTurns>,
): void {
  const first = present(group[0], "no group is empty");
  const targets = numbersOfPieces(
    targetsOf({ case: first.id, variant: first.variant }),
  ).map((piece) => pieceSeen(first.hold, piece));
  const idBySlots = new Map(
    group.map(({ id, hold, from }) => [
      slotsOfPieces(conjugate(from, hold), targets).join(),
      id,
    ]),
  );
  const question = {
    kept: piecesOfNumbers(keptSeen(first)),
    turns: most > MOST_OF_ALL_TURNS ? FIVE_FACES : ALL_TURNS_MADE,
    costs: HAND_COSTS,
    most,
    mostFromEnd: Math.floor(0.45 * most),
  };
  eachKeepingSequence(question, (sequence, bound) => {
    const back = faceTurnsOfSequence(sequence).map(inverseFaceTurn).reverse();
    const slots = targets.map((piece) => {
      const moves = movesOfPiece(piece);
      return back.reduce(
        (slot, turn) => moves[slot * 18 + turn] ?? slot,
        HOME_SLOTS[piece] ?? 0,
      );
    });
    const id = idBySlots.get(slots.join());
    if (id === undefined) return;
    const known = best.get(id);
    if (known !== undefined && bound / EASE_PARTS > known.ease) return;
    const turns = sequence.map((turn) =>
      present(EVERY_TURN[turn], "a sequence is made of turns"),
    );
    best.set(id, betterOf(known, { turns, ease: easeOf(turns) }));
  });
}
