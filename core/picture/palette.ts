/** The resolved colours a picture is drawn with: stickers, plastic, marks, glass. */
import type { Face } from "../cube/faces";
import {
  type ColourScheme,
  colourHex,
  type Paints,
  schemeLetters,
} from "./colour-sets";
import type { StickerSign } from "./sticker-signs";

/** On what a picture is shown. */
export type PictureTheme = "light" | "dark" | "print";

/** Colours of everything that is not a sticker. Shape: `#rrggbb`. */
export interface PictureInks {
  /** The cube's body, seen between tiles. */
  readonly gap: string;
  /** The plastic under a coloured sticker. */
  readonly tile: string;
  /** A tile without a sticker, and the raised plate on it. */
  readonly bare: string;
  readonly plate: string;
  /** The lines around a plate and a sticker, where the style has them. */
  readonly plateLine: string;
  readonly stickerLine: string;
  /** A line around the whole body, where the ground is as dark as the body. */
  readonly silhouette: string | undefined;
  /** The outline of the piece to bring home, and what keeps it apart. */
  readonly outline: string;
  readonly outlineCasing: string;
  readonly home: string;
  readonly homeDash: string;
  readonly homeCasing: string;
  readonly mistaken: string;
  readonly mistakenCasing: string;
  readonly arrow: string;
  readonly arrowCasing: string;
  readonly onArrow: string;
  readonly glassLight: string;
  readonly glassDark: string;
  readonly frame: string;
  readonly plateEdge: string;
  readonly ray: string;
  readonly word: string;
  /** Shares of glass in what a mirror shows, and of white in its glints. */
  readonly plasticHaze: number;
  readonly stickerHaze: number;
  readonly glints: readonly [wide: number, narrow: number];
  readonly shadow: number;
  readonly shadowColour: string;
}

/** Everything a picture needs to know about colours. */
export interface CubePalette {
  readonly theme: PictureTheme;
  /** What a sticker of each body face looks like. Shape: `#rrggbb`. */
  readonly faces: Readonly<Record<Face, string>>;
  /** What is written on a sticker of each body face, if anything. */
  readonly letters: Readonly<Record<Face, string>> | undefined;
  /** The sign on a sticker of each body face, in place of a letter. */
  readonly signs?: Readonly<Record<Face, StickerSign>> | undefined;
  /** A line around every sticker, where its fill alone would not tell it from plastic. */
  readonly rim: string | undefined;
  readonly inks: PictureInks;
}

/** Stands out at least 3:1 from the plastic of both screen themes (WCAG 2.2, 1.4.11). */
const GREYS_RIM = "#f2f2ee";

const LIGHT: PictureInks = {
  gap: "#25282a",
  tile: "#343739",
  bare: "#5a5b59",
  plate: "#636462",
  plateLine: "#636462",
  stickerLine: "#25282a",
  silhouette: undefined,
  outline: "#ffffff",
  outlineCasing: "#101416",
  home: "#9fd6d2",
  homeDash: "#c9f0ec",
  homeCasing: "#1d2b2b",
  mistaken: "#ffffff",
  mistakenCasing: "#1d2b2b",
  arrow: "#0e5a60",
  arrowCasing: "#ffffff",
  onArrow: "#ffffff",
  glassLight: "#fcfbf8",
  glassDark: "#d9dad6",
  frame: "#7d796f",
  plateEdge: "#a7a298",
  ray: "#7d796f",
  word: "#53575a",
  plasticHaze: 0.2,
  stickerHaze: 0.1,
  glints: [0.2, 0.2],
  shadow: 0.22,
  shadowColour: "#241a14",
};

const DARK: PictureInks = {
  ...LIGHT,
  gap: "#0d0f10",
  tile: "#2a2d2f",
  bare: "#4b4e4e",
  plate: "#555858",
  silhouette: "#59605f",
  arrow: "#7ccbc6",
  arrowCasing: "#0d1516",
  onArrow: "#0d2224",
  glassLight: "#3a4346",
  glassDark: "#242a2c",
  frame: "#78827f",
  plateEdge: "#0e1112",
  ray: "#757b7b",
  word: "#a7aaa6",
  plasticHaze: 0.14,
  stickerHaze: 0.14,
  glints: [0.1, 0.1],
  shadow: 0.55,
  shadowColour: "#000000",
};

const PRINT: PictureInks = {
  ...LIGHT,
  gap: "#000000",
  tile: "#ededed",
  bare: "#ededed",
  plate: "#ededed",
  plateLine: "#cfcfcf",
  stickerLine: "#000000",
  outline: "#000000",
  outlineCasing: "#ffffff",
  home: "#ffffff",
  homeDash: "#000000",
  homeCasing: "#ffffff",
  arrow: "#000000",
  arrowCasing: "#ffffff",
  glassLight: "#ffffff",
  glassDark: "#ffffff",
  frame: "#333333",
  plateEdge: "#ffffff",
  ray: "#555555",
  word: "#333333",
  plasticHaze: 0,
  stickerHaze: 0,
  glints: [0, 0],
  shadow: 0,
};

const INKS: Readonly<Record<PictureTheme, PictureInks>> = {
  light: LIGHT,
  dark: DARK,
  print: PRINT,
};

/** The colours for a colouring, shown on light, dark or paper. */
export function cubePalette(choice: {
  readonly scheme: ColourScheme;
  readonly theme: PictureTheme;
  readonly paints?: Paints;
  readonly letters?: boolean;
}): CubePalette {
  const { scheme, theme, paints = "plain", letters = false } = choice;
  const hex = (face: Face) =>
    colourHex(scheme[face], paints, theme === "print" ? "paper" : "screen");
  return {
    theme,
    faces: {
      U: hex("U"),
      R: hex("R"),
      F: hex("F"),
      D: hex("D"),
      L: hex("L"),
      B: hex("B"),
    },
    letters: letters ? schemeLetters(scheme) : undefined,
    rim: paints === "greys" && theme !== "print" ? GREYS_RIM : undefined,
    inks: INKS[theme],
  };
}
