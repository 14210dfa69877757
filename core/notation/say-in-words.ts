/**
 * Turns in a learner's words, as a ten-year-old can follow them without
 * notation. "Turn the bottom to the right" always means that the *front* of
 * the bottom goes right; the front and the back have no front of their own, so
 * their top says the direction, as the learner sees it from where they sit.
 *
 * What becomes of the piece that matters is in `say-step.ts`.
 */
import type { Face } from "../cube/faces";
import { bodyFace, holdAfterTurn } from "../cube/held-cube";
import type { Rotation } from "../cube/symmetries";
import {
  type Axis,
  isSliceTurn,
  type Turn,
  type TurnLayer,
} from "../cube/turns";
import { type ColourNames, sideName } from "./place-words";

/** A sentence, or the same as a caption: without "Turn the" and full stop. */
export type WordStyle = "full" | "short";

/** What names sides by colour: how the cube is held before the turn, and its colours. */
export interface SeenColours {
  readonly hold: Rotation;
  readonly colours: ColourNames;
}

/** Each direction as a sentence, a caption and a detail say it; `its` becomes "their" for two layers. */
const DIRECTIONS = {
  up: { full: " up", short: " up", detail: "its front goes up" },
  down: { full: " down", short: " down", detail: "its front goes down" },
  left: {
    full: " to the left",
    short: " to the left",
    detail: "its front goes left",
  },
  right: {
    full: " to the right",
    short: " to the right",
    detail: "its front goes right",
  },
  topLeft: {
    full: " so that its top goes left",
    short: ", its top to the left",
    detail: "anticlockwise, as you see it from the front",
  },
  topRight: {
    full: " so that its top goes right",
    short: ", its top to the right",
    detail: "clockwise, as you see it from the front",
  },
} as const;

type Direction = keyof typeof DIRECTIONS;

const OPPOSITE_DIRECTION: Readonly<Record<Direction, Direction>> = {
  up: "down",
  down: "up",
  left: "right",
  right: "left",
  topLeft: "topRight",
  topRight: "topLeft",
};

/** Each layer's name, and which way it goes when turned clockwise (WCA 12a; slices: common practice). */
const LAYER_WORDS: Readonly<
  Record<
    Exclude<TurnLayer, Axis>,
    readonly [name: string, clockwise: Direction]
  >
> = {
  U: ["top", "left"],
  R: ["right side", "up"],
  F: ["front", "topRight"],
  D: ["bottom", "right"],
  L: ["left side", "down"],
  B: ["back", "topLeft"],
  Uw: ["two top layers", "left"],
  Rw: ["two right layers", "up"],
  Fw: ["two front layers", "topRight"],
  Dw: ["two bottom layers", "right"],
  Lw: ["two left layers", "down"],
  Bw: ["two back layers", "topLeft"],
  M: ["middle column", "down"],
  E: ["middle row", "right"],
  S: ["layer behind the front", "topRight"],
};

/** Which side a quarter turn of the whole cube brings where, clockwise and the other way. */
const WHOLE_CUBE_BRINGS: Readonly<
  Record<Axis, readonly [to: Face, clockwise: Face, other: Face]>
> = {
  x: ["F", "D", "U"],
  y: ["F", "R", "L"],
  z: ["U", "L", "R"],
};

function layerPhrase(
  layer: Exclude<TurnLayer, Axis>,
  turn: Turn,
  style: WordStyle | "detail",
): string {
  const [name, clockwise] = LAYER_WORDS[layer];
  if (turn.quarters === 2) return `${name} twice`;
  const direction =
    turn.quarters === 1 ? clockwise : OPPOSITE_DIRECTION[clockwise];
  const words = DIRECTIONS[direction][style];
  const told = name.startsWith("two ")
    ? words.replace("its ", "their ")
    : words;
  return style === "detail" ? told : name + told;
}

function wholeCubePhrase(
  axis: Axis,
  turn: Turn,
  style: WordStyle,
  seen: SeenColours | undefined,
): string {
  const side = (view: Face) =>
    seen === undefined
      ? sideName(view)
      : seen.colours[bodyFace(seen.hold, view)];
  const isFull = style === "full";
  const brings = (from: Face, to: Face) =>
    isFull
      ? ` so that ${side(from)} comes to ${sideName(to)}`
      : `, ${side(from).replace(/^the /, "")} to ${sideName(to)}`;
  if (turn.quarters !== 2) {
    const [to, clockwise, other] = WHOLE_CUBE_BRINGS[axis];
    return `whole cube${brings(turn.quarters === 1 ? clockwise : other, to)}`;
  }
  switch (axis) {
    case "x":
      return `whole cube upside down${brings("B", "F")}`;
    case "y":
      return `whole cube${brings("B", "F")}`;
    case "z":
      return isFull
        ? `whole cube upside down and keep ${side("F")} in front`
        : `whole cube upside down, ${side("F").replace(/^the /, "")} stays in front`;
  }
}

function phrase(
  turn: Turn,
  style: WordStyle,
  seen: SeenColours | undefined,
): string {
  const { layer } = turn;
  return layer === "x" || layer === "y" || layer === "z"
    ? wholeCubePhrase(layer, turn, style, seen)
    : layerPhrase(layer, turn, style);
}

/**
 * A turn as the learner makes it: "Turn the right side down.", or short
 * "Right side down". With `seen`, turns of the whole cube name the colour that
 * comes to the front: "Turn the whole cube so that red comes to the front."
 */
export function turnInWords(
  turn: Turn,
  style: WordStyle = "full",
  seen?: SeenColours,
): string {
  const words = phrase(turn, style, seen);
  return style === "full"
    ? `Turn the ${words}.`
    : words.charAt(0).toUpperCase() + words.slice(1);
}

/** How far and which way, to stand under the turn: "One quarter turn; its front goes down." */
export function turnDetailInWords(turn: Turn): string {
  const { layer } = turn;
  if (layer === "x" || layer === "y" || layer === "z")
    return "No layer turns: only the way you hold the cube changes.";
  if (turn.quarters === 2)
    return "Two quarter turns; either way round comes to the same.";
  const rest = isSliceTurn(turn) ? "; the layers beside it stay" : "";
  return `One quarter turn; ${layerPhrase(layer, turn, "detail")}${rest}.`;
}

/**
 * A sequence in one sentence: "Turn the bottom to the left, then the right
 * side down." No turns are no words. `seen` is the hold before the first turn.
 */
export function turnsInWords(
  turns: readonly Turn[],
  seen?: SeenColours,
): string {
  if (turns.length === 0) return "";
  let now = seen;
  const phrases = turns.map((turn) => {
    const words = phrase(turn, "full", now);
    if (now !== undefined)
      now = { ...now, hold: holdAfterTurn(now.hold, turn) };
    return `the ${words}`;
  });
  return `Turn ${phrases.join(", then ")}.`;
}
