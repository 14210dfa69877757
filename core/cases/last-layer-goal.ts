/** What the stages of the last layer ask for, as a goal. */
import { applyTurns } from "../cube/held-cube";
import type { Pieces } from "../cube/pieces";
import type { Turn } from "../cube/turns";
import { type CaseGoal, quartersToGoal } from "./case-goal";
import type { LastLayerCase } from "./last-layer-cases";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
  stateOfLook,
} from "./last-layer-look";
import {
  LAST_LAYER_RULES,
  type LastLayerRule,
  type LastLayerStage,
} from "./last-layer-stages";
import { FIRST_TWO_LAYERS } from "./slot-stages";
import { holdOfVariant } from "./variant";

/** How much a stage asks of one kind of piece, what is done before it included. */
export type Demand = keyof CaseGoal | "nothing";

/** What a stage of the last layer asks of its corners, or of its edges. */
export function demandOf(
  stage: LastLayerStage,
  kind: "corner" | "edge",
): Demand {
  const { done, asks }: LastLayerRule = LAST_LAYER_RULES[stage];
  const seen = [...done, ...asks];
  const isTurned = seen.includes(
    kind === "corner" ? "cornerTwists" : "edgeFlips",
  );
  const isHome = seen.includes(
    kind === "corner" ? "cornerPlaces" : "edgePlaces",
  );
  if (isTurned && isHome) return "placed";
  if (isTurned) return "turned";
  return isHome ? "homed" : "nothing";
}

/** The pieces of the last layer of which a stage asks exactly this. */
function asked(stage: LastLayerStage, demand: Demand): Pieces {
  return {
    corners: demandOf(stage, "corner") === demand ? LAST_LAYER_CORNERS : [],
    edges: demandOf(stage, "edge") === demand ? LAST_LAYER_EDGES : [],
  };
}

/** The goal of a stage of the last layer: what it asks for, what is done before it, and the first two layers. */
export function lastLayerGoal(stage: LastLayerStage): CaseGoal {
  const placed = asked(stage, "placed");
  return {
    placed: {
      corners: [...FIRST_TWO_LAYERS.corners, ...placed.corners],
      edges: [...FIRST_TWO_LAYERS.edges, ...placed.edges],
    },
    turned: asked(stage, "turned"),
    homed: asked(stage, "homed"),
  };
}

/** Whether turns answer a case from the look that names it, seen with the last layer on top. */
export function answersLook(
  { stage, lookAt }: LastLayerCase,
  turns: readonly Turn[],
): boolean {
  const start = {
    cubies: stateOfLook(lookAt(0)),
    hold: holdOfVariant({ home: 0, seenFrom: 0 }, "down"),
  };
  return (
    quartersToGoal(applyTurns(start, turns).cubies, lastLayerGoal(stage)) !==
    undefined
  );
}
