/**
 * Where the pieces to bring home of a first-layer case are: in the reference frame as the tables say
 * it, and in the body frame as a variant turns it.
 */
import { compose, type PartlyKnownCubies, UNKNOWN } from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import {
  type Corner,
  corner,
  CORNER_FACES,
  CORNERS,
  type Edge,
  edge,
  EDGE_FACES,
  EDGES,
} from "../cube/pieces";
import { conjugate } from "../cube/symmetries";
import { invariant, present } from "../invariant";
import type { FirstLayerId } from "./case-ids";
import { CORNER_SWAP_ROWS } from "./corner-swaps";
import { FIRST_LAYER_CORNER_ROWS } from "./first-layer-corners";
import { FIRST_LAYER_EDGE_ROWS } from "./first-layer-edges";
import {
  cornerOfHome,
  edgeOfHome,
  FREE_LAYER,
  homeAfter,
  homeOfCorner,
  homeOfEdge,
  rotationToHome,
} from "./stage";
import type { HomeIndex, Variant } from "./variant";

/** A piece to bring home, where it sits, and how it is turned; absent: in any way. */
export interface PieceSituation<Piece extends Corner | Edge> {
  readonly piece: Piece;
  readonly position: Piece;
  readonly orientation?: number;
}

/** Where the pieces to bring home are; the piece of the variant's home first. */
export interface Situation {
  readonly corners: readonly PieceSituation<Corner>[];
  readonly edges: readonly PieceSituation<Edge>[];
}

function referenceSituation(id: FirstLayerId): Situation {
  const edgeRow = FIRST_LAYER_EDGE_ROWS.find((row) => row.id === id);
  if (edgeRow !== undefined) {
    const position = edge(edgeRow.where.at);
    const faces = present(EDGE_FACES[position], "edges are below 12");
    // The sticker of the first colour is the piece's first one.
    const orientation = faces.indexOf(edgeRow.where.facing);
    invariant(orientation >= 0, "a piece faces where it has a sticker");
    return {
      corners: [],
      edges: [{ piece: edgeOfHome(0), position, orientation }],
    };
  }
  const cornerRow = FIRST_LAYER_CORNER_ROWS.find((row) => row.id === id);
  if (cornerRow !== undefined) {
    const position = corner(cornerRow.where.at);
    const faces = present(CORNER_FACES[position], "corners are below 8");
    const orientation = faces.indexOf(cornerRow.where.facing);
    invariant(orientation >= 0, "a piece faces where it has a sticker");
    return {
      corners: [{ piece: cornerOfHome(0), position, orientation }],
      edges: [],
    };
  }
  const swapRow = CORNER_SWAP_ROWS.find((row) => row.id === id);
  const here = cornerOfHome(0);
  const there = cornerOfHome(
    present(swapRow, "every id is in one of the tables").where.partner,
  );
  return {
    corners: [
      { piece: here, position: there },
      { piece: there, position: here },
    ],
    edges: [],
  };
}

/** Where the pieces to bring home are, in the reference frame: home 0, lined up. */
export function situationOf(id: FirstLayerId): Situation {
  return referenceSituation(id);
}

/** A state in which only the pieces of a situation are known; untold orientations read 0. */
function stateOfSituation(situation: Situation): PartlyKnownCubies {
  const state = {
    cornerPermutation: new Uint8Array(8).fill(UNKNOWN),
    cornerOrientation: new Uint8Array(8).fill(UNKNOWN),
    edgePermutation: new Uint8Array(12).fill(UNKNOWN),
    edgeOrientation: new Uint8Array(12).fill(UNKNOWN),
  };
  for (const { piece, position, orientation } of situation.corners) {
    state.cornerPermutation[position] = piece;
    state.cornerOrientation[position] = orientation ?? 0;
  }
  for (const { piece, position, orientation } of situation.edges) {
    state.edgePermutation[position] = piece;
    state.edgeOrientation[position] = orientation ?? 0;
  }
  return state;
}

/** Where the pieces to bring home are in the body frame, as a variant has it. */
export function situationIn(
  id: FirstLayerId,
  variant: Pick<Variant, "home" | "turnedAway">,
): Situation {
  const reference = referenceSituation(id);
  const toHome = rotationToHome(variant.home);
  let state = conjugate(stateOfSituation(reference), toHome);
  for (let i = 0; i < variant.turnedAway; i++)
    state = compose(
      state,
      present(
        FACE_TURNS[faceTurnIndex(FREE_LAYER, 1)],
        "every face has a quarter turn",
      ),
    );
  const corners = reference.corners.map(({ piece, orientation }) => {
    const home = present(homeOfCorner(piece), "targets are of the first layer");
    const moved = cornerOfHome(homeAfter(home, variant.home));
    const position = state.cornerPermutation.indexOf(moved);
    return {
      piece: moved,
      position: present(CORNERS[position], "turning loses no piece"),
      ...turned(orientation, state.cornerOrientation[position]),
    };
  });
  const edges = reference.edges.map(({ piece, orientation }) => {
    const home = present(homeOfEdge(piece), "targets are of the first layer");
    const moved = edgeOfHome(homeAfter(home, variant.home));
    const position = state.edgePermutation.indexOf(moved);
    return {
      piece: moved,
      position: present(EDGES[position], "turning loses no piece"),
      ...turned(orientation, state.edgeOrientation[position]),
    };
  });
  return { corners, edges };
}

function turned(
  told: number | undefined,
  now: number | undefined,
): { readonly orientation?: number } {
  return told === undefined || now === undefined ? {} : { orientation: now };
}

/** Whether a case's piece lies in the free layer. */
export function isSituationInFreeLayer(id: FirstLayerId): boolean {
  const { corners, edges } = referenceSituation(id);
  return (
    corners.some(({ position }) => isFreeLayerPlace(CORNER_FACES[position])) ||
    edges.some(({ position }) => isFreeLayerPlace(EDGE_FACES[position]))
  );
}

function isFreeLayerPlace(faces: readonly string[] | undefined): boolean {
  return faces?.includes(FREE_LAYER) ?? false;
}

/** The homes, in the reference frame, that a case's own pieces stand in and so keep from being placed; its own home among them. */
export function homesTakenUp(id: FirstLayerId): readonly HomeIndex[] {
  const { corners, edges } = referenceSituation(id);
  const homes: readonly (HomeIndex | undefined)[] = [
    0,
    ...corners.map(({ position }) => homeOfCorner(position)),
    ...edges.map(({ position }) => homeOfEdge(position)),
  ];
  return [...new Set(homes.filter((home) => home !== undefined))].toSorted();
}
