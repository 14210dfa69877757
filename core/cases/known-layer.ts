/**
 * What a question shows of a cube, what is known of one after its answer, and
 * what has to be known of one before a question can be set up on it.
 *
 * A stage sees no more than it asks for and takes as done, and so do its
 * set-ups: which pieces are turned up matters where turning is asked, whichever
 * they are. Turns that keep the first two layers turn unnamed pieces of the
 * last layer as surely as named ones, so a cube can be followed from question
 * to question of a stage although nobody knows where its pieces belong.
 */
import { type PartlyKnownCubies, SOLVED, UNKNOWN } from "../cube/cubies";
import { knownOnly } from "../cube/partly-known";
import {
  type Corner,
  CORNERS,
  type Edge,
  EDGES,
  type Pieces,
} from "../cube/pieces";
import { caseEntry } from "./case-table";
import type { Asked } from "./constraint";
import { type Demand, demandOf } from "./last-layer-goal";
import { LAST_LAYER_CORNERS, LAST_LAYER_EDGES } from "./last-layer-look";
import { knownPieces } from "./partly-known-position";
import type { Position } from "./position";
import { isLastLayerStage } from "./stage";

type Arrays = readonly [permutation: Uint8Array, orientation: Uint8Array];

/** One kind's arrays, of the last layer's places no more left than a stage sees. */
function seenAt(
  [permutation, orientation]: Arrays,
  places: readonly number[],
  demand: Demand,
): Arrays {
  const isNamed = demand === "placed" || demand === "homed";
  const isTurned = demand === "placed" || demand === "turned";
  const seen = (array: Uint8Array, isSeen: boolean) =>
    isSeen
      ? array
      : array.map((value, at) => (places.includes(at) ? UNKNOWN : value));
  return [seen(permutation, isNamed), seen(orientation, isTurned)];
}

/**
 * What a question shows of a cube: in the first two layers the pieces that it
 * names; in the last layer those two, and of the layer what its stage sees.
 *
 * Shape: `state` has its first two layers placed where the last layer is asked.
 */
export function shownOf(
  asked: Asked,
  state: PartlyKnownCubies,
): PartlyKnownCubies {
  const { stage } = caseEntry(asked.case);
  if (!isLastLayerStage(stage)) {
    const { corners, edges } = knownPieces(asked, "named");
    return knownOnly(state, new Set(corners), new Set(edges));
  }
  const [cornerPermutation, cornerOrientation] = seenAt(
    [state.cornerPermutation, state.cornerOrientation],
    LAST_LAYER_CORNERS,
    demandOf(stage, "corner"),
  );
  const [edgePermutation, edgeOrientation] = seenAt(
    [state.edgePermutation, state.edgeOrientation],
    LAST_LAYER_EDGES,
    demandOf(stage, "edge"),
  );
  return {
    cornerPermutation,
    cornerOrientation,
    edgePermutation,
    edgeOrientation,
  };
}

/** The position with everything forgotten that its question does not show. */
export function shownPosition(position: Position): Position {
  return { ...position, cubies: shownOf(position, position.cubies) };
}

/**
 * What is known of a cube on which a question was answered by somebody whose
 * turns nobody saw: what it shows when it is solved. Where it matters, its
 * last layer was turned on until the sides match.
 */
export function knownAfterAnswer(asked: Asked): PartlyKnownCubies {
  return shownOf(asked, SOLVED);
}

/** Whether an answer is only as it is shown when the last layer is turned on until its sides match. */
export function mustSidesMatch(asked: Asked): boolean {
  const { stage } = caseEntry(asked.case);
  return (
    isLastLayerStage(stage) &&
    (["corner", "edge"] as const).some((kind) =>
      ["placed", "homed"].includes(demandOf(stage, kind)),
    )
  );
}

/** What has to be known of a cube and is not. */
export interface NotKnown {
  /** Pieces of which nobody knows where they are. */
  readonly pieces: Pieces;
  /** Places of the last layer of which nobody knows how the piece there is turned. */
  readonly turnedAt: Pieces;
}

function piecesMissing<Piece extends Corner | Edge>(
  all: readonly Piece[],
  [from]: Arrays,
  [to]: Arrays,
): readonly Piece[] {
  return all.filter((piece) => to.includes(piece) && !from.includes(piece));
}

/**
 * The places of one kind whose turning is not known and matters: that of every
 * named piece which is to be turned so, and of every place in the last layer
 * where four turned pieces are wanted whose names do not matter.
 */
function turningsMissing<Piece extends Corner | Edge>(
  lastLayer: readonly Piece[],
  [from, turned]: Arrays,
  [to, turnedTo]: Arrays,
): readonly Piece[] {
  const isUnnamedWanted = lastLayer.some(
    (at) => to[at] === UNKNOWN && turnedTo[at] !== UNKNOWN,
  );
  if (isUnnamedWanted) {
    const isKnown = (piece: number) => lastLayer.some((one) => one === piece);
    // Wherever they are by now: as many as belong into the layer.
    const known = [...from.keys()].filter(
      (at) =>
        turned[at] !== UNKNOWN &&
        (from[at] === UNKNOWN || isKnown(from[at] ?? UNKNOWN)),
    );
    return known.length === lastLayer.length
      ? []
      : lastLayer.filter((at) => turned[at] === UNKNOWN);
  }
  return lastLayer.filter((at) => {
    const piece = from[at];
    if (piece === undefined || piece === UNKNOWN || turned[at] !== UNKNOWN)
      return false;
    const wanted = to.indexOf(piece);
    return wanted >= 0 && turnedTo[wanted] !== UNKNOWN;
  });
}

/**
 * What a position shows and is not known on a cube: nothing means that the
 * position can be set up on it.
 *
 * Shape: `turnedAt` holds places of the last layer; they say something only
 *        once the first two layers are placed.
 */
export function notKnownFor(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
): NotKnown {
  const corners = (state: PartlyKnownCubies): Arrays => [
    state.cornerPermutation,
    state.cornerOrientation,
  ];
  const edges = (state: PartlyKnownCubies): Arrays => [
    state.edgePermutation,
    state.edgeOrientation,
  ];
  return {
    pieces: {
      corners: piecesMissing(CORNERS, corners(from), corners(to)),
      edges: piecesMissing(EDGES, edges(from), edges(to)),
    },
    turnedAt: {
      corners: turningsMissing(LAST_LAYER_CORNERS, corners(from), corners(to)),
      edges: turningsMissing(LAST_LAYER_EDGES, edges(from), edges(to)),
    },
  };
}

/** Whether a position can be set up on a cube. */
export function isEnoughKnown(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
): boolean {
  const { pieces, turnedAt } = notKnownFor(from, to);
  return [pieces, turnedAt].every(
    ({ corners, edges }) => corners.length + edges.length === 0,
  );
}
