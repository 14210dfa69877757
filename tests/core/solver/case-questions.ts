/** Questions for the case search: goals of later stages, and the states of their cases. */
import { type Pieces, CORNERS, EDGES } from "../../../core/cube/pieces";
import { markedOf, targetsOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
} from "../../../core/cases/stage";
import {
  type Cubies,
  type PartlyKnownCubies,
  SOLVED,
} from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { knownOnly } from "../../../core/cube/partly-known";
import {
  conjugate,
  NO_ROTATION,
  rotationAbout,
} from "../../../core/cube/symmetries";
import { inverseTurns } from "../../../core/notation/inverse";
import type { CaseGoal } from "../../../core/cases/case-goal";
import { turnsOf } from "../notation/turns-of";

const MIDDLE_EDGES = EDGES.slice(8);

/** The first two layers. */
export const TWO_LAYERS: Pieces = {
  corners: FIRST_LAYER_CORNERS,
  edges: [...FIRST_LAYER_EDGES, ...MIDDLE_EDGES],
};

/** The last layer turned, the first two kept. */
export const LAST_LAYER_TURNED: CaseGoal = {
  placed: TWO_LAYERS,
  turned: { corners: CORNERS.slice(4), edges: EDGES.slice(4, 8) },
};

/** Everything placed. */
export const ALL_PLACED: CaseGoal = {
  placed: { corners: CORNERS, edges: EDGES },
};

/** The state, its last layer at the bottom, that a sequence of `last-layer.json` answers. */
export function answeredBy(sequence: string): Cubies {
  const turns = inverseTurns(turnsOf(sequence));
  const { cubies, hold } = applyTurns(
    { cubies: SOLVED, hold: NO_ROTATION },
    turns,
  );
  return conjugate(conjugate(cubies, hold), rotationAbout("z", 2));
}

/** What a first-layer position asks for. */
export function goalOf(position: Position): CaseGoal {
  const targets = targetsOf(position);
  const marked = markedOf(position);
  return {
    placed: {
      corners: [...targets.corners, ...marked.corners],
      edges: [...targets.edges, ...marked.edges],
    },
  };
}

/** The first two layers solved, with one corner, one edge or both of them elsewhere. */
function withElsewhere(
  corner: readonly [position: number, orientation: number] | undefined,
  edge: readonly [position: number, orientation: number],
): PartlyKnownCubies {
  const state = knownOnly(
    SOLVED,
    new Set(FIRST_LAYER_CORNERS.filter((c) => c !== 0 || corner === undefined)),
    new Set(TWO_LAYERS.edges.filter((e) => e !== 8)),
  );
  if (corner !== undefined) {
    state.cornerPermutation[corner[0]] = 0;
    state.cornerOrientation[corner[0]] = corner[1];
  }
  state.edgePermutation[edge[0]] = 8;
  state.edgeOrientation[edge[0]] = edge[1];
  return state;
}

/** The 150 states of one pair, the solved one among them, the other three placed. */
export function pairStates(): readonly PartlyKnownCubies[] {
  const places = (ofHome: number, radix: number) =>
    [ofHome, 4, 5, 6, 7].flatMap((position) =>
      Array.from({ length: radix }, (_, o) => [position, o] as const),
    );
  return places(0, 3).flatMap((corner) =>
    places(8, 2).map((edge) => withElsewhere(corner, edge)),
  );
}

/** One second-layer edge everywhere it can be, the rest of the first two layers placed. */
export function secondLayerEdgeStates(): readonly PartlyKnownCubies[] {
  return [8, 4, 5, 6, 7].flatMap((position) =>
    [0, 1].map((o) => withElsewhere(undefined, [position, o])),
  );
}
