/** What is said of pieces that were right before an answer in the last layer and no longer are. */
import { caseEntry } from "../../../core/cases/case-table";
import { demandOf } from "../../../core/cases/last-layer-goal";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
} from "../../../core/cases/last-layer-look";
import type { Position } from "../../../core/cases/position";
import { isLastLayerStage } from "../../../core/cases/stage";
import type { Pieces } from "../../../core/cube/pieces";
import { capitalised, listInWords } from "../../../core/notation/sentence";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { CubePiece } from "./own-cube";
import { pieceInWords, piecesOf } from "./prompt-words";
import type { VerdictWords } from "./right-words";

/** More pieces than this are counted, not named. */
const PIECES_LISTED = 4;

/** Lost pieces told apart: those of the last layer, which are all of one kind, and those below. */
export interface LostParts {
  readonly top: readonly CubePiece[];
  readonly below: readonly CubePiece[];
}

/** The lost pieces of the last layer, and those below. */
export function lostParts(lost: Pieces): LostParts {
  const isTop = ({ kind, piece }: CubePiece) =>
    kind === "corner"
      ? LAST_LAYER_CORNERS.some((one) => one === piece)
      : LAST_LAYER_EDGES.some((one) => one === piece);
  const pieces = piecesOf(lost);
  return {
    top: pieces.filter(isTop),
    below: pieces.filter((piece) => !isTop(piece)),
  };
}

/** Whether a stage had a kind of piece only turned, not home. */
function isOnlyTurned({ case: id }: Position, kind: CubePiece["kind"]) {
  const { stage } = caseEntry(id);
  return isLastLayerStage(stage) && demandOf(stage, kind) === "turned";
}

/** "3 top edges that were home are not any more". */
function topLostInWords(
  position: Position,
  kind: CubePiece["kind"],
  count: number,
  scheme: ColourScheme,
): string {
  const isTurned = isOnlyTurned(position, kind);
  const was = isTurned ? `showed ${scheme.D} on top` : "was home";
  const were = isTurned ? was : "were home";
  return count === 1
    ? `one top ${kind} that ${was} ${isTurned ? "does" : "is"} not any more`
    : `${count} top ${kind}s that ${were} ${isTurned ? "do" : "are"} not any more`;
}

/**
 * What is said where all that was asked of the last layer is done and others
 * of the layer are lost; undefined where none of the layer are.
 */
export function lostOfTopWords(
  position: Position,
  lost: Pieces,
  scheme: ColourScheme,
): VerdictWords | undefined {
  const { top, below } = lostParts(lost);
  const [first] = top;
  if (first === undefined) return undefined;
  // A stage that keeps one kind of piece asks of the other.
  const asked = first.kind === "edge" ? "corners" : "edges";
  const left = topLostInWords(position, first.kind, top.length, scheme);
  return {
    sentence: `The ${asked} are as asked, but ${left}.`,
    more:
      below.length === 0 ? "" : "The layers below are not as they were either.",
  };
}

/** What is said of the last layer's lost pieces beside those that are missing; empty where there are none. */
export function topLostBesides(
  position: Position,
  lost: Pieces,
  scheme: ColourScheme,
): string {
  const { top } = lostParts(lost);
  const [first] = top;
  if (first === undefined) return "";
  return `Besides, ${topLostInWords(position, first.kind, top.length, scheme)}.`;
}

/** Pieces after what is said of them; many are only counted. */
function listed(
  label: string,
  pieces: readonly CubePiece[],
  scheme: ColourScheme,
): readonly string[] {
  if (pieces.length === 0) return [];
  return pieces.length > PIECES_LISTED
    ? [`${label}: ${pieces.length} pieces.`]
    : [
        `${label}: ${listInWords(pieces.map((one) => pieceInWords(one, scheme)))}.`,
      ];
}

/** The pieces that are no longer as they were; many are only counted. Empty where there are none. */
export function lostInWords(
  position: Position,
  lost: Pieces,
  scheme: ColourScheme,
): string {
  const { top } = lostParts(lost);
  const turned = top.filter(({ kind }) => isOnlyTurned(position, kind));
  const isTurned = ({ kind, piece }: CubePiece) =>
    turned.some((one) => one.kind === kind && one.piece === piece);
  const placed = piecesOf(lost).filter((piece) => !isTurned(piece));
  return [
    ...listed("No longer placed", placed, scheme),
    ...listed(`${capitalised(scheme.D)} no longer on top`, turned, scheme),
  ].join(" ");
}
