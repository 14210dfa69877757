/**
 * Which colour is on which face, and what each colour looks like.
 *
 * A *scheme* says names only: the names a learner says and a screen reader
 * speaks. *Paints* say how the names look, so that one cube can be shown in
 * its own colours, in colours told apart with any common colour vision, or in
 * greys, without any sentence changing.
 */
import { FACES, type Face } from "../cube/faces";
import { faceImage, ROTATIONS } from "../cube/symmetries";
import { invariant, present } from "../invariant";

/** The colours a cube's stickers may have, by the names learners say. */
export const COLOUR_NAMES = [
  "white",
  "yellow",
  "green",
  "blue",
  "red",
  "orange",
  "black",
  "grey",
  "pink",
  "purple",
  "brown",
  "turquoise",
  "light blue",
  "light green",
] as const;

/** A colour by the name a learner says. */
export type ColourName = (typeof COLOUR_NAMES)[number];

/** A cube's colouring: the colour of each body face. Face U is the first layer. */
export type ColourScheme = Readonly<Record<Face, ColourName>>;

/** Ways of showing the named colours. */
export const PAINTS = ["plain", "any-vision", "greys"] as const;

/** One way of showing the named colours. */
export type Paints = (typeof PAINTS)[number];

/** The usual colouring, common practice: white opposite yellow, green opposite blue, red opposite orange. */
export const USUAL_SCHEME: ColourScheme = {
  U: "white",
  R: "red",
  F: "green",
  D: "yellow",
  L: "orange",
  B: "blue",
};

/** The older colouring, common practice: as the usual one with yellow and blue exchanged. */
export const OLDER_SCHEME: ColourScheme = {
  ...USUAL_SCHEME,
  D: "blue",
  B: "yellow",
};

/** The colour sets offered before a learner sets up their own cube. */
export const COLOUR_SETS = {
  usual: { scheme: USUAL_SCHEME, paints: "plain", letters: false },
  older: { scheme: OLDER_SCHEME, paints: "plain", letters: false },
  "any-vision": { scheme: USUAL_SCHEME, paints: "any-vision", letters: false },
  greys: { scheme: USUAL_SCHEME, paints: "greys", letters: true },
} as const satisfies Readonly<Record<string, ColourSet>>;

/** A colouring with the way it is shown. */
export interface ColourSet {
  readonly scheme: ColourScheme;
  readonly paints: Paints;
  /** Whether stickers carry the first letter of their colour. */
  readonly letters: boolean;
}

const PLAIN: Readonly<Record<ColourName, string>> = {
  white: "#f7f5ee",
  yellow: "#ebc133",
  green: "#2f9a5a",
  blue: "#2b5fb0",
  red: "#c23531",
  orange: "#ec7c22",
  black: "#17191a",
  grey: "#a9aaa6",
  pink: "#eb9cc0",
  purple: "#7c4a9e",
  brown: "#7d5433",
  turquoise: "#46bdb6",
  "light blue": "#8cc2ea",
  "light green": "#b0d456",
};

/**
 * Source: Okabe, Ito (2002, modified 2008): 000000 E69F00 56B4E9 009E73
 *         F0E442 0072B2 D55E00 CC79A7. Names outside that palette keep their
 *         plain colour.
 */
const ANY_VISION: Readonly<Record<ColourName, string>> = {
  ...PLAIN,
  yellow: "#f0e442",
  green: "#009e73",
  blue: "#0072b2",
  red: "#d55e00",
  orange: "#e69f00",
  black: "#000000",
  pink: "#cc79a7",
  "light blue": "#56b4e9",
};

/** Greys for printing; told apart by their letter, not by their shade alone. */
const GREYS: Readonly<Record<ColourName, string>> = {
  white: "#ffffff",
  yellow: "#d9d9d9",
  green: "#8e8e8e",
  blue: "#5e5e5e",
  red: "#777777",
  orange: "#b9b9b9",
  black: "#333333",
  grey: "#a4a4a4",
  pink: "#c9c9c9",
  purple: "#6a6a6a",
  brown: "#696969",
  turquoise: "#adadad",
  "light blue": "#cfcfcf",
  "light green": "#e3e3e3",
};

