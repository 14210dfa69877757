/**
 * What a way of a case begins with: the case in its reference, from which all
 * its ways are written. The first layer is held up, everything else down; home
 * 0 is to be filled, lined up, with everything placed that can be; the last
 * layer shows the look that names the case.
 */
import { faceTurnIndex } from "../cube/face-turns";
import type { PartlyKnownCubies } from "../cube/cubies";
import { type Rotation, rotationAbout, thenSymmetry } from "../cube/symmetries";
import { present } from "../invariant";
import { simplifyTurns } from "../notation/simplify";
import { randomSource } from "../random-source";
import type { CaseAnswer } from "../solver/case-search";
import { easiestWriting, type EasyTurns } from "../solver/easiest-writing";
import type { FaceTurnSequence } from "../solver/face-turn-sequence";
import type { CaseGoal } from "./case-goal";
import type { CaseId } from "./case-ids";
import { caseEntry } from "./case-table";
import { goalOf, homesAllowed } from "./constraint";
import { holdFor } from "./hold-in-stage";
import type { LastLayerCase } from "./last-layer-cases";
import { answersLook } from "./last-layer-goal";
import { partlyKnownPosition } from "./partly-known-position";
import { startOf } from "./position";
import { randomPosition } from "./random-position";
import { FREE_LAYER } from "./stage";
import { HOME_INDICES, type Variant } from "./variant";
import { turnsInTable } from "./way";

/** A case in its reference. */
export interface WayReference {
  readonly id: CaseId;
  readonly variant: Variant;
  /** How the body is held. */
  readonly hold: Rotation;
  /** In the body frame; at least the pieces that the goal names are known. */
  readonly from: PartlyKnownCubies;
  readonly goal: CaseGoal;
}

/** The reference of a case. */
export function wayReference(id: CaseId): WayReference {
  const variant: Variant = {
    home: 0,
    placed: homesAllowed(id, 0),
    turnedAway: 0,
    seenFrom: 0,
  };
  const entry = caseEntry(id);
  const hold = holdFor(entry.stage, "up");
  // What the goal looks at is the same in every position of the variant.
  const position = randomPosition(randomSource(1), id, variant, hold);
  return {
    id,
    variant,
    hold: startOf(position).hold,
    // A stage of the last layer also looks at pieces that it does not name.
    from:
      entry.group === "last-layer"
        ? position.cubies
        : partlyKnownPosition(position, "named").cubies,
    goal: goalOf({ case: id, variant }),
  };
}

/**
 * The better of two ways: the easier, of two as easy the shorter, of two as
 * short the first, so that the outcome is always the same.
 */
export function betterOf<Way extends EasyTurns>(
  a: Way | undefined,
  b: Way,
): Way {
  if (a === undefined || b.ease < a.ease) return b;
  return b.ease === a.ease && b.turns.length < a.turns.length ? b : a;
}

/**
 * A last-layer way with the turn of the layer before it that is needed from
 * the look that names the case. How easy it is stays as it was: that turn
 * depends on how the layer happens to stand.
 */
export function fromNamedLook(
  shown: LastLayerCase,
  { turns, ease }: EasyTurns,
): EasyTurns {
  const lined = ["", "U", "U'", "U2"]
    .map((free) => simplifyTurns([...turnsInTable(free), ...turns]))
    .find((way) => answersLook(shown, way));
  return {
    turns: present(lined, "a turn of the layer shows every look of a case"),
    ease,
  };
}

/** The shortest of some ways and the easiest. */
export interface ChosenWays {
  readonly shortest: EasyTurns;
  readonly easiest: EasyTurns;
}

/**
 * The shortest and the easiest way among the answers of a case search from a
 * case's reference, as the learner makes them; of equally short ones the
 * easiest is taken.
 *
 * In the last layer a turn of the layer before counts nothing, and a way may
 * be turned from any side. Elsewhere the pieces are lined up, so a turn of the
 * free layer before is counted: ask the search for one turn more than the
 * shortest.
 * Errors: there must be an answer; none is a bug of the caller's.
 */
export function easiestOf(
  { id, hold }: Pick<WayReference, "id" | "hold">,
  answers: readonly CaseAnswer[],
): ChosenWays {
  const entry = caseEntry(id);
  let least = Infinity;
  let shortest: EasyTurns | undefined;
  let easiest: EasyTurns | undefined;
  for (const { before, turns } of answers) {
    const isLastLayer = entry.group === "last-layer";
    const sequence: FaceTurnSequence =
      isLastLayer || before === 0
        ? turns
        : [faceTurnIndex(FREE_LAYER, before), ...turns];
    const way = isLastLayer
      ? easiestFromAnySide(sequence, hold)
      : easiestWriting(sequence, hold);
    if (sequence.length < least) shortest = undefined;
    least = Math.min(least, sequence.length);
    if (sequence.length === least) shortest = betterOf(shortest, way);
    easiest = betterOf(easiest, way);
  }
  const lined = (way: EasyTurns | undefined) => {
    const found = present(way, "ways are chosen among answers");
    return entry.group === "last-layer"
      ? fromNamedLook(entry.shows, found)
      : found;
  };
  return { shortest: lined(shortest), easiest: lined(easiest) };
}

/** The easiest of the four ways that are one, seen from four sides of the last layer. */
export function easiestFromAnySide(
  sequence: FaceTurnSequence,
  hold: Rotation,
): EasyTurns {
  let best: EasyTurns | undefined;
  for (const side of HOME_INDICES)
    best = betterOf(
      best,
      easiestWriting(sequence, thenSymmetry(rotationAbout("y", side), hold)),
    );
  return present(best, "there are four sides");
}
