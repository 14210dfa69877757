/**
 * The phrases that names of the last layer's cases are made of: how many pieces
 * are up and how they lie, which change places. All begin small.
 */
import { type MovedShape, type UpShape, upShape } from "./last-layer-families";
import { SOLVED_LOOK } from "./last-layer-look";
import { lastColourSides, sideOfTwoCorners } from "./last-layer-look-words";
import type { SeenLook } from "./last-layer-orbits";
import { roundsOf } from "./last-layer-rounds";
import type { WholeCubeNaming } from "./whole-cube-naming";

/** What a name of the last layer depends on. */
export type LastNaming = Pick<WholeCubeNaming, "last">;

const UP_COUNT: Readonly<Record<UpShape, string>> = {
  none: "no",
  one: "one",
  "two-next": "two",
  "two-across": "two",
  all: "all",
};

/** How two pieces lie to each other. */
const LIE: Readonly<Record<"two-next" | "two-across", string>> = {
  "two-next": "next to each other",
  "two-across": "across from each other",
};

/** "two corners up", "no edge up", "all edges up". */
export function upInWords(piece: "corner" | "edge", shape: UpShape): string {
  const isOne = shape === "one" || shape === "none";
  return `${UP_COUNT[shape]} ${piece}${isOne ? "" : "s"} up`;
}

/** How many are up and how two of them lie: "two corners up, next to each other" where `before` is ", ". */
export function upLyingInWords(
  piece: "corner" | "edge",
  shape: UpShape,
  before: string,
): string {
  const words = upInWords(piece, shape);
  return shape === "two-next" || shape === "two-across"
    ? `${words}${before}${LIE[shape]}`
    : words;
}

/** "two corners next to each other change places"; undefined where none move. */
export function movedInWords(
  pieces: "corners" | "edges",
  shape: MovedShape,
): string | undefined {
  switch (shape) {
    case "none":
      return undefined;
    case "two-next":
    case "two-across":
      return `two ${pieces} ${LIE[shape]} change places`;
    case "three":
      return `three ${pieces} go round`;
    case "two-and-two-next":
      return `${pieces} ${LIE["two-next"]} change places in pairs`;
    case "two-and-two-across":
      return `${pieces} ${LIE["two-across"]} change places in pairs`;
    case "four":
      return `four ${pieces} go round`;
  }
}

/** How many move, without how they lie: "two corners"; undefined where none move. */
export function movedCount(
  pieces: "corners" | "edges",
  shape: MovedShape,
): string | undefined {
  switch (shape) {
    case "none":
      return undefined;
    case "two-next":
    case "two-across":
      return `two ${pieces}`;
    case "three":
      return `three ${pieces}`;
    case "two-and-two-next":
    case "two-and-two-across":
    case "four":
      return `four ${pieces}`;
  }
}

/** How many sides around the layer show the last colour, from a text of twists. */
function sidesShowing(twists: string): number {
  return new Set(lastColourSides(twists).filter((side) => side !== "U")).size;
}

const SIDE_COUNT: readonly string[] = [
  "no side",
  "one side",
  "two sides",
  "three sides",
];

/**
 * What tells two patterns of twisted corners apart that have as many up: which
 * way the others must turn, or on how many sides the last colour shows;
 * undefined where there is only one such pattern.
 */
export function twistDetail(
  twists: string,
  { last }: LastNaming,
  others: string,
): string | undefined {
  switch (upShape(twists)) {
    case "all":
    case "two-across":
      return undefined;
    case "one":
      // A sticker on the side that follows clockwise has gone too far that way.
      return `${others} ${twists.includes("1") ? "anticlockwise" : "clockwise"}`;
    case "none":
    case "two-next":
      return `${last} on ${SIDE_COUNT[sidesShowing(twists)] ?? ""}`;
  }
}

/** Corners by how they are turned: "two corners up across from each other", "one corner up, the others turn clockwise". */
export function twistsInWords(twists: string, naming: LastNaming): string {
  const shape = upShape(twists);
  const detail = twistDetail(twists, naming, "the others turn");
  if (detail === undefined) return upLyingInWords("corner", shape, " ");
  const up =
    shape === "two-next"
      ? "two neighbouring corners up"
      : upInWords("corner", shape);
  return `${up}, ${detail}`;
}

const SHORT_UP: Readonly<Record<UpShape, string>> = {
  none: "no corner up",
  one: "one corner up",
  "two-next": "two neighbours up",
  "two-across": "two across up",
  all: "all corners up",
};

/**
 * How corners change places in a few words: "front two swap".
 *
 * Shape: a briefest look, in which at most two corners are out of place.
 */
export function swapInWords({ cornerTwists, cornerPlaces }: SeenLook): string {
  const [round] = roundsOf(cornerPlaces ?? SOLVED_LOOK.cornerPlaces);
  if (round === undefined) return "none swap";
  const side = sideOfTwoCorners(round);
  if (side === undefined) return "diagonal swap";
  // With all up nothing says where the front is.
  return cornerTwists === SOLVED_LOOK.cornerTwists
    ? "neighbours swap"
    : `${side} two swap`;
}

/** Corners by how they are turned and placed: "one corner up, others clockwise; front two swap". */
export function cornersInWords(look: SeenLook, naming: LastNaming): string {
  const twists = look.cornerTwists ?? SOLVED_LOOK.cornerTwists;
  const detail = twistDetail(twists, naming, "others");
  const up = SHORT_UP[upShape(twists)];
  return `${detail === undefined ? up : `${up}, ${detail}`}; ${swapInWords(look)}`;
}