/** On a screen bare plastic is grey as well: the middle greys move away from it. */
const SCREEN_GREYS: Readonly<Record<ColourName, string>> = {
  ...GREYS,
  green: "#9a9a9a",
  red: "#3c3c3c",
  blue: "#121212",
  purple: "#2a2a2a",
  brown: "#4a4a4a",
  black: "#000000",
};

const PAINT_TABLES: Readonly<
  Record<Paints, Readonly<Record<ColourName, string>>>
> = { plain: PLAIN, "any-vision": ANY_VISION, greys: GREYS };

/** How a named colour looks on a screen or on paper. Shape: `#rrggbb`. */
export function colourHex(
  name: ColourName,
  paints: Paints = "plain",
  on: "screen" | "paper" = "screen",
): string {
  if (paints === "greys" && on === "screen") return SCREEN_GREYS[name];
  return PAINT_TABLES[paints][name];
}

/**
 * A letter for each face's colour: the first letter of its name that no colour
 * of the scheme before it (in the order of `COLOUR_NAMES`) has taken, so that
 * a cube's letters do not change when it is held another way.
 */
export function schemeLetters(
  scheme: ColourScheme,
): Readonly<Record<Face, string>> {
  const taken = new Map<ColourName, string>();
  for (const name of COLOUR_NAMES) {
    if (!FACES.some((face) => scheme[face] === name)) continue;
    const used = [...taken.values()];
    const letter = [...name.toUpperCase()].find(
      (candidate) => candidate !== " " && !used.includes(candidate),
    );
    taken.set(name, present(letter, "six names have six letters"));
  }
  const letterOf = (face: Face) =>
    present(taken.get(scheme[face]), "every colour of a scheme has a name");
  return {
    U: letterOf("U"),
    R: letterOf("R"),
    F: letterOf("F"),
    D: letterOf("D"),
    L: letterOf("L"),
    B: letterOf("B"),
  };
}

/** Whether six colours are six different ones. */
export function isColourScheme(scheme: ColourScheme): boolean {
  return new Set(FACES.map((face) => scheme[face])).size === FACES.length;
}

/** Whether two colourings are one cube held in two ways; a mirror image is another cube. */
export function isSameCube(a: ColourScheme, b: ColourScheme): boolean {
  return ROTATIONS.some((rotation) =>
    FACES.every((face) => b[faceImage(rotation, face)] === a[face]),
  );
}

/**
 * Whether six colours that are the usual ones stand as on hardly any cube:
 * most likely they were told in a wrong order. Other colours may stand anyhow.
 */
export function isDoubtfulScheme(scheme: ColourScheme): boolean {
  const usual = FACES.map((face) => USUAL_SCHEME[face]);
  return (
    FACES.every((face) => usual.includes(scheme[face])) &&
    !isSameCube(scheme, USUAL_SCHEME) &&
    !isSameCube(scheme, OLDER_SCHEME)
  );
}

/**
 * The same cube held so that a colour becomes the first layer's (face U).
 *
 * Only whole-cube turns are used, so the cube stays the same cube and never
 * its mirror image.
 * Errors: a colour that the scheme does not have is our own bug.
 */
export function schemeWithFirstColour(
  scheme: ColourScheme,
  colour: ColourName,
): ColourScheme {
  const from = FACES.find((face) => scheme[face] === colour);
  invariant(from !== undefined, "the first colour is one of the six");
  const rotation = present(
    ROTATIONS.find((candidate) => faceImage(candidate, from) === "U"),
    "every face can be turned up",
  );
  const turned: Record<Face, ColourName> = { ...scheme };
  for (const face of FACES) turned[faceImage(rotation, face)] = scheme[face];
  return turned;
}
