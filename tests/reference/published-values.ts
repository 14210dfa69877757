/**
 * Numbers that others have published about the cube, each with its source.
 * Move sequences with their effects are in `sequences.json`, the classes of
 * the last layer in `last-layer.json`.
 */
import lastLayerFile from "./last-layer.json";
import sequencesFile from "./sequences.json";

/** States at exactly 0–5 half-turn-metric moves from solved. Source: OEIS A080601. */
export const STATES_AT_HALF_TURN_DEPTH = [1, 18, 243, 3240, 43239, 574908];

/** States at exactly 0–5 quarter turns from solved. Source: OEIS A080602. */
export const STATES_AT_QUARTER_TURN_DEPTH = [1, 12, 114, 1068, 10011, 93840];

/** States of the four first-layer edges by distance. Source: Vandenbergh, "Cross study". */
export const CROSS_STATES_AT_HALF_TURN_DEPTH = [
  1, 15, 158, 1394, 9809, 46381, 97254, 34966, 102,
];

/** The same in quarter turns. Source: computed twice, independently of this project. */
export const CROSS_STATES_AT_QUARTER_TURN_DEPTH = [
  1, 10, 73, 500, 3078, 15528, 57180, 91654, 21849, 207,
];

/**
 * States of the last layer by distance, turns of the layer counted, of 62,208.
 * Source: cubeman.org forum; lengths ≤ 10 computed independently of this project.
 */
export const LAST_LAYER_STATES_AT_HALF_TURN_DEPTH = [
  1, 3, 0, 0, 0, 0, 16, 88, 200, 394, 1102, 3470, 9807,
];

/** How many different orders the elements of the group have, and the greatest. Source: OEIS A338883. */
export const ELEMENT_ORDERS = { different: 73, greatest: 1260 };

/** Orders of short sequences. Source: computed twice, independently of this project. */
export const SEQUENCE_ORDERS: readonly (readonly [string, number])[] = [
  ["R U", 105],
  ["R U'", 63],
  ["R U2", 30],
  ["R2 U2", 6],
  ["R U R' U'", 6],
  ["R L", 4],
  ["R L F B", 6],
  ["F R U", 80],
  ["M U", 8],
  ["R U2 D' B D'", 1260],
];

/** Sequences that do the same. Source: computed twice, independently of this project. */
export const IDENTITIES: readonly (readonly [string, string])[] = [
  ["M", "x' R L'"],
  ["E", "y' U D'"],
  ["S", "z F' B"],
  ["Rw", "x L"],
  ["Uw", "y D"],
  ["Fw", "z B"],
];

/** A sequence of common practice, played on a solved cube. */
export interface PublishedSequence {
  readonly name: string;
  readonly moves: string;
  readonly order: number;
  /** Places by sticker: `UBL -> RUB`: the sticker on U goes to R. */
  readonly cornerCycles: readonly string[];
  readonly edgeCycles: readonly string[];
  readonly facelets: string;
}

/** Every published sequence. Source: see "about" in the file. */
export const PUBLISHED_SEQUENCES: readonly PublishedSequence[] =
  sequencesFile.sequences;

/** A class of the last layer's orientation, as the trade numbers them. */
export interface LastLayerOrientation {
  readonly number: number;
  readonly sequence: string;
  readonly cornerTwists: string;
  readonly edgeFlips: string;
  readonly of216: number;
}

/** The 57 classes of orientation. Source: common practice, from memory; effects computed. */
export const LAST_LAYER_ORIENTATIONS: readonly LastLayerOrientation[] =
  lastLayerFile.orientation;

/** The 21 classes of permutation. Source: common practice, from memory; effects computed. */
export const LAST_LAYER_PERMUTATIONS: readonly {
  readonly name: string;
  readonly sequence: string;
}[] = lastLayerFile.permutation;

/**
 * The fewest face turns that place the last layer, by the trade's letters,
 * turns of the layer free before and after. Source: computed independently of
 * this project, nine of them twice.
 */
export const SHORTEST_PERMUTATIONS: Readonly<Record<string, number>> = {
  ...lengthOf(9, "Ua Ub Aa Ab H"),
  ...lengthOf(10, "Ja Jb T"),
  ...lengthOf(12, "Ga Gb Gc Gd Z"),
  ...lengthOf(13, "Ra Rb F Y Na Nb"),
  ...lengthOf(14, "V E"),
};

function lengthOf(length: number, names: string): Record<string, number> {
  return Object.fromEntries(names.split(" ").map((name) => [name, length]));
}
