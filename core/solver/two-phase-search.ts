/**
 * The two searches, each depth first with a bound: phase 1 finds turns into
 * the group of U D R2 L2 F2 B2, phase 2 finishes inside it.
 *
 * Plain integers and typed arrays only: this is where all the time goes. The
 * pieces are not moved during phase 1; at its end they are moved along the
 * path from the last place where they were still right, which half the time
 * is one or two turns back.
 *
 * Source: H. Kociemba's two-phase algorithm (1992).
 */
import type { Cubies } from "../cube/cubies";
import { FACE_TURNS } from "../cube/face-turns";
import { coordinateOf, FLIP, SLICE, SLICE_ORDER, TWIST } from "./coordinates";
import { PHASE_TWO_TURNS } from "./move-tables";
import { permutationRank } from "./permutation-rank";
import type { TwoPhaseTables } from "./two-phase-tables";

/** A state as phase 1 sees it. */
export interface SearchStart {
  readonly cubies: Cubies;
  readonly twist: number;
  readonly flip: number;
  readonly slice: number;
  /** No phase 1 is shorter than this. */
  readonly bound: number;
}

/** Both searches over one set of tables. Not re-entrant: one path at a time. */
export interface TwoPhaseSearch {
  /** Reads a state's coordinates. */
  start(cubies: Cubies): SearchStart;
  /**
   * Looks for a solution whose phase 1 has exactly `phaseOneTurns` turns, the
   * first of them on `firstFace` (where there is one), and whose phase 2 has
   * at most `phaseTwoLimit`.
   *
   * Shape: the turns as indices into `FACE_TURNS`, or undefined where there is none.
   */
  search(
    start: SearchStart,
    firstFace: number,
    phaseOneTurns: number,
    phaseTwoLimit: number,
  ): readonly number[] | undefined;
}

/** More turns than any solution has. */
const MAX_PATH = 40;
const NO_FACE = 99;

