/**
 * Sequences seen in a mirror or on a cube held another way. One rule serves
 * all layers: each follows a face (M follows L, x follows R, …), and a
 * symmetry takes that face to another.
 */
import type { Face } from "../cube/faces";
import {
  faceImage,
  isMirrored,
  LEFT_RIGHT_MIRROR,
  rotationAbout,
  type Symmetry,
  symmetryThrough,
} from "../cube/symmetries";
import { inverseTurn, type Turn, type TurnLayer } from "../cube/turns";

/** The three mirrors of the learner's view, by what they exchange. */
export const MIRRORS = {
  "left-right": LEFT_RIGHT_MIRROR,
  "top-bottom": symmetryThrough(LEFT_RIGHT_MIRROR, rotationAbout("z", 1)),
  "front-back": symmetryThrough(LEFT_RIGHT_MIRROR, rotationAbout("y", 1)),
} as const satisfies Readonly<Record<string, Symmetry>>;

export type Mirror = keyof typeof MIRRORS;

type LayerKind = "face" | "wide" | "slice" | "whole";

/** The face whose direction each layer follows (WCA 12a; slices: common practice). */
const LAYER_FOLLOWS: Readonly<
  Record<TurnLayer, readonly [kind: LayerKind, face: Face]>
> = {
  U: ["face", "U"],
  R: ["face", "R"],
  F: ["face", "F"],
  D: ["face", "D"],
  L: ["face", "L"],
  B: ["face", "B"],
  Uw: ["wide", "U"],
  Rw: ["wide", "R"],
  Fw: ["wide", "F"],
  Dw: ["wide", "D"],
  Lw: ["wide", "L"],
  Bw: ["wide", "B"],
  M: ["slice", "L"],
  E: ["slice", "D"],
  S: ["slice", "F"],
  x: ["whole", "R"],
  y: ["whole", "U"],
  z: ["whole", "F"],
};

/** Slice and whole-cube turns by face, and whether they follow it or oppose it. */
const SLICE_OF: Readonly<Record<Face, readonly [TurnLayer, boolean]>> = {
  L: ["M", true],
  R: ["M", false],
  D: ["E", true],
  U: ["E", false],
  F: ["S", true],
  B: ["S", false],
};
const WHOLE_OF: Readonly<Record<Face, readonly [TurnLayer, boolean]>> = {
  R: ["x", true],
  L: ["x", false],
  U: ["y", true],
  D: ["y", false],
  F: ["z", true],
  B: ["z", false],
};

function layerOf(kind: LayerKind, face: Face): readonly [TurnLayer, boolean] {
  switch (kind) {
    case "face":
      return [face, true];
    case "wide":
      return [`${face}w`, true];
    case "slice":
      return SLICE_OF[face];
    case "whole":
      return WHOLE_OF[face];
  }
}

function turnThrough(turn: Turn, symmetry: Symmetry): Turn {
  const [kind, face] = LAYER_FOLLOWS[turn.layer];
  const [layer, follows] = layerOf(kind, faceImage(symmetry, face));
  const image: Turn = { layer, quarters: turn.quarters };
  // A mirror makes clockwise counter-clockwise.
  return follows === isMirrored(symmetry) ? inverseTurn(image) : image;
}

/**
 * The sequence that does to the image what `turns` does to the original: each
 * turn conjugated. Any of the 48 symmetries; the way of a case held down is
 * its way held up through the half turn about the front–back axis.
 */
export function turnsThroughSymmetry(
  turns: readonly Turn[],
  symmetry: Symmetry,
): readonly Turn[] {
  return turns.map((turn) => turnThrough(turn, symmetry));
}

/** The sequence as a mirror shows it; mirrored twice it is itself. */
export function mirrorTurns(
  turns: readonly Turn[],
  mirror: Mirror,
): readonly Turn[] {
  return turnsThroughSymmetry(turns, MIRRORS[mirror]);
}
