/**
 * The ways taught for second-layer edges: eight turns that bring an edge from
 * the top layer down to the right, and their twin. An edge that stands in a
 * slot is first brought out by the same turns, then in.
 *
 * Which of them answers a case is found by playing them, so that nothing is
 * written down twice. Source of the eight turns: common practice; check-values,
 * `sequences.json`.
 */
import { applyTurns } from "../cube/held-cube";
import { isEdgePlaced } from "../cube/partly-known";
import type { Quarters, Turn } from "../cube/turns";
import { present } from "../invariant";
import { simplifyTurns } from "../notation/simplify";
import { holdInStage } from "./hold-in-stage";
import { stateShowing } from "./orbits";
import type { SlotCase } from "./slot-cases";
import { edgeOfSlot, slotConstraint } from "./slot-stages";
import { HOME_INDICES } from "./variant";
import { turnsInTable } from "./way";

/** An edge above the front, its side colour that of the front, goes to the right. */
const FROM_THE_FRONT = turnsInTable("U R U' R' U' F' U F");

/** The twin: an edge above the right side, its side colour that of the right side, goes to the front. */
const FROM_THE_RIGHT = turnsInTable("U' F' U F U R U' R'");

function quarters(layer: "U" | "y", count: number): readonly Turn[] {
  return count === 0 ? [] : [{ layer, quarters: count as Quarters }];
}

/** Ways to bring the edge of one of the slots out, or nothing: the nearest slot first, counted by `y`. */
const OUT: readonly (readonly Turn[])[] = [
  [],
  ...[0, 1, 3, 2].map((turned) => [
    ...quarters("y", turned),
    ...FROM_THE_FRONT,
    ...quarters("y", (4 - turned) % 4),
  ]),
];

/** Every way out and in, simplified; made when first asked for. */
let candidates: readonly (readonly Turn[])[] | undefined;

function waysOutAndIn(): readonly (readonly Turn[])[] {
  candidates ??= OUT.flatMap((out) =>
    HOME_INDICES.flatMap((turned) =>
      [FROM_THE_FRONT, FROM_THE_RIGHT].map((bringIn) =>
        simplifyTurns([...out, ...quarters("U", turned), ...bringIn]),
      ),
    ),
  );
  return candidates;
}

/** The taught way of a case as seen in the reference: its slot at the front right, lined up. */
export function taughtForSlot({ stage, orbit }: SlotCase): readonly Turn[] {
  const start = {
    cubies: stateShowing(
      slotConstraint(stage, []),
      present(orbit[0], "no orbit is empty"),
    ),
    hold: holdInStage(stage, { home: 0, seenFrom: 0 }, "down"),
  };
  return present(
    waysOutAndIn().find((way) =>
      isEdgePlaced(applyTurns(start, way).cubies, edgeOfSlot(0)),
    ),
    "an edge that was brought out can be brought in",
  );
}