/** Prepares the searches. */
export function createTwoPhaseSearch(tables: TwoPhaseTables): TwoPhaseSearch {
  const { one, two } = tables;
  const path = new Uint8Array(MAX_PATH);

  // Where the pieces are after each turn of the path; right up to `placed`.
  const corners = new Uint8Array(8 * (MAX_PATH + 1));
  const edges = new Uint8Array(12 * (MAX_PATH + 1));
  let placed = 0;
  let phaseTwoLimit = 0;
  let solutionLength = 0;

  const nextTwist = one.twist.moves.next;
  const nextFlip = one.flip.moves.next;
  const nextSlice = one.slice.moves.next;
  const twistClass = one.twist.classes.classAndSymmetry;
  const flipClass = one.flip.classes.classAndSymmetry;
  const conjugateFlip = one.flip.conjugation;
  const conjugateSlice = one.slice.conjugation;
  const { twistFlip, twistSlice, flipSlice } = one;

  const FLIPS = FLIP.size;
  const SLICES = SLICE.size;

  /** The bound of the three pairs; the search below asks them one by one. */
  const phaseOneBound = (twist: number, flip: number, slice: number): number =>
    Math.max(
      twistFlip[
        (twistClass[twist]! >> 3) * FLIPS +
          conjugateFlip[(flip << 3) | (twistClass[twist]! & 7)]!
      ]!,
      twistSlice[
        (twistClass[twist]! >> 3) * SLICES +
          conjugateSlice[(slice << 3) | (twistClass[twist]! & 7)]!
      ]!,
      flipSlice[
        (flipClass[flip]! >> 3) * SLICES +
          conjugateSlice[(slice << 3) | (flipClass[flip]! & 7)]!
      ]!,
    );

  /** Tries the three turns of one face, then whatever may follow. */
  const turnInPhaseOne = (
    face: number,
    twist: number,
    flip: number,
    slice: number,
    left: number,
    depth: number,
  ): boolean => {
    const isVertical = face === 0 || face === 3;
    for (let turn = 3 * face; turn < 3 * face + 3; turn++) {
      // A phase 1 that ends with a turn of phase 2 had ended before it.
      if (left === 1 && (isVertical || turn === 3 * face + 1)) continue;
      const nextT = nextTwist[18 * twist + turn]!;
      const nextF = nextFlip[18 * flip + turn]!;
      const nextS = nextSlice[18 * slice + turn]!;
      const t = twistClass[nextT]!;
      // One turn of a face is one away from another turn of it: a bound that
      // is too high by two rules all three out.
      let bound =
        twistFlip[(t >> 3) * FLIPS + conjugateFlip[(nextF << 3) | (t & 7)]!]!;
      if (bound > left) return false;
      if (bound === left) continue;
      const f = flipClass[nextF]!;
      bound =
        flipSlice[(f >> 3) * SLICES + conjugateSlice[(nextS << 3) | (f & 7)]!]!;
      if (bound > left) return false;
      if (bound === left) continue;
      bound =
        twistSlice[
          (t >> 3) * SLICES + conjugateSlice[(nextS << 3) | (t & 7)]!
        ]!;
      if (bound > left) return false;
      if (bound === left) continue;

      path[depth] = turn;
      if (placed > depth) placed = depth;
      if (left === 1) {
        if (enterPhaseTwo(depth + 1)) return true;
        continue;
      }
      for (let other = 0; other < 6; other++) {
        if (other === face || other + 3 === face) continue;
        if (turnInPhaseOne(other, nextT, nextF, nextS, left - 1, depth + 1))
          return true;
      }
    }
    return false;
  };

  const placePieces = (depth: number): void => {
    for (; placed < depth; placed++) {
      const { cornerPermutation, edgePermutation } = FACE_TURNS[path[placed]!]!;
      const cornersBefore = 8 * placed;
      for (let i = 0; i < 8; i++)
        corners[cornersBefore + 8 + i] =
          corners[cornersBefore + cornerPermutation[i]!]!;
      const edgesBefore = 12 * placed;
      for (let i = 0; i < 12; i++)
        edges[edgesBefore + 12 + i] = edges[edgesBefore + edgePermutation[i]!]!;
    }
  };

  const cornerClass = two.corners.classes.classAndSymmetry;
  const edgeClass = two.edges.classes.classAndSymmetry;
  const nextCorners = two.corners.moves.next;
  const nextEdges = two.edges.moves.next;
  const nextMiddle = two.sliceOrder.moves.next;
  const conjugateMiddle = two.sliceOrder.conjugation;
  const conjugateCornerSplit = two.cornerSplit.conjugation;
  const conjugateEdgeSplit = two.edgeSplit.conjugation;
  const { splitOfOrder, cornersSlice, edgesSlice, cornersSplit, edgesSplit } =
    two;
  const ORDERS = SLICE_ORDER.size;
  const SPLITS = 70;
  const TURNS = PHASE_TWO_TURNS.length;
  const phaseTwoTurns = Uint8Array.from(PHASE_TWO_TURNS);
  const phaseTwoFaces = phaseTwoTurns.map((turn) => Math.floor(turn / 3));
  const lastTurnOfFace = phaseTwoFaces.map((face) =>
    phaseTwoFaces.lastIndexOf(face),
  );

  /** The greatest of the four bounds, or one above `limit` as soon as it is passed. */
  const phaseTwoBound = (
    cornerOrder: number,
    edgeOrder: number,
    middle: number,
    limit: number,
  ): number => {
    const c = cornerClass[cornerOrder]!;
    const e = edgeClass[edgeOrder]!;
    let bound =
      cornersSplit[
        (c >> 4) * SPLITS +
          conjugateEdgeSplit[(splitOfOrder[edgeOrder]! << 4) | (c & 15)]!
      ]!;
    if (bound > limit) return bound;
    const edgeBound =
      edgesSplit[
        (e >> 4) * SPLITS +
          conjugateCornerSplit[(splitOfOrder[cornerOrder]! << 4) | (e & 15)]!
      ]!;
    if (edgeBound > bound) bound = edgeBound;
    if (bound > limit) return bound;
    const cornersMiddle =
      cornersSlice[
        (c >> 4) * ORDERS + conjugateMiddle[(middle << 4) | (c & 15)]!
      ]!;
    if (cornersMiddle > bound) bound = cornersMiddle;
    if (bound > limit) return bound;
    const edgesMiddle =
      edgesSlice[
        (e >> 4) * ORDERS + conjugateMiddle[(middle << 4) | (e & 15)]!
      ]!;
    return edgesMiddle > bound ? edgesMiddle : bound;
  };

  const enterPhaseTwo = (depth: number): boolean => {
    placePieces(depth);
    const cornerOrder = permutationRank(corners, 8 * depth, 8, 0);
    const edgeOrder = permutationRank(edges, 12 * depth, 8, 0);
    const middle = permutationRank(edges, 12 * depth + 8, 4, 8);
    const bound = phaseTwoBound(cornerOrder, edgeOrder, middle, phaseTwoLimit);
    const lastFace = depth > 0 ? Math.floor(path[depth - 1]! / 3) : NO_FACE;
    for (let turns = bound; turns <= phaseTwoLimit; turns++) {
      if (
        turnsInPhaseTwo(cornerOrder, edgeOrder, middle, turns, depth, lastFace)
      ) {
        solutionLength = depth + turns;
        return true;
      }
    }
    return false;
  };

  const turnsInPhaseTwo = (
    cornerOrder: number,
    edgeOrder: number,
    middle: number,
    left: number,
    depth: number,
    lastFace: number,
  ): boolean => {
    if (left === 0) return cornerOrder === 0 && edgeOrder === 0 && middle === 0;
    for (let k = 0; k < TURNS; k++) {
      const face = phaseTwoFaces[k]!;
      if (face === lastFace || face + 3 === lastFace) continue;
      const nextC = nextCorners[cornerOrder * TURNS + k]!;
      const nextE = nextEdges[edgeOrder * TURNS + k]!;
      const nextM = nextMiddle[middle * TURNS + k]!;
      const bound = phaseTwoBound(nextC, nextE, nextM, left - 1);
      if (bound >= left) {
        if (bound > left) k = lastTurnOfFace[k]!;
        continue;
      }
      path[depth] = phaseTwoTurns[k]!;
      if (placed > depth) placed = depth;
      if (turnsInPhaseTwo(nextC, nextE, nextM, left - 1, depth + 1, face))
        return true;
    }
    return false;
  };

  return {
    start(cubies) {
      const twist = coordinateOf(TWIST, cubies);
      const flip = coordinateOf(FLIP, cubies);
      const slice = coordinateOf(SLICE, cubies);
      const bound = phaseOneBound(twist, flip, slice);
      return { cubies, twist, flip, slice, bound };
    },
    search(start, firstFace, phaseOneTurns, limit) {
      corners.set(start.cubies.cornerPermutation, 0);
      edges.set(start.cubies.edgePermutation, 0);
      placed = 0;
      phaseTwoLimit = limit;
      const { twist, flip, slice } = start;
      const found =
        phaseOneTurns === 0
          ? enterPhaseTwo(0)
          : turnInPhaseOne(firstFace, twist, flip, slice, phaseOneTurns, 0);
      return found ? [...path.subarray(0, solutionLength)] : undefined;
    },
  };
}
