/**
 * The last layer in words, place by place, as it is seen from above with the
 * first layer underneath: which way each piece faces, and what must go where.
 */
import type { Face } from "../cube/faces";
import { onSideInWords } from "../notation/place-words";
import { capitalised, listInWords } from "../notation/sentence";
import {
  areNeighbours,
  type Round,
  roundDirection,
  roundsOf,
} from "./last-layer-rounds";
import type { SeenLook } from "./last-layer-orbits";
import type { WholeCubeNaming } from "./whole-cube-naming";

/** The pieces of a layer of one kind. */
export type LayerPieces = "corners" | "edges";

/** Places in the order of a look's digits: clockwise from the front right, or from the right. */
const PLACE_NAMES: Readonly<Record<LayerPieces, readonly string[]>> = {
  corners: ["front right", "front left", "back left", "back right"],
  edges: ["right", "front", "left", "back"],
};

/** The upright sides, clockwise as seen from above, in the order of a look's edges. */
const SIDES: readonly Face[] = ["R", "F", "L", "B"];

/**
 * The side on which the last colour of a piece shows. A corner lies between
 * the side of its own digit's place, clockwise, and the next one.
 */
function lastColourSide(place: number, digit: number): Face {
  if (digit === 0) return "U";
  return SIDES[(place + digit - 1) % 4] ?? "U";
}

/** Where the last colour of each place's piece shows: four faces as seen. */
export function lastColourSides(text: string): readonly Face[] {
  return [0, 1, 2, 3].map((place) =>
    lastColourSide(place, Number(text[place])),
  );
}

function facingInWords(
  pieces: LayerPieces,
  text: string,
  { last }: Pick<WholeCubeNaming, "last">,
): string {
  const sides = lastColourSides(text);
  if (sides.every((side) => side === "U"))
    return `${capitalised(pieces)}: ${last} is on top at all four.`;
  const said = sides.map((side, place) => {
    const at = PLACE_NAMES[pieces][place] ?? "";
    return place === 0
      ? `${at} has ${last} ${onSideInWords(side)}`
      : `${at} ${onSideInWords(side)}`;
  });
  return `${capitalised(pieces)}: ${said.join(", ")}.`;
}

function placesOfRound(pieces: LayerPieces, round: Round): readonly string[] {
  return round.map((place) => PLACE_NAMES[pieces][place] ?? "");
}

function roundInWords(pieces: LayerPieces, round: Round): string {
  const names = placesOfRound(pieces, round);
  if (round.length === 2)
    return `${listInWords(names)} ${pieces} change places`;
  const direction = roundDirection(round);
  if (direction === undefined) {
    const [start = ""] = names;
    const steps = [...names.slice(1), start].map((name) => `to ${name}`);
    return `all four ${pieces} go round from ${[start, ...steps].join(" ")}`;
  }
  const which =
    round.length === 4
      ? `all four ${pieces}`
      : `${listInWords(names)} ${pieces}`;
  return `${which} go round ${direction}`;
}

/**
 * What must go where: "front and right edges change places", "front right,
 * front left and back left corners go round clockwise"; no rounds are no words.
 *
 * Shape: `text` is a look's places, and means them as they are counted.
 */
export function movesInWords(pieces: LayerPieces, text: string): string {
  return roundsOf(text)
    .map((round) => roundInWords(pieces, round))
    .join(", ");
}

/** The side on which two corners next to each other lie: "front"; undefined for two across from each other. */
export function sideOfTwoCorners(round: Round): string | undefined {
  if (!areNeighbours(round)) return undefined;
  const [a = 0, b = 0] = round;
  // Corners are next to each other around the side that follows the first of
  // them: 0 and 1 lie at the front.
  const first = (a + 1) % 4 === b ? a : b;
  return ["front", "left", "back", "right"][first];
}

/** Where pieces face, and what must go where, with the sentence that stands before it. */
function inWords(
  { cornerTwists, edgeFlips, cornerPlaces, edgePlaces }: SeenLook,
  naming: Pick<WholeCubeNaming, "last">,
  beforeMoves: string,
): string {
  const facing = [
    ...(cornerTwists === undefined
      ? []
      : [facingInWords("corners", cornerTwists, naming)]),
    ...(edgeFlips === undefined
      ? []
      : [facingInWords("edges", edgeFlips, naming)]),
  ];
  const known = [
    ...(cornerPlaces === undefined
      ? []
      : [movesInWords("corners", cornerPlaces)]),
    ...(edgePlaces === undefined ? [] : [movesInWords("edges", edgePlaces)]),
  ];
  if (known.length === 0) return facing.join(" ");
  const moves = known.filter((words) => words !== "");
  const piece =
    edgePlaces === undefined
      ? "corner"
      : cornerPlaces === undefined
        ? "edge"
        : "piece";
  const placing =
    moves.length === 0
      ? `${beforeMoves}every ${piece} is in its place.`
      : `${beforeMoves}${moves.join("; ")}.`;
  return [...facing, capitalised(placing)].join(" ");
}

/**
 * A look in words, as it is seen from above: "Corners: front right has yellow
 * on the right, front left on top, … Edges: yellow is on top at all four. Front
 * and right edges change places." Parts left out are not said.
 */
export function lastLayerInWords(
  look: SeenLook,
  naming: Pick<WholeCubeNaming, "last">,
): string {
  return inWords(look, naming, "");
}

/** A look in words as in `lastLayerInWords`, but what must go where is said up to a turn of the layer. */
export function lastLayerButForTurnsInWords(
  look: SeenLook,
  naming: Pick<WholeCubeNaming, "last">,
): string {
  return inWords(look, naming, "but for a turn of the top, ");
}
