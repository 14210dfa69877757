/**
 * Which pieces of the last layer change places, for the arrows of a picture.
 *
 * A turn of the layer at the end is free, so four sets of moves mean the same.
 * The one that is easiest to read is taken: the most pieces stay, then the
 * longest round is the shortest (two rounds of three rather than an exchange
 * and a round of four), then the most corners stay.
 */
import { FREE_QUARTERS } from "./case-goal";
import type { PartlyKnownCubies } from "../cube/cubies";
import {
  CORNER_FACELETS,
  EDGE_FACELETS,
  faceletFace,
  viewFacelet,
} from "../cube/facelets";
import type { HeldCube } from "../cube/held-cube";
import { present } from "../invariant";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
  lookIn,
} from "./last-layer-look";
import type { LastLayerStage } from "./last-layer-stages";
import { lastLayerSeen } from "./stickers-that-matter";
import { FREE_LAYER } from "./stage";

/**
 * A piece's move from where it is to where it belongs among the others.
 *
 * Shape: the facelets of both places on the last layer's own face, as the
 *        holder sees them.
 */
export interface PieceMove {
  readonly from: number;
  readonly to: number;
}

/** For each of four places, where its piece belongs before a last turn of the layer. */
function targetsBefore(places: string, quarters: number): readonly number[] {
  return Array.from(places, (home) => (Number(home) + 4 - quarters) % 4);
}

function staying(targets: readonly number[]): number {
  return targets.filter((target, place) => target === place).length;
}

function longestRound(targets: readonly number[]): number {
  const lengths = targets.map((_, start) => {
    let length = 1;
    for (let at = targets[start]; at !== start; length++)
      at = present(targets[at ?? -1], "places follow one another in rounds");
    return length;
  });
  return Math.max(0, ...lengths);
}

/** The facelet of a place that lies on the last layer's own face. */
function topFacelet(facelets: readonly number[] | undefined): number {
  return present(
    facelets?.find((facelet) => faceletFace(facelet) === FREE_LAYER),
    "the last layer's places have a facelet on its face",
  );
}

/**
 * The moves of a stage of the last layer: none where it does not ask about
 * places, and none for a piece that stays.
 *
 * Shape: `cube` with its first two layers placed and its last layer known.
 */
export function lastLayerMoves(
  stage: LastLayerStage,
  { cubies, hold }: HeldCube<PartlyKnownCubies>,
): readonly PieceMove[] {
  const seen = lastLayerSeen(stage);
  const { cornerPlaces, edgePlaces } = lookIn(cubies);
  const readings = FREE_QUARTERS.map((quarters) => {
    const corners =
      seen.corners === "all" ? targetsBefore(cornerPlaces, quarters) : [];
    const edges =
      seen.edges === "all" ? targetsBefore(edgePlaces, quarters) : [];
    return {
      corners,
      edges,
      stay: staying(corners) + staying(edges),
      longest: Math.max(longestRound(corners), longestRound(edges)),
      cornersStay: staying(corners),
    };
  });
  const [best] = readings.toSorted(
    (a, b) =>
      b.stay - a.stay || a.longest - b.longest || b.cornersStay - a.cornersStay,
  );
  const movesOf = (
    targets: readonly number[],
    places: readonly number[],
    table: readonly (readonly number[])[],
  ): readonly PieceMove[] => {
    const facelets = places.map((place) =>
      viewFacelet(hold, topFacelet(table[place])),
    );
    return targets.flatMap((target, place) =>
      target === place
        ? []
        : [
            {
              from: present(facelets[place], "there are four places"),
              to: present(facelets[target], "there are four places"),
            },
          ],
    );
  };
  return [
    ...movesOf(best?.corners ?? [], LAST_LAYER_CORNERS, CORNER_FACELETS),
    ...movesOf(best?.edges ?? [], LAST_LAYER_EDGES, EDGE_FACELETS),
  ];
}
