/**
 * Sequences that bring one last layer to another and keep the first two
 * layers: a short sequence between turns of the layer, or two of them.
 *
 * Where a stage leaves enough open, single ones are plenty. Where it sees
 * every piece there is often none but the shortest ways, and two together are
 * found from the middle: what is left after the first is looked up. Two-phase
 * solutions would be half as long again, and all sequences as long as these
 * cannot be searched.
 */
import { FREE_QUARTERS } from "../cases/case-goal";
import { LAST_LAYER_CORNERS, LAST_LAYER_EDGES } from "../cases/last-layer-look";
import { arePlaced } from "../cases/recognise-slot";
import { FIRST_TWO_LAYERS } from "../cases/slot-stages";
import { FREE_LAYER } from "../cases/stage";
import {
  compose,
  type Cubies,
  invert,
  type PartlyKnownCubies,
  UNKNOWN,
} from "../cube/cubies";
import { faceTurnIndex } from "../cube/face-turns";
import { rotationAbout } from "../cube/symmetries";
import type { RandomSource } from "../random-source";
import { sequenceImage } from "./case-starts";
import {
  effectOf,
  type FaceTurnSequence,
  normalised,
} from "./face-turn-sequence";
import { imagined } from "./imagined";
import { sequencesKeepingTwoLayers } from "./short-sequences";
import { partOf, type Steps } from "../steps";

/** Finds sequences; keeps its table once it has been needed. */
export interface LastLayerSequences {
  /** All that are one short sequence between turns of the layer. */
  single(
    from: PartlyKnownCubies,
    to: PartlyKnownCubies,
  ): Steps<readonly FaceTurnSequence[]>;
  /**
   * Those that are two short sequences between turns of the layer, or one;
   * the same more than once where it is joined in more than one way.
   *
   * Shape: each normalised, in no order.
   */
  joined(from: Cubies, to: Cubies): Steps<readonly FaceTurnSequence[]>;
  /**
   * The same for states with open pieces, all of which are imagined.
   *
   * Shape: each normalised.
   */
  double(
    from: PartlyKnownCubies,
    to: PartlyKnownCubies,
    random: RandomSource,
  ): Steps<readonly FaceTurnSequence[]>;
}

/** Whether both states differ in the last layer only, so that a sequence can be put together. */
export function differInLastLayer(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
): boolean {
  return arePlaced(from, FIRST_TWO_LAYERS) && arePlaced(to, FIRST_TWO_LAYERS);
}

interface ShortSequence {
  readonly turns: FaceTurnSequence;
  readonly effect: Cubies;
}

/** Sequences dealt with between two pauses: about 2 ms. */
const SEQUENCES_A_STEP = 256;

/** Of two the first has no more turns: what is shortest is found either way round. */
const MOST_OF_FIRST = 9;

const LAYER_TURNS: readonly ShortSequence[] = FREE_QUARTERS.map((quarters) => {
  const turns = quarters === 0 ? [] : [faceTurnIndex(FREE_LAYER, quarters)];
  return { turns, effect: effectOf(turns) };
});

/** A finder with nothing prepared yet. */
export function createLastLayerSequences(): LastLayerSequences {
  let short: readonly ShortSequence[] | undefined;
  let table: Table | undefined;

  function* shortOnes(): Steps<readonly ShortSequence[]> {
    return (short ??= yield* fromEverySide());
  }

  function* joined(
    from: Cubies,
    to: Cubies,
  ): Steps<readonly FaceTurnSequence[]> {
    const all = yield* partOf(shortOnes(), 0, 0.2);
    table ??= yield* partOf(tableOf(all), 0.2, 0.6);
    const apart = compose(invert(from), to);
    const found: FaceTurnSequence[] = [];
    let i = 0;
    for (const before of LAYER_TURNS) {
      for (const first of all) {
        if (first.turns.length > MOST_OF_FIRST) break;
        if (++i % SEQUENCES_A_STEP === 0)
          yield 0.6 + (0.4 * i) / (4 * all.length);
        const done = compose(before.effect, first.effect);
        for (const rest of table.sequencesOf(compose(invert(done), apart)))
          found.push(normalised([...before.turns, ...first.turns, ...rest]));
      }
    }
    return found;
  }

  return {
    *single(from, to) {
      const found: FaceTurnSequence[] = [];
      const all = yield* partOf(shortOnes(), 0, 0.5);
      // Turned back instead of on: four ends to compare with.
      const ends = LAYER_TURNS.map(({ effect, turns }) => ({
        turns,
        shows: lastLayerTest(compose(to, invert(effect))),
      }));
      for (const before of LAYER_TURNS) {
        const start = compose(from, before.effect);
        for (const [i, { turns, effect }] of all.entries()) {
          const after = compose(start, effect);
          for (const end of ends)
            if (end.shows(after))
              found.push([...before.turns, ...turns, ...end.turns]);
          if (i % SEQUENCES_A_STEP === 0) yield 0.5 + (0.5 * i) / all.length;
        }
      }
      return found;
    },

    joined,

    *double(from, to, random) {
      return yield* joined(imagined(from, random), imagined(to, random));
    },
  };
}

