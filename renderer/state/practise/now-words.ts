/** What the cube shows after a missed answer, and how far home is from there. */
import type { MissVerdict } from "../../../core/answer/judge";
import { caseEntry } from "../../../core/cases/case-table";
import { markedOf, targetsOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import { homeOfCorner, homeOfEdge } from "../../../core/cases/stage";
import { turnsToAnswer } from "../../../core/cases/way-for-position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import { outerBlockTurns } from "../../../core/notation/metrics";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { pieceWhereInWords } from "./case-words";
import {
  listInWords,
  pieceInWords,
  piecesOf,
  placedInWords,
} from "./prompt-words";

/** Two sentences. */
export interface NowWords {
  readonly piece: string;
  readonly rest: string;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What the cube shows now. */
export function nowInWords(
  position: Position,
  after: HeldCube<PartlyKnownCubies>,
  verdict: MissVerdict,
  scheme: ColourScheme,
): NowWords {
  const [piece] = piecesOf(verdict.missing);
  const lost = piecesOf(verdict.lost);
  const home =
    piece === undefined
      ? undefined
      : piece.kind === "edge"
        ? homeOfEdge(piece.piece)
        : homeOfCorner(piece.piece);
  // Only where nothing else was lost does a way of the case lead on.
  const onwards =
    home === undefined || lost.length > 0
      ? undefined
      : turnsToAnswer(
          after,
          caseEntry(position.case).stage,
          home,
          position.hold,
        );
  const length = onwards === undefined ? 0 : outerBlockTurns(onwards);
  const from =
    length === 0
      ? ""
      : ` From there it takes ${length} ${length === 1 ? "turn" : "turns"}.`;
  const where =
    piece === undefined ? undefined : pieceWhereInWords(after, piece, scheme);
  return {
    piece:
      piece === undefined
        ? "What was to come home is home."
        : `${capital(pieceInWords(piece, scheme))}: ${where ?? "out of sight"}.${from}`,
    rest:
      lost.length > 0
        ? `No longer placed: ${listInWords(lost.map((one) => pieceInWords(one, scheme)))}.`
        : placedInWords(
            markedOf(position),
            targetsOf(position),
            scheme,
          ).replace("Already placed", "Still placed"),
  };
}
