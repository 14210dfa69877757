/**
 * Uniformly random states in which some pieces are where they are told to be.
 *
 * Drawn directly rather than by random turns: turning reaches a uniform state
 * only in the limit, and cannot hold pieces in place. Free pieces are shuffled
 * over the free positions, twists and flips drawn, and the three invariants of
 * the cube repaired by bijections, so that no state is drawn more often than
 * another; states that show an unwanted placed piece are drawn again.
 */
import { invariant } from "../invariant";
import type { RandomSource } from "../random-source";
import {
  type Cubies,
  isOddPermutation,
  type PartlyKnownCubies,
  trustedCubies,
  UNKNOWN,
} from "./cubies";
import type { Corner, Edge } from "./pieces";

/**
 * What a drawn state must agree with.
 *
 * Shape: as `PartlyKnownCubies`, except that a position may name its piece and
 *        leave its orientation `UNKNOWN` (drawn), never the other way round.
 */
export interface StateConstraint extends PartlyKnownCubies {
  /** Corners that must not happen to be placed. */
  readonly unplacedCorners: readonly Corner[];
  /** Edges that must not happen to be placed. */
  readonly unplacedEdges: readonly Edge[];
}

/** Draws states that agree with one constraint. */
export interface StateSampler {
  /**
   * Overwrites `into` with a state that is uniform over all reachable states
   * satisfying the constraint. Allocates nothing.
   */
  drawInPlace(random: RandomSource, into: Cubies): void;
}

/** Steps `from` ≤ i < `to` of the shuffle; step i has i + 1 outcomes. */
interface Batch {
  readonly from: number;
  readonly to: number;
  readonly outcomes: number;
}

/** What `RandomSource.below` can draw at once. */
const MOST_OUTCOMES = 2 ** 21;

// One draw for many steps: 8! fits, 12! takes two. Drawing each step by itself
// takes twice as long (measured: 0.7 µs a state instead of 0.36 µs).
function batchesOf(steps: number): readonly Batch[] {
  const batches: Batch[] = [];
  // Step 0 has one outcome and needs no draw.
  let batch: Batch = { from: 0, to: 1, outcomes: 1 };
  for (let i = 1; i < steps; i++) {
    const outcomes = batch.outcomes * (i + 1);
    if (outcomes > MOST_OUTCOMES) {
      batches.push(batch);
      batch = { from: i, to: i + 1, outcomes: i + 1 };
    } else {
      batch = { from: batch.from, to: i + 1, outcomes };
    }
  }
  return steps === 0 ? [] : [...batches, batch];
}

interface Kind {
  readonly pieces: Uint8Array;
  readonly positions: Uint8Array;
  readonly turnable: Uint8Array;
  readonly fixedPermutation: Uint8Array;
  readonly fixedOrientation: Uint8Array;
  /** Shuffle steps that share one draw, and the number of its outcomes. */
  readonly batches: readonly Batch[];
  /** The number of ways to turn all but the last of `turnable`. */
  readonly turnings: number;
  /** Parity of the permutation that puts `pieces[i]` at `positions[i]`. */
  readonly isBaseOdd: boolean;
  /** What the drawn orientations must sum to, modulo `modulus`. */
  readonly wantedSum: number;
  readonly modulus: 2 | 3;
}

function kindOf(
  permutation: Uint8Array,
  orientation: Uint8Array,
  modulus: 2 | 3,
): Kind {
  const all = [...permutation.keys()];
  const pieces = all.filter((piece) => !permutation.includes(piece));
  const positions = all.filter((at) => permutation[at] === UNKNOWN);
  invariant(
    pieces.length === positions.length,
    "a constraint names no piece twice",
  );
  const turnable = all.filter((at) => orientation[at] === UNKNOWN);
  const base = Uint8Array.from(permutation);
  positions.forEach((at, i) => {
    invariant(orientation[at] === UNKNOWN, "a free piece is free to turn");
    base[at] = pieces[i]!;
  });
  const fixedSum = orientation.reduce(
    (sum, turned) => (turned === UNKNOWN ? sum : sum + turned),
    0,
  );
  const wantedSum = (modulus - (fixedSum % modulus)) % modulus;
  invariant(
    turnable.length > 0 || wantedSum === 0,
    "a constraint leaves a reachable state",
  );
  return {
    pieces: Uint8Array.from(pieces),
    positions: Uint8Array.from(positions),
    turnable: Uint8Array.from(turnable),
    fixedPermutation: Uint8Array.from(permutation),
    fixedOrientation: Uint8Array.from(orientation),
    batches: batchesOf(pieces.length),
    turnings: modulus ** Math.max(0, turnable.length - 1),
    isBaseOdd: isOddPermutation(base),
    wantedSum,
    modulus,
  };
}

/**
 * Shuffles the free pieces over the free positions and says whether the whole
 * permutation came out odd.
 *
 * Source: the inside-out form of Fisher and Yates's shuffle; each step is
 *         "put the next piece down, then exchange it with j", so the parity is
 *         the base's plus the number of real exchanges, at no extra cost.
 */
