/**
 * Turns as the learner makes them: faces, wide layers, slices, whole cube.
 *
 * Source: WCA Regulations, Article 12; `M E S` are common practice: M turns
 *         with L, E with D, S with F.
 */
import { FACES, type Face } from "./faces";

/** Everything that can be turned, outer layers first. */
export const TURN_LAYERS = [
  "U",
  "R",
  "F",
  "D",
  "L",
  "B",
  "Uw",
  "Rw",
  "Fw",
  "Dw",
  "Lw",
  "Bw",
  "M",
  "E",
  "S",
  "x",
  "y",
  "z",
] as const;

export type TurnLayer = (typeof TURN_LAYERS)[number];

/** Quarter turns clockwise: 1, 2, or 3 for one counter-clockwise. */
export type Quarters = 1 | 2 | 3;

/** One turn, in the frame of the learner who makes it. */
export interface Turn {
  readonly layer: TurnLayer;
  readonly quarters: Quarters;
}

/** A whole-cube turn's axis. */
export type Axis = "x" | "y" | "z";

/** How a turn is made of outer layers and a turn of the whole cube. */
export interface TurnParts {
  /** The whole-cube part, made first: an axis and quarters (0–3). */
  readonly axis: Axis;
  readonly rotationQuarters: number;
  /** Outer layers turned, with quarters (1–3) seen from that face. */
  readonly faces: readonly (readonly [face: Face, quarters: Quarters])[];
}

interface LayerParts {
  readonly axis: Axis;
  readonly rotation: -1 | 0 | 1;
  readonly faces: readonly (readonly [Face, 1 | -1])[];
}

// M = x' R L', E = y' U D', S = z F' B, Rw = x L (computed; `check-values`).
const LAYER_PARTS: Readonly<Record<TurnLayer, LayerParts>> = {
  U: { axis: "y", rotation: 0, faces: [["U", 1]] },
  R: { axis: "x", rotation: 0, faces: [["R", 1]] },
  F: { axis: "z", rotation: 0, faces: [["F", 1]] },
  D: { axis: "y", rotation: 0, faces: [["D", 1]] },
  L: { axis: "x", rotation: 0, faces: [["L", 1]] },
  B: { axis: "z", rotation: 0, faces: [["B", 1]] },
  Uw: { axis: "y", rotation: 1, faces: [["D", 1]] },
  Rw: { axis: "x", rotation: 1, faces: [["L", 1]] },
  Fw: { axis: "z", rotation: 1, faces: [["B", 1]] },
  Dw: { axis: "y", rotation: -1, faces: [["U", 1]] },
  Lw: { axis: "x", rotation: -1, faces: [["R", 1]] },
  Bw: { axis: "z", rotation: -1, faces: [["F", 1]] },
  M: {
    axis: "x",
    rotation: -1,
    faces: [
      ["R", 1],
      ["L", -1],
    ],
  },
  E: {
    axis: "y",
    rotation: -1,
    faces: [
      ["U", 1],
      ["D", -1],
    ],
  },
  S: {
    axis: "z",
    rotation: 1,
    faces: [
      ["F", -1],
      ["B", 1],
    ],
  },
  x: { axis: "x", rotation: 1, faces: [] },
  y: { axis: "y", rotation: 1, faces: [] },
  z: { axis: "z", rotation: 1, faces: [] },
};

function quartersOf(n: number): Quarters {
  return (((n % 4) + 4) % 4) as Quarters;
}

/** A turn taken apart into a whole-cube turn and turns of outer layers. */
export function turnParts(turn: Turn): TurnParts {
  const parts = LAYER_PARTS[turn.layer];
  return {
    axis: parts.axis,
    rotationQuarters: (parts.rotation * turn.quarters + 4) % 4,
    faces: parts.faces.map(([face, sign]) => [
      face,
      quartersOf(sign * turn.quarters),
    ]),
  };
}

/** The axis a turn turns about. */
export function turnAxis(turn: Turn): Axis {
  return LAYER_PARTS[turn.layer].axis;
}

/** Whether a turn moves the whole cube and nothing else. */
export function isWholeCubeTurn(turn: Turn): boolean {
  return LAYER_PARTS[turn.layer].faces.length === 0;
}

/** Whether a turn moves a middle slice and nothing else. */
export function isSliceTurn(turn: Turn): boolean {
  return LAYER_PARTS[turn.layer].faces.length === 2;
}

/** Whether a turn moves one outer layer. */
export function isFaceTurn(
  turn: Turn,
): turn is Turn & { readonly layer: Face } {
  return (FACES as readonly string[]).includes(turn.layer);
}

/** The turn that takes a turn back. */
export function inverseTurn(turn: Turn): Turn {
  return { layer: turn.layer, quarters: quartersOf(-turn.quarters) };
}
