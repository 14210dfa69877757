/**
 * Which key does what while the cube has focus.
 *
 * A face turns by its letter in the notation, so that what is learnt at the
 * keyboard is what is read in a book; Shift turns it the other way. `w` before
 * a letter takes the wide layer: a prefix and not a held key, because Alt with
 * a letter belongs to the browser's and the system's menus.
 */
import { FACES } from "../../../core/cube/faces";
import { TURN_LAYERS, type TurnLayer } from "../../../core/cube/turns";
import type { Turn } from "../../../core/cube/turns";

/** What a key asks of the cube. */
export type CubeKeyAction =
  | { readonly kind: "turn"; readonly turn: Turn }
  | { readonly kind: "wide-next" }
  | { readonly kind: "take-back" }
  | { readonly kind: "start-over" }
  | { readonly kind: "look-underneath" }
  | { readonly kind: "look-behind" };

/** The part of a keyboard event that matters. */
export interface KeyPress {
  readonly key: string;
  /** The physical key, used where the layout writes no Latin letters. */
  readonly code: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
  readonly repeat: boolean;
}

const OTHER_KEYS: Readonly<Record<string, CubeKeyAction>> = {
  Backspace: { kind: "take-back" },
  Delete: { kind: "start-over" },
  ArrowDown: { kind: "look-underneath" },
  ArrowUp: { kind: "look-behind" },
};

/** Letters that turn a layer, in lower case. */
const LAYER_OF_LETTER: ReadonlyMap<string, TurnLayer> = new Map(
  TURN_LAYERS.filter((layer) => layer.length === 1).map((layer) => [
    layer.toLowerCase(),
    layer,
  ]),
);

/**
 * What a key press asks of the cube, or undefined where it is not the cube's.
 *
 * Shape: `wide` says whether `w` was pressed just before. Keys held down
 *        repeat by themselves: those presses ask for nothing.
 */
export function cubeKeyAction(
  press: KeyPress,
  wide: boolean,
): CubeKeyAction | undefined {
  return press.repeat ? undefined : actionOf(press, wide);
}

/** Whether a key is the cube's: held down it asks for nothing more, but must not scroll the page either. */
export function isCubeKey(press: KeyPress): boolean {
  return actionOf(press, false) !== undefined;
}

function actionOf(press: KeyPress, wide: boolean): CubeKeyAction | undefined {
  if (press.ctrlKey || press.altKey || press.metaKey) return undefined;
  const other = OTHER_KEYS[press.key];
  if (other !== undefined) return other;
  const letter = letterOf(press);
  if (letter === "w") return { kind: "wide-next" };
  const layer = LAYER_OF_LETTER.get(letter);
  if (layer === undefined) return undefined;
  return {
    kind: "turn",
    turn: {
      layer: wide ? wideLayer(layer) : layer,
      quarters: press.shiftKey ? 3 : 1,
    },
  };
}

function letterOf(press: KeyPress): string {
  const written = press.key.toLowerCase();
  if (/^[a-z]$/.test(written)) return written;
  return /^Key([A-Z])$/.exec(press.code)?.[1]?.toLowerCase() ?? "";
}

/** The wide layer of a face; slices and whole-cube turns have none and stay. */
function wideLayer(layer: TurnLayer): TurnLayer {
  const face = FACES.find((name) => name === layer);
  return face === undefined ? layer : `${face}w`;
}
