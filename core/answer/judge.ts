/**
 * Whether an answer is right, and for a miss what the cube shows now.
 *
 * Right: the case's goal is reached after some turn of the free layer. Below
 * the last layer that is: every piece to bring home is placed and every marked
 * home still holds its piece. In the last layer: what the stage asks is done,
 * and so is still all that it keeps of the layer and below. Pieces are counted against their centres, so how
 * the whole cube is held does not matter.
 */
import { compose, type PartlyKnownCubies } from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import type { Face } from "../cube/faces";
import type { HeldCube } from "../cube/held-cube";
import {
  type Corner,
  CORNER_FACES,
  type Edge,
  EDGE_FACES,
  type Pieces,
} from "../cube/pieces";
import type { Quarters } from "../cube/turns";
import { present } from "../invariant";
import type { CaseId } from "../cases/case-ids";
import { caseEntry } from "../cases/case-table";
import { type CaseGoal, quartersToGoal } from "../cases/case-goal";
import { goalOf, placedBefore } from "../cases/constraint";
import type { Position } from "../cases/position";
import { recognise } from "../cases/recognise";
import { isCrossPlaced, recogniseSwap } from "../cases/recognise-first-layer";
import { arePlaced } from "../cases/recognise-slot";
import { FIRST_LAYER_FACE, homeOfCorner, homeOfEdge } from "../cases/stage";
import { unmetIn } from "./unmet";

const QUARTERS = [1, 2, 3] as const satisfies readonly Quarters[];

/**
 * How a piece to bring home stands after an answer. "up-but-wrong-side-colours":
 * in the first layer with its first colour outward, but in another home;
 * "elsewhere" includes a piece that is not known.
 */
export type PieceState =
  "placed" | "home-but-turned" | "up-but-wrong-side-colours" | "elsewhere";

/** What the judge found. */
export type Verdict = RightVerdict | MissVerdict;

/** Every piece to bring home is as asked, and nothing else was lost. */
export interface RightVerdict {
  readonly right: true;
}

/** Why an answer is not right. */
export interface MissVerdict {
  readonly right: false;
  /** The first piece to bring home that is not placed; "placed" where others were lost and nothing else. */
  readonly pieceState: PieceState;
  /** Pieces that were right before the answer and no longer are: marked ones, and those of the last layer that the stage keeps. */
  readonly lost: Pieces;
  /** Pieces to bring home that are not as asked. Never empty where `lost` is. */
  readonly missing: Pieces;
  /** The case that the first missing piece shows now, if the stage's constraint still holds. */
  readonly now?: CaseId;
  /**
   * Set where the answer would be right but for the first layer as a whole:
   * the turns of body face U that bring it back to its centres.
   */
  readonly layerTurned?: Quarters;
}

/**
 * Judges the cube after an answer.
 *
 * Shape: `after` may be partly known; a piece that is not known is not placed.
 */
export function judge(
  position: Position,
  after: HeldCube<PartlyKnownCubies>,
): Verdict {
  const goal = goalOf(position);
  if (quartersToGoal(after.cubies, goal) !== undefined) return { right: true };
  const { linedUp, missing, lost } = unmetIn(position, after.cubies);
  const now = caseNow(position, after.cubies, missing);
  const layerTurned = quartersOff(after.cubies, lost, goal);
  return {
    right: false,
    pieceState: pieceStateNow(linedUp, missing),
    lost,
    missing,
    ...(now === undefined ? {} : { now }),
    ...(layerTurned === undefined ? {} : { layerTurned }),
  };
}

/** Whether the position is answered on this cube: what ends an answer on the screen. */
export function isAnswered(
  position: Position,
  cube: HeldCube<PartlyKnownCubies>,
): boolean {
  return quartersToGoal(cube.cubies, goalOf(position)) !== undefined;
}

function isEmpty({ corners, edges }: Pieces): boolean {
  return corners.length === 0 && edges.length === 0;
}

function stateOfPiece(
  piece: Corner | Edge,
  permutation: Uint8Array,
  orientation: Uint8Array,
  faces: readonly (readonly Face[])[],
): PieceState {
  const position = permutation.indexOf(piece);
  const turned = orientation[position];
  if (turned === undefined) return "elsewhere";
  if (position === piece) return "home-but-turned";
  // The sticker of the first colour is a first-layer piece's first one.
  return faces[position]?.[turned] === FIRST_LAYER_FACE
    ? "up-but-wrong-side-colours"
    : "elsewhere";
}

function pieceStateNow(state: PartlyKnownCubies, missing: Pieces): PieceState {
  const [corner] = missing.corners;
  if (corner !== undefined)
    return stateOfPiece(
      corner,
      state.cornerPermutation,
      state.cornerOrientation,
      CORNER_FACES,
    );
  const [edge] = missing.edges;
  if (edge !== undefined)
    return stateOfPiece(
      edge,
      state.edgePermutation,
      state.edgeOrientation,
      EDGE_FACES,
    );
  return "placed";
}

function caseNow(
  position: Position,
  state: PartlyKnownCubies,
  missing: Pieces,
): CaseId | undefined {
  const { stage, group } = caseEntry(position.case);
  const { home } = position.variant;
  if (group !== "first-layer")
    return arePlaced(state, placedBefore(stage))
      ? recognise(state, stage, home)?.case
      : undefined;
  if (stage === "first-layer-corners" && !isCrossPlaced(state))
    return undefined;
  const swap = recogniseSwap(state, home);
  if (swap === position.case) return swap;
  const [missingHome] = [
    ...missing.corners.map(homeOfCorner),
    ...missing.edges.map(homeOfEdge),
  ];
  return missingHome === undefined
    ? undefined
    : recognise(state, stage, missingHome)?.case;
}

/** The turns of the first layer that would make the answer right; with nothing marked there is no layer to speak of. */
function quartersOff(
  state: PartlyKnownCubies,
  lost: Pieces,
  goal: CaseGoal,
): Quarters | undefined {
  if (isEmpty(lost)) return undefined;
  return QUARTERS.find((quarters) => {
    const turn = FACE_TURNS[faceTurnIndex(FIRST_LAYER_FACE, quarters)];
    const turned = compose(state, present(turn, "every face can be turned"));
    return quartersToGoal(turned, goal) !== undefined;
  });
}
