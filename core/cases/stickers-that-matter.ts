/**
 * Which stickers a stage looks at: those that a picture shows while a case is
 * being learnt, everything else being bare plastic.
 *
 * One rule for every stage of the last layer: of a kind of piece whose places
 * are told, every sticker; of a kind that is only told by how it is turned,
 * the stickers of the last layer's colour; of the rest, none. The first two
 * layers are shown as they are, for they are what the answer has to keep. Of
 * a slot's stage the pieces to bring home matter, and both their homes.
 */
import type { PartlyKnownCubies } from "../cube/cubies";
import {
  CORNER_FACELETS,
  EDGE_FACELETS,
  stickersOf,
  viewFacelet,
} from "../cube/facelets";
import type { Face } from "../cube/faces";
import type { HeldCube } from "../cube/held-cube";
import type { Corner, Edge } from "../cube/pieces";
import { present } from "../invariant";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
  type LookPart,
} from "./last-layer-look";
import {
  LAST_LAYER_RULES,
  type LastLayerRule,
  type LastLayerStage,
} from "./last-layer-stages";
import { piecesOfSlot } from "./slot-stages";
import { FREE_LAYER, type SlotStage } from "./stage";
import type { HomeIndex } from "./variant";

/** Which stickers of a piece are looked at. */
export type StickersSeen = "all" | "last-colour" | "none";

/** Which stickers of the last layer's corners and edges a stage looks at. */
export interface LastLayerSeen {
  readonly corners: StickersSeen;
  readonly edges: StickersSeen;
}

/** Which stickers of the last layer a stage looks at. */
export function lastLayerSeen(stage: LastLayerStage): LastLayerSeen {
  const { done, asks }: LastLayerRule = LAST_LAYER_RULES[stage];
  const seen = (places: LookPart, turns: LookPart): StickersSeen => {
    const isTold = (part: LookPart) =>
      done.includes(part) || asks.includes(part);
    if (isTold(places)) return "all";
    return isTold(turns) ? "last-colour" : "none";
  };
  return {
    corners: seen("cornerPlaces", "cornerTwists"),
    edges: seen("edgePlaces", "edgeFlips"),
  };
}

/** The facelets of the last layer's places as a holder sees them, by kind. */
function lastLayerFacelets({ hold }: HeldCube<PartlyKnownCubies>): {
  readonly corners: readonly number[];
  readonly edges: readonly number[];
} {
  const seenAt = (
    places: readonly number[],
    table: readonly (readonly number[])[],
  ) =>
    places.flatMap((place) =>
      present(table[place], "places are in range").map((facelet) =>
        viewFacelet(hold, facelet),
      ),
    );
  return {
    corners: seenAt(LAST_LAYER_CORNERS, CORNER_FACELETS),
    edges: seenAt(LAST_LAYER_EDGES, EDGE_FACELETS),
  };
}

/**
 * The facelets of the last layer that carry what a stage looks at, as the
 * holder sees them: a picture that asks the case has to show every one.
 *
 * Shape: `cube` with its first two layers placed and its last layer known.
 */
export function lastLayerTellingFacelets(
  stage: LastLayerStage,
  cube: HeldCube<PartlyKnownCubies>,
): readonly number[] {
  const stickers = stickersOf(cube);
  const facelets = lastLayerFacelets(cube);
  const seen = lastLayerSeen(stage);
  const telling = (kind: "corners" | "edges") =>
    facelets[kind].filter(
      (facelet) =>
        seen[kind] === "all" ||
        (seen[kind] === "last-colour" && stickers[facelet] === FREE_LAYER),
    );
  return [...telling("corners"), ...telling("edges")];
}

/**
 * What each facelet carries where a stage of the last layer is learnt, as the
 * holder sees it; undefined for bare plastic. A piece keeps its stickers
 * wherever it goes, so that nothing changes colour while layers turn.
 *
 * Shape: 54 entries, as `stickersOf` gives them.
 */
export function lastLayerStickers(
  stage: LastLayerStage,
  cube: HeldCube<PartlyKnownCubies>,
): readonly (Face | undefined)[] {
  const { cubies, hold } = cube;
  const seen = lastLayerSeen(stage);
  const stickers = [...stickersOf(cube)];
  const strip = (
    facelets: readonly (readonly number[])[],
    permutation: ArrayLike<number>,
    own: readonly number[],
    shows: StickersSeen,
  ) => {
    if (shows === "all") return;
    facelets.forEach((places, position) => {
      if (!own.includes(permutation[position] ?? NaN)) return;
      for (const facelet of places.map((place) => viewFacelet(hold, place)))
        if (shows === "none" || stickers[facelet] !== FREE_LAYER)
          stickers[facelet] = undefined;
    });
  };
  strip(
    CORNER_FACELETS,
    cubies.cornerPermutation,
    LAST_LAYER_CORNERS,
    seen.corners,
  );
  strip(EDGE_FACELETS, cubies.edgePermutation, LAST_LAYER_EDGES, seen.edges);
  return stickers;
}

/** Where the pieces of a slot are and where they belong, as the holder sees it. */
export interface SlotFacelets {
  /** The facelets of each piece to bring home that is known, the corner's first. */
  readonly pieces: readonly (readonly number[])[];
  /** The facelets of the homes of all of them. */
  readonly homes: readonly number[];
}

/** The facelets that a slot's stage is about, for the slot to fill. */
export function slotFacelets(
  stage: SlotStage,
  slot: HomeIndex,
  { cubies, hold }: HeldCube<PartlyKnownCubies>,
): SlotFacelets {
  const { corners, edges } = piecesOfSlot(stage, slot);
  const placeOf = (
    table: readonly (readonly number[])[],
    position: number,
  ): readonly number[] =>
    (table[position] ?? []).map((facelet) => viewFacelet(hold, facelet));
  const cornerAt = (piece: Corner) =>
    placeOf(CORNER_FACELETS, cubies.cornerPermutation.indexOf(piece));
  const edgeAt = (piece: Edge) =>
    placeOf(EDGE_FACELETS, cubies.edgePermutation.indexOf(piece));
  return {
    pieces: [...corners.map(cornerAt), ...edges.map(edgeAt)].filter(
      (facelets) => facelets.length > 0,
    ),
    homes: [
      ...corners.flatMap((home) => placeOf(CORNER_FACELETS, home)),
      ...edges.flatMap((home) => placeOf(EDGE_FACELETS, home)),
    ],
  };
}
