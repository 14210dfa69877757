/**
 * What the words of every stage depend on: the learner's own colour names.
 *
 * One interface for the whole solve, wider than that of the first layer, so
 * that a window makes it once and hands it to whatever names a case.
 */
import type { Face } from "../cube/faces";
import { bodyFace } from "../cube/held-cube";
import type { Rotation } from "../cube/symmetries";
import type { ColourNames } from "../notation/place-words";
import type { CaseNaming } from "./first-layer-words";
import { FIRST_LAYER_FACE, FREE_LAYER } from "./stage";
import type { Hold } from "./variant";

/** A side of the cube that is neither top nor bottom. */
export type UprightSide = Exclude<Face, "U" | "D">;

/**
 * What the names of stages and cases depend on. `hold` is how the learner
 * holds the first layer while it is made; every later stage is held with the
 * last layer on top, whatever it says.
 */
export interface WholeCubeNaming extends CaseNaming {
  /** The learner's name for the last layer's colour, across from the first: "yellow". */
  readonly last: string;
  /**
   * The colours of the centres around the cube as the learner sees them. Left
   * out where the words must hold for every slot: a colour is then named by
   * the side where it belongs, "front colour".
   */
  readonly sides?: Readonly<Record<UprightSide, string>>;
}

/**
 * The naming for a learner's colours.
 *
 * Shape: `colours` by the faces of the body, the first layer at U; `seenBy` is
 *        how the cube is held, where its sides are to be named by colour.
 */
export function wholeCubeNaming(
  colours: ColourNames,
  hold: Hold,
  seenBy?: Rotation,
): WholeCubeNaming {
  const naming = {
    first: colours[FIRST_LAYER_FACE],
    last: colours[FREE_LAYER],
    hold,
  };
  if (seenBy === undefined) return naming;
  const colourAt = (view: UprightSide) => colours[bodyFace(seenBy, view)];
  return {
    ...naming,
    sides: {
      F: colourAt("F"),
      R: colourAt("R"),
      B: colourAt("B"),
      L: colourAt("L"),
    },
  };
}
