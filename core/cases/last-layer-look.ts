/**
 * What the last layer shows, in four parts that a stage may ask for or leave
 * out: how its corners and edges are turned, and where they are.
 *
 * Each part is a short text of four digits, as a person reads it off the cube
 * held with the last layer on top: 24 · 24 · 27 · 8 texts in all, so that a
 * stage's looks are few numbers and their turns are small tables.
 *
 * Frame: states are in the body frame, where the last layer is D. The digits
 * go clockwise as seen from above after the cube is turned over about its
 * front–back axis (the hold "down"): corners from the one at the front right
 * (body DLF), edges from the one on the right (body DL).
 */
import {
  type Cubies,
  isOddPermutation,
  type PartlyKnownCubies,
  SOLVED,
  trustedCubies,
} from "../cube/cubies";
import { type Corner, corner, type Edge, edge } from "../cube/pieces";
import { cornerImage, edgeImage, rotationAbout } from "../cube/symmetries";
import { present } from "../invariant";

/**
 * The four parts of a look.
 *
 * Shape: `cornerTwists` names for each place where the last-layer sticker is:
 *        0 on top, 1 on the side that follows clockwise around the corner, 2
 *        on the other; `edgeFlips` 0 on top, 1 on the side; `cornerPlaces` and
 *        `edgePlaces` which piece is there, named by its home.
 */
export const LOOK_PARTS = [
  "cornerTwists",
  "edgeFlips",
  "cornerPlaces",
  "edgePlaces",
] as const;

export type LookPart = (typeof LOOK_PARTS)[number];

/** A look, wholly. */
export type LastLayerLook = Readonly<Record<LookPart, string>>;

/** What turns the body over to the hold in which the last layer is on top. */
const TURNED_OVER = rotationAbout("z", 2);

/** The last layer's corners (body frame), in the order of a look's digits. */
export const LAST_LAYER_CORNERS: readonly Corner[] = (
  ["URF", "UFL", "ULB", "UBR"] as const
).map((seen) => cornerImage(TURNED_OVER, corner(seen)));

/** The last layer's edges (body frame), in the order of a look's digits. */
export const LAST_LAYER_EDGES: readonly Edge[] = (
  ["UR", "UF", "UL", "UB"] as const
).map((seen) => edgeImage(TURNED_OVER, edge(seen)));

const PLACES = [0, 1, 2, 3] as const;

/** Every text of four digits below `digits` that `isWanted`, ascending. */
function textsOf(
  digits: number,
  isWanted: (values: readonly number[]) => boolean,
): readonly string[] {
  return Array.from({ length: digits ** 4 }, (_, n) =>
    PLACES.map((i) => Math.floor(n / digits ** (3 - i)) % digits),
  )
    .filter(isWanted)
    .map((values) => values.join(""));
}

function turnedToSum(modulus: 2 | 3): readonly string[] {
  return textsOf(
    modulus,
    (values) => values.reduce((sum, value) => sum + value, 0) % modulus === 0,
  );
}

const PERMUTATIONS = textsOf(4, (values) => new Set(values).size === 4);

/** Every text that a part can have, ascending; the first is the solved one. */
export const PART_TEXTS: Readonly<Record<LookPart, readonly string[]>> = {
  cornerTwists: turnedToSum(3),
  edgeFlips: turnedToSum(2),
  cornerPlaces: PERMUTATIONS,
  edgePlaces: PERMUTATIONS,
};

/** The look of a solved last layer. */
export const SOLVED_LOOK: LastLayerLook = {
  cornerTwists: "0000",
  edgeFlips: "0000",
  cornerPlaces: "0123",
  edgePlaces: "0123",
};

/** A part after a quarter turn of the last layer (clockwise, seen from above). */
export function partTurnedAfter(text: string): string {
  return text.slice(3) + text.slice(0, 3);
}

/** A part of a state that began with a quarter turn of the last layer: its pieces are all one home further. */
export function partTurnedBefore(part: LookPart, text: string): string {
  return part === "cornerPlaces" || part === "edgePlaces"
    ? PLACES.map((i) => (Number(text[i]) + 1) % 4).join("")
    : text;
}

/** The texts of places that are odd permutations. */
export const ODD_PLACES: ReadonlySet<string> = new Set(
  PERMUTATIONS.filter((text) =>
    isOddPermutation(Uint8Array.from(text, Number)),
  ),
);

/**
 * The look of a state whose first two layers are placed.
 *
 * Shape: the texts are those of `PART_TEXTS` where they are placed, and may be
 *        others where they are not.
 */
export function lookIn(state: PartlyKnownCubies): LastLayerLook {
  const {
    cornerPermutation,
    cornerOrientation,
    edgePermutation,
    edgeOrientation,
  } = state;
  const corners = LAST_LAYER_CORNERS as readonly number[];
  const edges = LAST_LAYER_EDGES as readonly number[];
  const read = (at: readonly number[], digit: (position: number) => number) =>
    at.map(digit).join("");
  return {
    cornerTwists: read(corners, (at) => cornerOrientation[at] ?? -1),
    edgeFlips: read(edges, (at) => edgeOrientation[at] ?? -1),
    cornerPlaces: read(corners, (at) =>
      corners.indexOf(cornerPermutation[at] ?? -1),
    ),
    edgePlaces: read(edges, (at) => edges.indexOf(edgePermutation[at] ?? -1)),
  };
}

/** The state with placed first two layers that has a look; parts left out are as when solved. */
export function stateOfLook(look: Partial<LastLayerLook>): Cubies {
  const { cornerTwists, edgeFlips, cornerPlaces, edgePlaces } = {
    ...SOLVED_LOOK,
    ...look,
  };
  const state = {
    cornerPermutation: Uint8Array.from(SOLVED.cornerPermutation),
    cornerOrientation: Uint8Array.from(SOLVED.cornerOrientation),
    edgePermutation: Uint8Array.from(SOLVED.edgePermutation),
    edgeOrientation: Uint8Array.from(SOLVED.edgeOrientation),
  };
  const piece = (of: readonly number[], digit: string | undefined) =>
    present(of[Number(digit)], "a digit names one of four");
  LAST_LAYER_CORNERS.forEach((at, i) => {
    state.cornerPermutation[at] = piece(LAST_LAYER_CORNERS, cornerPlaces[i]);
    state.cornerOrientation[at] = Number(cornerTwists[i]);
  });
  LAST_LAYER_EDGES.forEach((at, i) => {
    state.edgePermutation[at] = piece(LAST_LAYER_EDGES, edgePlaces[i]);
    state.edgeOrientation[at] = Number(edgeFlips[i]);
  });
  return trustedCubies(state);
}
