import { type Corner, corner, type Edge, edge } from "../cube/pieces";
import {
  cornerImage,
  edgeImage,
  type Rotation,
  rotationAbout,
} from "../cube/symmetries";
import { present } from "../invariant";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** The stages of the solve that this version teaches, in the order they are learnt. */
export const STAGES = ["first-layer-edges", "first-layer-corners"] as const;

export type Stage = (typeof STAGES)[number];

/** The face of the first layer in the body frame. */
export const FIRST_LAYER_FACE = "U";

/**
 * The layer that both stages leave free, in the body frame: the one across
 * from the first layer.
 */
export const FREE_LAYER = "D";

/** The turn of the whole cube that takes the reference home to another one. */
export function rotationToHome(home: HomeIndex): Rotation {
  return rotationAbout("y", home);
}

/** The edge that belongs in a home; home 0 is the reference, UF. */
export function edgeOfHome(home: HomeIndex): Edge {
  return edgeImage(rotationToHome(home), edge("UF"));
}

/** The corner that belongs in a home; home 0 is the reference, URF. */
export function cornerOfHome(home: HomeIndex): Corner {
  return cornerImage(rotationToHome(home), corner("URF"));
}

/** The four edges of the first layer, in the order of homes. */
export const FIRST_LAYER_EDGES: readonly Edge[] = HOME_INDICES.map(edgeOfHome);

/** The four corners of the first layer, in the order of homes. */
export const FIRST_LAYER_CORNERS: readonly Corner[] =
  HOME_INDICES.map(cornerOfHome);

/** The home of a first-layer edge, or undefined for any other edge. */
export function homeOfEdge(piece: Edge): HomeIndex | undefined {
  return HOME_INDICES.find((home) => edgeOfHome(home) === piece);
}

/** The home of a first-layer corner, or undefined for any other corner. */
export function homeOfCorner(piece: Corner): HomeIndex | undefined {
  return HOME_INDICES.find((home) => cornerOfHome(home) === piece);
}

/** A home counted on from another, around the cube; `steps` may be negative. */
export function homeAfter(home: HomeIndex, steps: number): HomeIndex {
  const index = (((home + steps) % 4) + 4) % 4;
  return present(HOME_INDICES[index], "there are four homes");
}
