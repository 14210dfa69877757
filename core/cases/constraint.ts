/**
 * What a stage and a variant demand: which pieces are to be brought home,
 * which are placed and must stay so, which must not happen to be placed.
 */
import { type PartlyKnownCubies, UNKNOWN } from "../cube/cubies";
import { isCornerPlaced, isEdgePlaced } from "../cube/partly-known";
import {
  type Corner,
  CORNERS,
  type Edge,
  EDGES,
  type Pieces,
  NO_PIECES,
} from "../cube/pieces";
import type { StateConstraint } from "../cube/sample-state";
import { type AskedPiece, askedPieces, type CaseGoal } from "./case-goal";
import type { CaseId, FirstLayerId } from "./case-ids";
import { caseEntry } from "./case-table";
import { lastLayerGoal } from "./last-layer-goal";
import { LAST_LAYER_CORNERS, LAST_LAYER_EDGES } from "./last-layer-look";
import { LAST_LAYER_RULES, type LastLayerRule } from "./last-layer-stages";
import type { CaseConstraint } from "./orbits";
import { homesTakenUp, isSituationInFreeLayer, situationIn } from "./situation";
import { slotsAllowed } from "./slot-position";
import {
  FIRST_TWO_LAYERS,
  piecesOfSlot,
  placedBeforeSlots,
} from "./slot-stages";
import {
  cornerOfHome,
  edgeOfHome,
  FIRST_LAYER_EDGES,
  type FirstLayerStage,
  FREE_LAYER,
  homeAfter,
  isLastLayerStage,
  type SlotStage,
  type Stage,
} from "./stage";
import { HOME_INDICES, type HomeIndex, type Variant } from "./variant";

/** A case asked in a variant: all that its constraint depends on. */
export interface Asked {
  readonly case: CaseId;
  readonly variant: Pick<Variant, "home" | "placed" | "turnedAway">;
}

/** The pieces of a stage that belong into one home. */
export function piecesOfHome(
  stage: FirstLayerStage | SlotStage,
  home: HomeIndex,
): Pieces {
  switch (stage) {
    case "first-layer-edges":
      return { corners: [], edges: [edgeOfHome(home)] };
    case "first-layer-corners":
      return { corners: [cornerOfHome(home)], edges: [] };
    case "second-layer-edges":
    case "pairs":
      return piecesOfSlot(stage, home);
  }
}

/** What must be placed before a stage begins, and stays so. */
export function placedBefore(stage: Stage): Pieces {
  if (isLastLayerStage(stage)) return FIRST_TWO_LAYERS;
  switch (stage) {
    case "first-layer-edges":
      return NO_PIECES;
    case "first-layer-corners":
      return { corners: [], edges: FIRST_LAYER_EDGES };
    case "second-layer-edges":
    case "pairs":
      return placedBeforeSlots(stage);
  }
}

/** Several lists of pieces as one. */
export function allPieces(lists: readonly Pieces[]): Pieces {
  return {
    corners: lists.flatMap(({ corners }) => corners),
    edges: lists.flatMap(({ edges }) => edges),
  };
}

/**
 * The pieces to bring home, the variant's home first; in the last layer those
 * of which the stage asks anything.
 */
export function targetsOf({ case: id, variant }: Asked): Pieces {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer": {
      const { corners, edges } = situationIn(entry.id, variant);
      return {
        corners: corners.map(({ piece }) => piece),
        edges: edges.map(({ piece }) => piece),
      };
    }
    case "slot":
      return piecesOfSlot(entry.stage, variant.home);
    case "last-layer": {
      const { asks }: LastLayerRule = LAST_LAYER_RULES[entry.stage];
      const asksOf = (kind: string) =>
        asks.some((part) => part.startsWith(kind));
      return {
        corners: asksOf("corner") ? LAST_LAYER_CORNERS : [],
        edges: asksOf("edge") ? LAST_LAYER_EDGES : [],
      };
    }
  }
}

/**
 * The pieces that are placed and must be placed after the answer: those of the
 * stages before, and of the variant's placed homes. What a stage of the last
 * layer keeps of that layer is not among them, for it is right only up to
 * turns of the layer: see `keptOf`.
 */
export function markedOf({ case: id, variant }: Asked): Pieces {
  const { stage } = caseEntry(id);
  if (isLastLayerStage(stage)) return FIRST_TWO_LAYERS;
  return allPieces([
    ...variant.placed.map((home) => piecesOfHome(stage, home)),
    placedBefore(stage),
  ]);
}

/**
 * The pieces of the stage that must not happen to be placed. Of a pair either
 * may be, but not both: `isUnmarkedPlaced` says whether they are.
 */
export function unmarkedOf(asked: Asked): Pieces {
  const { stage } = caseEntry(asked.case);
  return stage === "pairs" ? NO_PIECES : allPieces(unmarkedHomes(asked));
}

/** What belongs into each home that must not happen to be filled. */
function unmarkedHomes({ case: id, variant }: Asked): readonly Pieces[] {
  const { stage } = caseEntry(id);
  if (isLastLayerStage(stage)) return [];
  const targets = targetsOf({ case: id, variant });
  return HOME_INDICES.filter((home) => !variant.placed.includes(home))
    .map((home) => piecesOfHome(stage, home))
    .filter(
      ({ corners, edges }) =>
        !corners.some((piece) => targets.corners.includes(piece)) &&
        !edges.some((piece) => targets.edges.includes(piece)),
    );
}