/**
 * Tells whether the last layer of a state is as a pattern has it. Faster than
 * comparing all pieces: of what keeps the first two layers it is asked a
 * hundred thousand times for a set-up.
 */
function lastLayerTest(
  pattern: PartlyKnownCubies,
): (state: PartlyKnownCubies) => boolean {
  const arrays = [
    ["cornerOrientation", LAST_LAYER_CORNERS],
    ["edgeOrientation", LAST_LAYER_EDGES],
    ["cornerPermutation", LAST_LAYER_CORNERS],
    ["edgePermutation", LAST_LAYER_EDGES],
  ] as const;
  const wanted = arrays.flatMap(([array, places]) =>
    places.flatMap((at) => {
      const value = pattern[array][at]!;
      return value === UNKNOWN ? [] : [{ array, at, value }];
    }),
  );
  return (state) => {
    for (const { array, at, value } of wanted)
      if (state[array][at] !== value) return false;
    return true;
  };
}

/** The short sequences, each seen from all four sides. */
function* fromEverySide(): Steps<readonly ShortSequence[]> {
  const met = new Map<string, ShortSequence>();
  const given = sequencesKeepingTwoLayers();
  for (const [i, turns] of given.entries()) {
    for (const quarters of FREE_QUARTERS) {
      const seen = sequenceImage(rotationAbout("y", quarters), turns);
      const name = seen.join();
      if (!met.has(name))
        met.set(name, { turns: seen, effect: effectOf(seen) });
    }
    if (i % SEQUENCES_A_STEP === 0) yield i / given.length;
  }
  return [...met.values()];
}

interface Table {
  /** Every short sequence between turns of the layer that has an effect. */
  sequencesOf(effect: Cubies): readonly FaceTurnSequence[];
}

/** 16 ways to turn the layer before and after each. */
function* tableOf(all: readonly ShortSequence[]): Steps<Table> {
  const met = new Map<number, number[]>();
  for (const [i, { effect }] of all.entries()) {
    for (const before of FREE_QUARTERS) {
      const begun = compose(LAYER_TURNS[before]!.effect, effect);
      for (const after of FREE_QUARTERS) {
        const key = keyOf(compose(begun, LAYER_TURNS[after]!.effect));
        const name = i * 16 + before * 4 + after;
        const same = met.get(key);
        if (same === undefined) met.set(key, [name]);
        else same.push(name);
      }
    }
    if (i % SEQUENCES_A_STEP === 0) yield i / all.length;
  }
  const sequence = (name: number) => [
    ...LAYER_TURNS[(name >> 2) & 3]!.turns,
    ...all[name >> 4]!.turns,
    ...LAYER_TURNS[name & 3]!.turns,
  ];
  return {
    sequencesOf: (effect) => (met.get(keyOf(effect)) ?? []).map(sequence),
  };
}

/** A number of its own for each effect that keeps the first two layers. */
function keyOf(effect: Cubies): number {
  let key = 0;
  for (const at of LAST_LAYER_CORNERS)
    key =
      key * 12 +
      3 * (effect.cornerPermutation[at]! % 4) +
      effect.cornerOrientation[at]!;
  for (const at of LAST_LAYER_EDGES)
    key =
      key * 8 +
      2 * (effect.edgePermutation[at]! % 4) +
      effect.edgeOrientation[at]!;
  return key;
}
