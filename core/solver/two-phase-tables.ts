/**
 * All tables of the two-phase solver.
 *
 * They are built when they are first needed rather than shipped: 3.6 MB,
 * half of it moves, take 0.19 s to compute (Node 20, one of two cores, idle).
 */
import {
  CORNER_ORDER,
  CORNER_SPLIT,
  EDGE_ORDER,
  EDGE_SPLIT,
  FLIP,
  SLICE,
  SLICE_ORDER,
  TWIST,
} from "./coordinates";
import { ALL_TURNS, buildMoveTable, PHASE_TWO_TURNS } from "./move-tables";
import {
  buildPruningTable,
  type PlainSide,
  type PruningTable,
  type ReducedSide,
} from "./pruning-tables";
import { partOf, type Steps } from "../steps";
import {
  AXES_SYMMETRIES,
  AXIS_SYMMETRIES,
  conjugationTable,
  symmetryClasses,
} from "./symmetry-classes";

/** What phase 1 looks up: twist, flip and slice in pairs. */
export interface PhaseOneTables {
  readonly twist: ReducedSide;
  readonly flip: ReducedSide & PlainSide;
  readonly slice: PlainSide;
  readonly twistFlip: PruningTable;
  readonly twistSlice: PruningTable;
  readonly flipSlice: PruningTable;
}

/**
 * What phase 2 looks up: each order with the middle layer's order, and with
 * the split of the other. The splits do most: without them phase 2 visits
 * eight times as many states.
 */
export interface PhaseTwoTables {
  readonly corners: ReducedSide;
  readonly edges: ReducedSide;
  readonly sliceOrder: PlainSide;
  readonly cornerSplit: PlainSide;
  readonly edgeSplit: PlainSide;
  /** The split of each order, corners and edges alike. Shape: 40320. */
  readonly splitOfOrder: Uint8Array;
  readonly cornersSlice: PruningTable;
  readonly edgesSlice: PruningTable;
  readonly cornersSplit: PruningTable;
  readonly edgesSplit: PruningTable;
}

/** Both phases. */
export interface TwoPhaseTables {
  readonly one: PhaseOneTables;
  readonly two: PhaseTwoTables;
}

/** Builds all tables; progress is about in proportion to the time. */
export function* buildTwoPhaseTables(): Steps<TwoPhaseTables> {
  const one = yield* partOf(buildPhaseOneTables(), 0, 0.6);
  const two = yield* partOf(buildPhaseTwoTables(), 0.6, 1);
  return { one, two };
}

function* buildPhaseOneTables(): Steps<PhaseOneTables> {
  const twist = {
    classes: symmetryClasses(TWIST, AXES_SYMMETRIES),
    moves: yield* partOf(buildMoveTable(TWIST, ALL_TURNS), 0, 0.1),
  };
  const flip = {
    classes: symmetryClasses(FLIP, AXES_SYMMETRIES),
    moves: yield* partOf(buildMoveTable(FLIP, ALL_TURNS), 0.1, 0.2),
    conjugation: conjugationTable(FLIP, AXES_SYMMETRIES),
  };
  const slice = {
    moves: yield* partOf(buildMoveTable(SLICE, ALL_TURNS), 0.2, 0.25),
    conjugation: conjugationTable(SLICE, AXES_SYMMETRIES),
  };
  return {
    twist,
    flip,
    slice,
    twistSlice: yield* partOf(buildPruningTable(twist, slice), 0.25, 0.4),
    flipSlice: yield* partOf(buildPruningTable(flip, slice), 0.4, 0.55),
    twistFlip: yield* partOf(buildPruningTable(twist, flip), 0.55, 1),
  };
}

function* buildPhaseTwoTables(): Steps<PhaseTwoTables> {
  const corners = {
    classes: symmetryClasses(CORNER_ORDER, AXIS_SYMMETRIES),
    moves: yield* partOf(
      buildMoveTable(CORNER_ORDER, PHASE_TWO_TURNS),
      0.05,
      0.35,
    ),
  };
  const edges = {
    classes: symmetryClasses(EDGE_ORDER, AXIS_SYMMETRIES),
    moves: yield* partOf(
      buildMoveTable(EDGE_ORDER, PHASE_TWO_TURNS),
      0.35,
      0.65,
    ),
  };
  const sliceOrder = {
    moves: yield* partOf(
      buildMoveTable(SLICE_ORDER, PHASE_TWO_TURNS),
      0.65,
      0.65,
    ),
    conjugation: conjugationTable(SLICE_ORDER, AXIS_SYMMETRIES),
  };
  const cornerSplit = {
    moves: yield* partOf(
      buildMoveTable(CORNER_SPLIT, PHASE_TWO_TURNS),
      0.65,
      0.65,
    ),
    conjugation: conjugationTable(CORNER_SPLIT, AXIS_SYMMETRIES),
  };
  const edgeSplit = {
    moves: yield* partOf(
      buildMoveTable(EDGE_SPLIT, PHASE_TWO_TURNS),
      0.65,
      0.65,
    ),
    conjugation: conjugationTable(EDGE_SPLIT, AXIS_SYMMETRIES),
  };
  return {
    corners,
    edges,
    sliceOrder,
    cornerSplit,
    edgeSplit,
    splitOfOrder: splitOfOrder(),
    cornersSlice: yield* partOf(
      buildPruningTable(corners, sliceOrder),
      0.65,
      0.7,
    ),
    edgesSlice: yield* partOf(buildPruningTable(edges, sliceOrder), 0.7, 0.75),
    cornersSplit: yield* partOf(
      buildPruningTable(corners, edgeSplit),
      0.75,
      0.88,
    ),
    edgesSplit: yield* partOf(buildPruningTable(edges, cornerSplit), 0.88, 1),
  };
}

function splitOfOrder(): Uint8Array {
  const permutation = new Uint8Array(8);
  return Uint8Array.from({ length: CORNER_ORDER.size }, (_, order) => {
    CORNER_ORDER.write(order, permutation);
    return CORNER_SPLIT.read(permutation);
  });
}