function shuffleInPlace(
  kind: Kind,
  random: RandomSource,
  permutation: Uint8Array,
): boolean {
  const { pieces, positions, fixedPermutation, batches } = kind;
  for (let i = 0; i < permutation.length; i++)
    permutation[i] = fixedPermutation[i]!;
  let isOdd = kind.isBaseOdd;
  for (let b = 0; b < batches.length; b++) {
    const { from, to, outcomes } = batches[b]!;
    let digits = outcomes === 1 ? 0 : random.below(outcomes);
    for (let i = from; i < to; i++) {
      const rest = (digits / (i + 1)) | 0;
      const j = digits - rest * (i + 1);
      digits = rest;
      permutation[positions[i]!] = permutation[positions[j]!]!;
      permutation[positions[j]!] = pieces[i]!;
      if (j !== i) isOdd = !isOdd;
    }
  }
  return isOdd;
}

/** Draws all free orientations but the last, which the invariant then decides. */
function turnInPlace(
  kind: Kind,
  random: RandomSource,
  orientation: Uint8Array,
): void {
  const { turnable, fixedOrientation, modulus, turnings } = kind;
  for (let i = 0; i < orientation.length; i++)
    orientation[i] = fixedOrientation[i]!;
  const last = turnable.length - 1;
  if (last < 0) return;
  let remaining = kind.wantedSum;
  // Twelve flips or eight twists fit into one draw: 2^11 and 3^7 are below 2^21.
  let digits = turnings === 1 ? 0 : random.below(turnings);
  for (let i = 0; i < last; i++) {
    const rest = (digits / modulus) | 0;
    const turned = digits - rest * modulus;
    digits = rest;
    orientation[turnable[i]!] = turned;
    remaining += modulus - turned;
  }
  orientation[turnable[last]!] = remaining % modulus;
}

function exchangeLastTwoInPlace(kind: Kind, permutation: Uint8Array): void {
  const { positions } = kind;
  const a = positions[positions.length - 1]!;
  const b = positions[positions.length - 2]!;
  const piece = permutation[a]!;
  permutation[a] = permutation[b]!;
  permutation[b] = piece;
}

function hasPlaced(
  unwanted: Uint8Array,
  permutation: Uint8Array,
  orientation: Uint8Array,
): boolean {
  for (let i = 0; i < unwanted.length; i++) {
    const piece = unwanted[i]!;
    if (permutation[piece] === piece && orientation[piece] === 0) return true;
  }
  return false;
}

/**
 * Prepares drawing from a constraint.
 *
 * Errors: none for a constraint that leaves at least one reachable state; any
 *         other is a bug of ours and throws, or never ends where only the
 *         unwanted placed pieces stand in the way.
 */
export function stateSampler(constraint: StateConstraint): StateSampler {
  const corners = kindOf(
    constraint.cornerPermutation,
    constraint.cornerOrientation,
    3,
  );
  const edges = kindOf(
    constraint.edgePermutation,
    constraint.edgeOrientation,
    2,
  );
  const unplacedCorners = Uint8Array.from(constraint.unplacedCorners);
  const unplacedEdges = Uint8Array.from(constraint.unplacedEdges);
  // Exchanging what lies on two fixed positions maps the odd arrangements one
  // to one onto the even ones: drawing stays uniform.
  const canMendEdges = edges.positions.length >= 2;
  const canMendCorners = corners.positions.length >= 2;
  invariant(
    canMendEdges || canMendCorners || corners.isBaseOdd === edges.isBaseOdd,
    "a constraint leaves a reachable state",
  );
  return {
    drawInPlace(random, into) {
      const {
        cornerPermutation,
        cornerOrientation,
        edgePermutation,
        edgeOrientation,
      } = into;
      do {
        const areCornersOdd = shuffleInPlace(
          corners,
          random,
          cornerPermutation,
        );
        const areEdgesOdd = shuffleInPlace(edges, random, edgePermutation);
        if (areCornersOdd !== areEdgesOdd) {
          if (canMendEdges) exchangeLastTwoInPlace(edges, edgePermutation);
          else exchangeLastTwoInPlace(corners, cornerPermutation);
        }
        turnInPlace(corners, random, cornerOrientation);
        turnInPlace(edges, random, edgeOrientation);
      } while (
        hasPlaced(unplacedCorners, cornerPermutation, cornerOrientation) ||
        hasPlaced(unplacedEdges, edgePermutation, edgeOrientation)
      );
    },
  };
}

/** Room for a state that is about to be drawn into. */
export function emptyCubies(): Cubies {
  return trustedCubies({
    cornerPermutation: new Uint8Array(8),
    cornerOrientation: new Uint8Array(8),
    edgePermutation: new Uint8Array(12),
    edgeOrientation: new Uint8Array(12),
  });
}

/** One state drawn uniformly from all reachable ones that satisfy the constraint. */
export function sampleState(
  random: RandomSource,
  constraint: StateConstraint,
): Cubies {
  const state = emptyCubies();
  stateSampler(constraint).drawInPlace(random, state);
  return state;
}

/** The constraint that every reachable state satisfies. */
export const ANY_STATE: StateConstraint = {
  cornerPermutation: new Uint8Array(8).fill(UNKNOWN),
  cornerOrientation: new Uint8Array(8).fill(UNKNOWN),
  edgePermutation: new Uint8Array(12).fill(UNKNOWN),
  edgeOrientation: new Uint8Array(12).fill(UNKNOWN),
  unplacedCorners: [],
  unplacedEdges: [],
};
