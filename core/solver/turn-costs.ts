/**
 * What a sequence of turns costs, asked while it grows: from its first turn on
 * or, for a search from both ends, from its last turn back.
 */
import { type Turn, TURN_LAYERS } from "../cube/turns";

/** Every turn there is: 54, three of each layer. The 18 face turns come first, in the order of `FACE_TURNS`. */
export const EVERY_TURN: readonly Turn[] = TURN_LAYERS.flatMap((layer) =>
  ([1, 2, 3] as const).map((quarters) => ({ layer, quarters })),
);

/** A turn's place in `EVERY_TURN`. */
export function indexOfTurn({ layer, quarters }: Turn): number {
  return 3 * TURN_LAYERS.indexOf(layer) + quarters - 1;
}

/**
 * What a growing sequence costs. It remembers what was made at each depth, so
 * that a search goes back by asking with a smaller depth again.
 *
 * Shape: `turn` is an index into `EVERY_TURN`.
 */
export interface GrowingCost {
  /** The least cost of the sequence that grew to `depth` turns, with one more. It never shrinks as the sequence grows. */
  costWith(depth: number, turn: number): number;
  /** Lets it grow to `depth + 1` turns. */
  grow(depth: number, turn: number): void;
}

/** A way to count what turns cost. */
export interface TurnCosts {
  /** For a sequence that grows at its end. Units: turns at most. */
  forwards(mostTurns: number): GrowingCost;
  /** For a sequence that grows at its beginning. */
  backwards(mostTurns: number): GrowingCost;
}

const COUNTED: GrowingCost = {
  costWith: (depth) => depth + 1,
  // How long it is is all there is to know.
  grow: () => undefined,
};

/** Every turn costs 1: of face turns, the half-turn metric. */
export const TURNS_COUNTED: TurnCosts = {
  forwards: () => COUNTED,
  backwards: () => COUNTED,
};
