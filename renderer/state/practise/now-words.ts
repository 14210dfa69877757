/** What has changed on the cube after a missed answer, and how far home is from there. */
import type { MissVerdict } from "../../../core/answer/judge";
import { caseEntry } from "../../../core/cases/case-table";
import { type Position, startOf } from "../../../core/cases/position";
import { caseTitle } from "../../../core/cases/case-words";
import {
  homeOfCorner,
  homeOfEdge,
  isLastLayerStage,
} from "../../../core/cases/stage";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import { turnsToAnswer } from "../../../core/cases/way-for-position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { type HeldCube, viewFace } from "../../../core/cube/held-cube";
import {
  isFaceTurn,
  isWholeCubeTurn,
  type Turn,
} from "../../../core/cube/turns";
import { turnsMade } from "../../../core/notation/metrics";
import { sideName } from "../../../core/notation/place-words";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { capitalised } from "../../../core/notation/sentence";
import { homeInWords, pieceWhereInWords } from "./case-words";
import { lostInWords } from "./lost-words";
import type { CubePiece } from "./own-cube";
import { pieceInWords, piecesOf } from "./prompt-words";

/** What has changed with the piece to bring home, and with the others; each empty where nothing has. */
export interface NowWords {
  readonly piece: string;
  readonly rest: string;
}

/** An answer that was missed. */
interface Missed {
  readonly position: Position;
  readonly turns: readonly Turn[];
  /** The cube after them. */
  readonly after: HeldCube<PartlyKnownCubies>;
  readonly verdict: MissVerdict;
}

/** How far home is; empty where that is not known. */
function fromThere(piece: CubePiece, { position, after }: Missed): string {
  const ofFirstLayer =
    piece.kind === "edge" ? homeOfEdge(piece.piece) : homeOfCorner(piece.piece);
  const { stage } = caseEntry(position.case);
  // A slot's pieces and the last layer's are brought home together.
  const home = ofFirstLayer ?? position.variant.home;
  const onwards = turnsToAnswer(after, stage, home, position.hold);
  const length = onwards === undefined ? 0 : turnsMade(onwards);
  return length === 0
    ? ""
    : `From there it takes ${length} ${length === 1 ? "turn" : "turns"}.`;
}

/** What the last layer shows now: its pieces are many, so its case is named. */
function lastLayerNow(missed: Missed, scheme: ColourScheme): string {
  const { position, after, verdict } = missed;
  const [piece] = piecesOf(verdict.missing);
  if (verdict.now === undefined || piece === undefined) return "";
  const naming = wholeCubeNaming(scheme, position.hold, after.hold);
  const shown = caseTitle(verdict.now, naming);
  return verdict.now === position.case
    ? `It is still the same case: “${shown}”.`
    : `It is another case now: “${shown}”. ${fromThere(piece, missed)}`.trim();
}

/** That the home itself is elsewhere: a middle that turns takes the homes along. */
function homeMovedInWords(
  piece: CubePiece,
  where: string,
  { position, turns, after }: Missed,
): string {
  const before = homeInWords(startOf(position), piece);
  const now = homeInWords(after, piece);
  if (before === now) return "";
  if (!turns.some((turn) => !isFaceTurn(turn) && !isWholeCubeTurn(turn)))
    return "";
  const moved = `its home has moved to the ${now}, because the middle turned.`;
  return where.startsWith(`${before};`)
    ? `It stands where its home was, but ${moved}`
    : capitalised(moved);
}

/** Whether a piece is where it was among the middles. */
function hasStayed(piece: CubePiece, { position, after }: Missed): boolean {
  const start = startOf(position);
  const seat = ({ cubies }: HeldCube<PartlyKnownCubies>) => {
    const [permutation, orientation] =
      piece.kind === "corner"
        ? [cubies.cornerPermutation, cubies.cornerOrientation]
        : [cubies.edgePermutation, cubies.edgeOrientation];
    const at = permutation.indexOf(piece.piece);
    return `${at} ${orientation[at] ?? ""}`;
  };
  return seat(start) === seat(after);
}

/** What has changed with the piece to bring home. */
function pieceNow(
  piece: CubePiece,
  missed: Missed,
  scheme: ColourScheme,
): string {
  const name = pieceInWords(piece, scheme);
  const where = pieceWhereInWords(missed.after, piece, scheme);
  const isAlone = piecesOf(missed.verdict.lost).length === 0;
  // Only where nothing else was lost does a way of the case lead on.
  const from = isAlone ? fromThere(piece, missed) : "";
  const moved =
    where === undefined ? "" : homeMovedInWords(piece, where, missed);
  if (moved === "" && hasStayed(piece, missed))
    return isAlone
      ? `Nothing that counts: ${name} is where it was. ${from}`
      : "";
  return [
    `${capitalised(name)}: ${where ?? "out of sight"}.`,
    moved,
    from,
  ].join(" ");
}

/** What has changed on the cube. */
export function nowInWords(missed: Missed, scheme: ColourScheme): NowWords {
  const { verdict, after } = missed;
  if (verdict.layerTurned !== undefined) {
    const side = sideName(viewFace(after.hold, "U"));
    return {
      piece: `Everything is in place but for one turn of ${side}.`,
      rest: "",
    };
  }
  const [piece] = piecesOf(verdict.missing);
  const isLastLayer = isLastLayerStage(caseEntry(missed.position.case).stage);
  return {
    piece: isLastLayer
      ? lastLayerNow(missed, scheme)
      : piece === undefined
        ? ""
        : pieceNow(piece, missed, scheme).replace(/ +/g, " ").trim(),
    rest: lostInWords(missed.position, verdict.lost, scheme),
  };
}
