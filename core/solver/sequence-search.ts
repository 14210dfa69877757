/**
 * All sequences of a given length that bring some pieces from where they are
 * to where they should be, whatever happens to the others.
 *
 * Depth first, with the distances of each group of pieces as bounds, and
 * without recursion, so that it can pause after any number of steps. All
 * sequences rather than the first: which of them a learner can follow, and
 * which give the answer away, is decided outside.
 */
import type { PartlyKnownCubies } from "../cube/cubies";
import { FACE_TURNS } from "../cube/face-turns";
import { invariant } from "../invariant";
import { type RandomSource, shuffled } from "../random-source";
import type { FaceTurnSequence } from "./face-turn-sequence";
import { FAR, type GoalDistances, goalDistances } from "./goal-distances";
import { ALL_TURNS } from "./move-tables";
import { groupsOf, PAIR_MOVES, placeOfGroup, SLOT_PAIRS } from "./piece-slots";
import { partOf, type Steps } from "../steps";

/** A search that is ready for any length. */
export interface SequenceSearch {
  /** How many turns were tried so far, in all lengths. */
  readonly tried: number;
  /**
   * Calls `found` with each sequence of a length, in random order, until it
   * returns false.
   *
   * Units: `length` is 1–20.
   */
  ofLength(
    length: number,
    found: (turns: FaceTurnSequence) => boolean,
  ): Steps<void>;
}

const MOST_TURNS = 20;

/** Turns tried between two pauses: about 2 ms. */
const TRIES_A_STEP = 1 << 16;

/** So many turns of a sequence are tried; the rest are looked up. Four make 43,239 beginnings. */
const TRIED_TURNS = 4;

interface FollowedGroup {
  readonly moves: Uint16Array;
  readonly goal: GoalDistances;
  /** Distances to the goal, and the one that stands for those not known. */
  readonly distances: Uint8Array;
  beyond: number;
  /** Where the group's halves are after each turn of the path. */
  readonly first: Uint16Array;
  readonly second: Uint16Array;
}

/**
 * Prepares a search from one state to another.
 *
 * Shape: every piece that is known in `to` is known in `from`.
 */
export function createSequenceSearch(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
  random: RandomSource,
): SequenceSearch {
  const width = FACE_TURNS.length;
  const followed = groupsOf(to).map((group): FollowedGroup => {
    const place = placeOfGroup(from, group);
    const goal = goalDistances(group, placeOfGroup(to, group));
    const first = new Uint16Array(MOST_TURNS + 1);
    const second = new Uint16Array(MOST_TURNS + 1);
    first[0] = place.first;
    second[0] = place.second;
    const distances = goal.turns;
    return {
      moves: PAIR_MOVES[group.kind],
      goal,
      distances,
      beyond: 1,
      first,
      second,
    };
  });
  const order = Uint8Array.from(shuffled(random, ALL_TURNS));
  const faceOf = Uint8Array.from(ALL_TURNS, (turn) => Math.floor(turn / 3));
  const path = new Uint8Array(MOST_TURNS);
  const pointer = new Uint8Array(MOST_TURNS + 1);
  let tried = 0;

  const mayFollow = (turn: number, depth: number): boolean => {
    if (depth === 0) return true;
    const face = faceOf[turn]!;
    const last = faceOf[path[depth - 1]!]!;
    return face !== last && face + 3 !== last;
  };

  /** Makes a turn, unless some group is then too far from its goal. */
  const isMade = (turn: number, depth: number, left: number): boolean => {
    for (const { moves, distances, beyond, first, second } of followed) {
      const nextFirst = moves[first[depth]! * width + turn]!;
      const nextSecond = moves[second[depth]! * width + turn]!;
      const distance = distances[nextFirst * SLOT_PAIRS + nextSecond]!;
      if ((distance === FAR ? beyond : distance) > left) return false;
      first[depth + 1] = nextFirst;
      second[depth + 1] = nextSecond;
    }
    path[depth] = turn;
    return true;
  };

  let depth = -1;

  /** Goes on until so many turns were tried; returns whether that was all. */
  const goOn = (
    length: number,
    found: (turns: FaceTurnSequence) => boolean,
    until: number,
  ): boolean => {
    while (depth >= 0) {
      const k = pointer[depth]!;
      if (k === width) {
        depth--;
        continue;
      }
      if (tried === until) return false;
      tried++;
      pointer[depth] = k + 1;
      const turn = order[k]!;
      if (!mayFollow(turn, depth)) continue;
      if (!isMade(turn, depth, length - depth - 1)) continue;
      if (depth + 1 < length) {
        depth++;
        pointer[depth] = 0;
      } else if (!found([...path.subarray(0, length)])) return true;
    }
    return true;
  };

  function* ofLength(
    length: number,
    found: (turns: FaceTurnSequence) => boolean,
  ): Steps<void> {
    invariant(length > 0 && length <= MOST_TURNS, "a path has room");
    for (const group of followed) {
      yield* partOf(group.goal.extend(length - TRIED_TURNS), 0, 0.5);
      group.beyond = group.goal.reach + 1;
    }
    depth = 0;
    pointer[0] = 0;
    while (!goOn(length, found, tried + TRIES_A_STEP))
      yield 0.5 + (0.5 * pointer[0]) / width;
  }

  return {
    get tried() {
      return tried;
    },
    ofLength,
  };
}
