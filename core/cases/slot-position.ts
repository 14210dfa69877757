/**
 * Random positions of a slot's case: uniform over all reachable states in
 * which what comes before is placed, the marked slots are, the unmarked are
 * not, and the slot's pieces are where the case has them.
 *
 * A slot of two pieces is not placed when either is missing, which the sampler
 * of states cannot say. So a state in which an unmarked slot happens to be
 * placed is drawn again: with no slot placed and the case's own pieces in the
 * last layer about one in a hundred (3 · 1/21 · 1/14).
 */
import { type Cubies, UNKNOWN } from "../cube/cubies";
import {
  type StateConstraint,
  type StateSampler,
  stateSampler,
} from "../cube/sample-state";
import { conjugate } from "../cube/symmetries";
import { invariant, present } from "../invariant";
import type { Pieces } from "../cube/pieces";
import { stateShowing } from "./orbits";
import { arePlaced } from "./recognise-slot";
import type { SlotCase } from "./slot-cases";
import { piecesOfSlot, placedBeforeSlots, slotConstraint } from "./slot-stages";
import { homeAfter, rotationToHome } from "./stage";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** What a slot's case leaves open. */
export interface SlotVariant {
  /** The slot to fill. */
  readonly home: HomeIndex;
  /** The other slots that hold their pieces; the rest must not happen to. */
  readonly placed: readonly HomeIndex[];
  /** Quarter turns of the free layer away from lined up: an index into the case's orbit. */
  readonly turnedAway: number;
}

/** The other slots that a case allows to be placed, for a given slot to fill. */
export function slotsAllowed(
  { slotsTakenUp }: SlotCase,
  home: HomeIndex,
): readonly HomeIndex[] {
  const taken = slotsTakenUp.map((slot) => homeAfter(slot, home));
  return HOME_INDICES.filter(
    (other) => other !== home && !taken.includes(other),
  );
}

/**
 * A sampler of the positions of a slot's case.
 *
 * Errors: throws for placed slots that the case does not allow
 *         (`slotsAllowed`), or turned further than its orbit goes; either is a
 *         bug of the caller's.
 */
export function slotPositionSampler(
  one: SlotCase,
  { home, placed, turnedAway }: SlotVariant,
): StateSampler {
  const { stage } = one;
  const allowed = slotsAllowed(one, home);
  invariant(
    placed.every((slot) => allowed.includes(slot)),
    "a case's own pieces do not stand in a placed slot",
  );
  const member = present(
    one.orbit[turnedAway],
    "a case turns within its orbit",
  );
  const unmarked = HOME_INDICES.filter(
    (slot) => slot !== home && !placed.includes(slot),
  ).map((slot) => piecesOfSlot(stage, slot));
  const constraint: StateConstraint = {
    ...conjugate(
      stateShowing(slotConstraint(stage, []), member),
      rotationToHome(home),
    ),
    unplacedCorners: [],
    unplacedEdges:
      stage === "pairs" ? [] : unmarked.flatMap(({ edges }) => edges),
  };
  const marked = placed.map((slot) => piecesOfSlot(stage, slot));
  for (const pieces of [placedBeforeSlots(stage), ...marked])
    placeIn(constraint, pieces);
  const sampler = stateSampler(constraint);
  if (stage !== "pairs") return sampler;
  return {
    drawInPlace(random, into: Cubies) {
      do sampler.drawInPlace(random, into);
      while (unmarked.some((pieces) => arePlaced(into, pieces)));
    },
  };
}

function placeIn(
  constraint: StateConstraint,
  { corners, edges }: Pieces,
): void {
  for (const piece of corners) {
    invariant(
      constraint.cornerPermutation[piece] === UNKNOWN,
      "a placed corner's home is its own",
    );
    constraint.cornerPermutation[piece] = piece;
    constraint.cornerOrientation[piece] = 0;
  }
  for (const piece of edges) {
    invariant(
      constraint.edgePermutation[piece] === UNKNOWN,
      "a placed edge's home is its own",
    );
    constraint.edgePermutation[piece] = piece;
    constraint.edgeOrientation[piece] = 0;
  }
}
