/**
 * Places and sides in a learner's words: top, bottom, front, back, left and
 * right, always as the learner sees them, never a letter of notation.
 */
import type { Face } from "../cube/faces";
import { bodyFace, viewFace } from "../cube/held-cube";
import {
  type Corner,
  CORNER_FACES,
  type Edge,
  EDGE_FACES,
} from "../cube/pieces";
import type { Rotation } from "../cube/symmetries";
import { present } from "../invariant";

/** A colour's name for each face of the body, in the learner's own words. */
export type ColourNames = Readonly<Record<Face, string>>;

const PLACE_WORD: Readonly<Record<Face, string>> = {
  U: "top",
  R: "right",
  F: "front",
  D: "bottom",
  L: "left",
  B: "back",
};

const SIDE_NAME: Readonly<Record<Face, string>> = {
  U: "the top",
  R: "the right side",
  F: "the front",
  D: "the bottom",
  L: "the left side",
  B: "the back",
};

const ON_SIDE: Readonly<Record<Face, string>> = {
  U: "on top",
  R: "on the right",
  F: "on the front",
  D: "on the bottom",
  L: "on the left",
  B: "on the back",
};

// Top or bottom is said first, left or right last.
const SAID_IN_ORDER: readonly Face[] = ["U", "D", "F", "B", "L", "R"];

/** A side of the cube as a thing: "the right side", "the top". */
export function sideName(view: Face): string {
  return SIDE_NAME[view];
}

/** Where a sticker faces: "on the right", "on top". */
export function onSideInWords(view: Face): string {
  return ON_SIDE[view];
}

/** Which way a colour faces: "white is on the right". */
export function colourSideInWords(colour: string, view: Face): string {
  return `${colour} is ${ON_SIDE[view]}`;
}

/**
 * A place by the sides it lies on: "bottom front right"; an edge between two
 * upright sides is "middle front right".
 *
 * Shape: one to three faces as the learner sees them, in any order.
 */
export function placeInWords(view: readonly Face[]): string {
  const words = SAID_IN_ORDER.filter((face) => view.includes(face)).map(
    (face) => PLACE_WORD[face],
  );
  const isUpright = !view.includes("U") && !view.includes("D");
  return (view.length === 2 && isUpright ? ["middle", ...words] : words).join(
    " ",
  );
}

/**
 * A piece's colours: "white and green"; a corner's "white, green and red", the
 * other two as they are met from left to right.
 *
 * Shape: two or three faces of the body, reference face first, clockwise.
 */
export function coloursInWords(
  faces: readonly Face[],
  colours: ColourNames,
): string {
  const [first, second, third] = faces.map((face) => colours[face]);
  return third === undefined
    ? `${first ?? ""} and ${second ?? ""}`
    : `${first ?? ""}, ${third} and ${second ?? ""}`;
}

/** The sides on which the learner sees a corner position of the body. */
export function seenCornerFaces(hold: Rotation, at: Corner): readonly Face[] {
  return present(CORNER_FACES[at], "corners are in range").map((face) =>
    viewFace(hold, face),
  );
}

/** The sides on which the learner sees an edge position of the body. */
export function seenEdgeFaces(hold: Rotation, at: Edge): readonly Face[] {
  return present(EDGE_FACES[at], "edges are in range").map((face) =>
    viewFace(hold, face),
  );
}

/**
 * How the whole cube is held, by three sides: "white on top", "red in front",
 * "blue on the right".
 */
export function holdInWords(
  hold: Rotation,
  colours: ColourNames,
): readonly [top: string, front: string, right: string] {
  const colourAt = (view: Face) => colours[bodyFace(hold, view)];
  return [
    `${colourAt("U")} on top`,
    `${colourAt("F")} in front`,
    `${colourAt("R")} on the right`,
  ];
}