/** Whether a home that must not happen to be filled is filled on a cube; unknown pieces are not placed. */
export function isUnmarkedPlaced(
  asked: Asked,
  state: PartlyKnownCubies,
): boolean {
  return unmarkedHomes(asked).some(
    ({ corners, edges }) =>
      corners.every((piece) => isCornerPlaced(state, piece)) &&
      edges.every((piece) => isEdgePlaced(state, piece)),
  );
}

/** What an answer to a case must reach, up to turns of the free layer. */
export function goalOf(asked: Asked): CaseGoal {
  const { stage } = caseEntry(asked.case);
  return isLastLayerStage(stage)
    ? lastLayerGoal(stage)
    : { placed: allPieces([targetsOf(asked), markedOf(asked)]) };
}

/**
 * The pieces that are right before the answer and must be so after it, up to
 * turns of the free layer: all that the goal names but those to bring home.
 */
export function keptOf(asked: Asked): Pieces {
  const targets = targetsOf(asked);
  const named = askedPieces(goalOf(asked));
  const isKept = (kind: AskedPiece["kind"], piece: Corner | Edge) =>
    named.some((one) => one.kind === kind && one.piece === piece);
  return {
    corners: CORNERS.filter(
      (piece) => isKept("corner", piece) && !targets.corners.includes(piece),
    ),
    edges: EDGES.filter(
      (piece) => isKept("edge", piece) && !targets.edges.includes(piece),
    ),
  };
}

/** All pieces that a stage is about: its own and those before it. */
export function stagePieces(stage: Stage): Pieces {
  if (isLastLayerStage(stage))
    return allPieces([
      FIRST_TWO_LAYERS,
      { corners: LAST_LAYER_CORNERS, edges: LAST_LAYER_EDGES },
    ]);
  const own = HOME_INDICES.map((home) => piecesOfHome(stage, home));
  return allPieces([...own, placedBefore(stage)]);
}

/** Whether the free layer of a case can be turned away from lined up: one of its pieces lies in it. */
export function isInFreeLayer(id: CaseId): boolean {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer":
      return isSituationInFreeLayer(entry.id);
    case "slot":
      return entry.shows.orbit.length > 1;
    case "last-layer":
      return true;
  }
}

/** Whether a case has homes that may be placed or not, and can be seen from elsewhere: the last layer has neither. */
export function hasHomes(id: CaseId): boolean {
  return caseEntry(id).group !== "last-layer";
}

/** The homes other than its own that a case allows to be placed. */
export function homesAllowed(
  id: CaseId,
  home: HomeIndex,
): readonly HomeIndex[] {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer": {
      const taken = homesTakenUp(entry.id).map((reference) =>
        homeAfter(reference, home),
      );
      return HOME_INDICES.filter((other) => !taken.includes(other));
    }
    case "slot":
      return slotsAllowed(entry.shows, home);
    case "last-layer":
      return [];
  }
}

/**
 * The sets of `count` other homes that a case allows to be placed, for a given
 * home. Shape: each ascending; none where the case does not allow so many.
 */
export function allowedPlacedSets(
  id: CaseId,
  home: HomeIndex,
  count: number,
): readonly (readonly HomeIndex[])[] {
  let sets: readonly (readonly HomeIndex[])[] = [[]];
  for (const other of homesAllowed(id, home))
    sets = [...sets, ...sets.map((set) => [...set, other])];
  return sets.filter((set) => set.length === count);
}

/** The most other homes that can be placed: 3, or less for pieces that stand in other homes. */
export function mostPlaced(id: CaseId): number {
  return homesAllowed(id, 0).length;
}

/** The constraint whose orbits are the cases of a stage of the first layer, in the reference frame. */
export function caseConstraint(
  stage: FirstLayerStage,
  placed: readonly HomeIndex[],
): CaseConstraint {
  const targets = piecesOfHome(stage, 0);
  const others = allPieces([
    ...placed.map((home) => piecesOfHome(stage, home)),
    placedBefore(stage),
  ]);
  return {
    targetCorners: targets.corners,
    targetEdges: targets.edges,
    placedCorners: others.corners,
    placedEdges: others.edges,
    freeLayer: FREE_LAYER,
  };
}

/** What a random position of a first-layer case must agree with. */
export function firstLayerStateConstraint(
  asked: Asked & { readonly case: FirstLayerId },
): StateConstraint {
  const marked = markedOf(asked);
  const situation = situationIn(asked.case, asked.variant);
  const unmarked = unmarkedOf(asked);
  const constraint = {
    cornerPermutation: new Uint8Array(8).fill(UNKNOWN),
    cornerOrientation: new Uint8Array(8).fill(UNKNOWN),
    edgePermutation: new Uint8Array(12).fill(UNKNOWN),
    edgeOrientation: new Uint8Array(12).fill(UNKNOWN),
    unplacedCorners: unmarked.corners,
    unplacedEdges: unmarked.edges,
  };
  for (const piece of marked.corners) {
    constraint.cornerPermutation[piece] = piece;
    constraint.cornerOrientation[piece] = 0;
  }
  for (const piece of marked.edges) {
    constraint.edgePermutation[piece] = piece;
    constraint.edgeOrientation[piece] = 0;
  }
  for (const { piece, position, orientation } of situation.corners) {
    constraint.cornerPermutation[position] = piece;
    constraint.cornerOrientation[position] = orientation ?? UNKNOWN;
  }
  for (const { piece, position, orientation } of situation.edges) {
    constraint.edgePermutation[position] = piece;
    constraint.edgeOrientation[position] = orientation ?? UNKNOWN;
  }
  return constraint;
}
