/**
 * How to turn a sequence of face turns most easily: each face turn may be made
 * as the wide turn of the layers across, two opposite ones as a slice, and the
 * whole cube turned in between. All of that does the same to the pieces; it
 * differs in how the cube is held, and so in what the hands must do.
 *
 * The cheapest path through turns made, hold (24) and grip (18): exact within
 * the model of `hands.ts`, the whole cube turned once at a time.
 */
import { type Rotation, ROTATIONS } from "../cube/symmetries";
import { isFaceTurn, type Turn } from "../cube/turns";
import { EASE_PARTS, GRIP_CHANGES, HANDS_MAKE } from "./ease-of-turning";
import { faceOfTurn, type FaceTurnSequence } from "./face-turn-sequence";
import { GRIPS } from "./hands";
import { EVERY_TURN } from "./turn-costs";
import {
  IS_WHOLE_CUBE,
  NO_TURN,
  TURN_KINDS,
  turnsInHolds,
} from "./turns-in-holds";

/** Turns as the learner makes them, and what they cost the hands. */
export interface EasyTurns {
  readonly turns: readonly Turn[];
  /** Units: easy quarter turns. */
  readonly ease: number;
}

const GRIP_COUNT = GRIPS.length;
const LAYER = ROTATIONS.length * GRIP_COUNT;
const NEVER = 1 << 20;

/** The learner's turns that turn one face of the body, or two opposite ones, in a hold: by hold × 1024 + first × 32 + second. */
let turnsByFaces: ReadonlyMap<number, readonly number[]> | undefined;

function facesKey(hold: number, first: number, second: number): number {
  const low = Math.min(first, second);
  return (hold * 32 + low) * 256 + Math.max(first, second);
}

function theTurnsByFaces(): ReadonlyMap<number, readonly number[]> {
  if (turnsByFaces !== undefined) return turnsByFaces;
  const { faces } = turnsInHolds();
  const found = new Map<number, number[]>();
  for (const hold of ROTATIONS)
    EVERY_TURN.forEach((_, turn) => {
      if (IS_WHOLE_CUBE[turn]!) return;
      const at = 2 * (hold * TURN_KINDS + turn);
      const key = facesKey(hold, faces[at]!, faces[at + 1]!);
      found.set(key, [...(found.get(key) ?? []), turn]);
    });
  turnsByFaces = found;
  return found;
}

const WHOLE_CUBE_TURNS = EVERY_TURN.flatMap((_, turn) =>
  IS_WHOLE_CUBE[turn]! ? [turn] : [],
);

/**
 * The easiest way to make face turns of the body.
 *
 * Shape: `hold` is how the cube is held at first. Faces are turned in the order
 *        of the sequence, opposite ones as one slice where there is one.
 */
export function easiestWriting(
  sequence: FaceTurnSequence,
  hold: Rotation,
): EasyTurns {
  const { after } = turnsInHolds();
  const byFaces = theTurnsByFaces();
  const length = sequence.length;
  // Nodes of a depth come twice: before and after a turn of the whole cube.
  const size = (length + 1) * 2 * LAYER;
  const costs = new Int32Array(size).fill(NEVER);
  const cameFrom = new Int32Array(size).fill(-1);
  const cameBy = new Uint8Array(size).fill(NO_TURN);
  costs.fill(0, hold * GRIP_COUNT, (hold + 1) * GRIP_COUNT);

  const reach = (to: number, cost: number, from: number, turn: number) => {
    if (cost >= costs[to]!) return;
    costs[to] = cost;
    cameFrom[to] = from;
    cameBy[to] = turn;
  };

  const make = (from: number, to: number, turn: number): void => {
    const list = HANDS_MAKE[turn]!;
    for (let i = 0; i < list.length; i += 3) {
      const before = from + list[i]!;
      if (costs[before]! < NEVER)
        reach(to + list[i + 1]!, costs[before]! + list[i + 2]!, before, turn);
    }
  };

  const settle = (node: number): void => {
    for (const { grips, size: group, cost } of GRIP_CHANGES)
      for (let first = 0; first < GRIP_COUNT; first += group) {
        let best = node + grips[first]!;
        for (let i = first; i < first + group; i++)
          if (costs[node + grips[i]!]! < costs[best]!) best = node + grips[i]!;
        if (costs[best] === NEVER) continue;
        for (let i = first; i < first + group; i++)
          reach(
            node + grips[i]!,
            costs[best]! + cost,
            cameFrom[best]!,
            cameBy[best]!,
          );
      }
  };

  const nodeAt = (depth: number, isTurnedOver: boolean, held: number) =>
    (2 * depth + (isTurnedOver ? 1 : 0)) * LAYER + held * GRIP_COUNT;

  /** Makes the next face turn, or the next two as one. */
  const makeFaces = (
    from: number,
    held: number,
    depth: number,
    first: number,
    second: number,
    mayBeWide: boolean,
  ): void => {
    for (const turn of byFaces.get(facesKey(held, first, second)) ?? [])
      if (mayBeWide || isFaceTurn(EVERY_TURN[turn]!))
        make(
          from,
          nodeAt(depth, false, after[held * TURN_KINDS + turn]!),
          turn,
        );
  };

  for (let depth = 0; depth < length; depth++) {
    const first = sequence[depth]!;
    const second = sequence[depth + 1];
    const isAcrossFrom = (other: number | undefined) =>
      other !== undefined && faceOfTurn(other) % 3 === faceOfTurn(first) % 3;
    const isBeforeOpposite = isAcrossFrom(second);
    // Of two opposite faces neither is made as a wide turn: nobody turns `Lw L`.
    const mayBeWide = !isBeforeOpposite && !isAcrossFrom(sequence[depth - 1]);
    for (const held of ROTATIONS) {
      const node = nodeAt(depth, false, held);
      settle(node);
      for (const turn of WHOLE_CUBE_TURNS)
        make(node, nodeAt(depth, true, after[held * TURN_KINDS + turn]!), turn);
    }
    for (const held of ROTATIONS)
      for (const isTurnedOver of [false, true]) {
        const node = nodeAt(depth, isTurnedOver, held);
        makeFaces(node, held, depth + 1, first, NO_TURN, mayBeWide);
        if (isBeforeOpposite && second !== undefined)
          makeFaces(node, held, depth + 2, first, second, true);
      }
  }

  let best = 2 * length * LAYER;
  for (let node = best; node < best + LAYER; node++)
    if (costs[node]! < costs[best]!) best = node;
  const turns: Turn[] = [];
  for (let node = best; cameBy[node] !== NO_TURN; node = cameFrom[node]!)
    turns.push(EVERY_TURN[cameBy[node]!]!);
  return { turns: turns.reverse(), ease: costs[best]! / EASE_PARTS };
}
