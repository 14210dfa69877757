/** What the stickers of the last layer show in a look, for comparing looks. */
import type { Face } from "../cube/faces";
import { CORNER_FACES, EDGE_FACES } from "../cube/pieces";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
  SOLVED_LOOK,
} from "./last-layer-look";
import type { SeenLook } from "./last-layer-orbits";
import type { LastLayerStage } from "./last-layer-stages";
import { FREE_LAYER } from "./stage";
import { lastLayerSeen, type StickersSeen } from "./stickers-that-matter";

function coloursOf(
  faces: readonly Face[] | undefined,
  orientation: number,
  seen: StickersSeen,
): (Face | undefined)[] {
  const own = faces ?? [];
  return own.map((_, k) => {
    const colour = own[(k + own.length - orientation) % own.length];
    if (seen === "all") return colour;
    return seen === "last-colour" && colour === FREE_LAYER ? colour : undefined;
  });
}

/**
 * The colour of every sticker of the last layer in a look, undefined for those
 * that the stage does not look at.
 *
 * Shape: 20, place by place in the order of a look's digits, the corners'
 *        first.
 */
export function lookColours(
  stage: LastLayerStage,
  look: SeenLook,
): readonly (Face | undefined)[] {
  const { cornerTwists, edgeFlips, cornerPlaces, edgePlaces } = {
    ...SOLVED_LOOK,
    ...look,
  };
  const seen = lastLayerSeen(stage);
  const corners = LAST_LAYER_CORNERS.flatMap((_, i) => {
    const piece = LAST_LAYER_CORNERS[Number(cornerPlaces[i])];
    const faces = piece === undefined ? undefined : CORNER_FACES[piece];
    return coloursOf(faces, Number(cornerTwists[i]), seen.corners);
  });
  const edges = LAST_LAYER_EDGES.flatMap((_, i) => {
    const piece = LAST_LAYER_EDGES[Number(edgePlaces[i])];
    const faces = piece === undefined ? undefined : EDGE_FACES[piece];
    return coloursOf(faces, Number(edgeFlips[i]), seen.edges);
  });
  return [...corners, ...edges];
}

/** In how many places two lists of colours differ. */
export function stickersThatDiffer(
  mine: readonly (Face | undefined)[],
  theirs: readonly (Face | undefined)[],
): number {
  return mine.filter((colour, i) => colour !== theirs[i]).length;
}
