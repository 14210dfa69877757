/**
 * What a case search is to reach: some pieces placed, others only turned or
 * only brought home, and how the free layer is turned does not matter.
 *
 * One form serves all stages: a pair is two pieces placed and the others kept;
 * turning the last layer is its pieces turned and the first two layers kept.
 */
import {
  CORNER_FACES,
  CORNERS,
  EDGE_FACES,
  EDGES,
  ORIENTATIONS,
  type Pieces,
} from "../cube/pieces";
import { compose, type PartlyKnownCubies } from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import { present } from "../invariant";
import { FREE_LAYER } from "./stage";

/**
 * A goal in the body frame.
 *
 * Shape: no piece is in two of the three; a piece in none may end anywhere.
 *        The goal is reached if it is after some turn of the free layer.
 */
export interface CaseGoal {
  /** At home, every sticker matching its centre. */
  readonly placed: Pieces;
  /** Anywhere in the free layer, the piece's sticker of that layer facing as the layer does. */
  readonly turned?: Pieces;
  /** At home, however turned. */
  readonly homed?: Pieces;
}

/** A piece and what is asked of it. */
export interface AskedPiece {
  readonly kind: "corner" | "edge";
  readonly piece: number;
  readonly demand: keyof CaseGoal;
}

const DEMANDS = ["placed", "turned", "homed"] as const;

/** The pieces that a goal names: edges first, each kind ascending. */
export function askedPieces(goal: CaseGoal): readonly AskedPiece[] {
  return (["edge", "corner"] as const).flatMap((kind) =>
    DEMANDS.flatMap((demand) => {
      const pieces = goal[demand];
      const ofKind = kind === "corner" ? pieces?.corners : pieces?.edges;
      return (ofKind ?? []).map((piece) => ({ kind, piece, demand }));
    }).toSorted((a, b) => a.piece - b.piece),
  );
}

/** How many quarter turns of the free layer a state or a way may have more or less. */
export const FREE_QUARTERS = [0, 1, 2, 3] as const;

/** A state after quarter turns of the free layer, 0–3. */
export function afterFreeQuarters<State extends PartlyKnownCubies>(
  state: State,
  quarters: number,
): State {
  return quarters === 0
    ? state
    : compose(
        state,
        present(
          FACE_TURNS[faceTurnIndex(FREE_LAYER, quarters)],
          "every face turns",
        ),
      );
}

const FACES_OF = { corner: CORNER_FACES, edge: EDGE_FACES } as const;

/** The slots in which a piece is as it should be, the free layer not turned. Shape: slots as in `piece-slots.ts`. */
export function slotsWanted({
  kind,
  piece,
  demand,
}: AskedPiece): readonly number[] {
  const radix = ORIENTATIONS[kind];
  switch (demand) {
    case "placed":
      return [piece * radix];
    case "homed":
      return Array.from({ length: radix }, (_, o) => piece * radix + o);
    case "turned":
      return FACES_OF[kind].flatMap((faces, position) =>
        faces.includes(FREE_LAYER) ? [position * radix] : [],
      );
  }
}

/** Where a piece is in a state; undefined where that is not known. */
export function slotOf(
  state: PartlyKnownCubies,
  { kind, piece }: Pick<AskedPiece, "kind" | "piece">,
): number | undefined {
  const [permutation, orientation] =
    kind === "corner"
      ? [state.cornerPermutation, state.cornerOrientation]
      : [state.edgePermutation, state.edgeOrientation];
  const position = permutation.indexOf(piece);
  return position < 0
    ? undefined
    : position * ORIENTATIONS[kind] + (orientation[position] ?? 0);
}

function isMet(state: PartlyKnownCubies, one: AskedPiece): boolean {
  const slot = slotOf(state, one);
  return slot !== undefined && slotsWanted(one).includes(slot);
}

/** The pieces that are not as a goal asks for them, the free layer as it is. */
export function piecesUnmet(state: PartlyKnownCubies, goal: CaseGoal): Pieces {
  const unmet = askedPieces(goal).filter((one) => !isMet(state, one));
  const ofKind = <Piece extends number>(
    kind: AskedPiece["kind"],
    all: readonly Piece[],
  ) =>
    all.filter((piece) =>
      unmet.some((one) => one.kind === kind && one.piece === piece),
    );
  return { corners: ofKind("corner", CORNERS), edges: ofKind("edge", EDGES) };
}

/** How many quarter turns of the free layer bring all to where the goal asks for it: 0–3, the least; undefined where none do. */
export function quartersToGoal(
  state: PartlyKnownCubies,
  goal: CaseGoal,
): number | undefined {
  const asked = askedPieces(goal);
  return FREE_QUARTERS.find((quarters) => {
    const turned = afterFreeQuarters(state, quarters);
    return asked.every((one) => isMet(turned, one));
  });
}
