/** What is said of a missed answer in a sentence. What has changed on the cube is for `now-words` to list. */
import type { MissVerdict } from "../../../core/answer/judge";
import { caseEntry } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import { isLastLayerStage } from "../../../core/cases/stage";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { type HeldCube, viewFace } from "../../../core/cube/held-cube";
import { sideName } from "../../../core/notation/place-words";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { capitalised } from "../../../core/notation/sentence";
import { pieceWhereInWords } from "./case-words";
import { lostOfTopWords, topLostBesides } from "./lost-words";
import type { CubePiece } from "./own-cube";
import { pieceInWords, piecesOf } from "./prompt-words";
import type { VerdictWords } from "./right-words";

/** What a miss is said from. */
export interface SaidMiss {
  readonly position: Position;
  readonly verdict: MissVerdict;
  /** The cube after the answer. */
  readonly after: HeldCube<PartlyKnownCubies>;
  readonly scheme: ColourScheme;
  /** Whether anything was turned. */
  readonly hasTurned: boolean;
  readonly shownTheWay: boolean;
  /** Whether the learner reported it: then nobody saw what the cube shows. */
  readonly reported: boolean;
}

/** "The corner", or which of the two where two are asked for. */
function nameOf(piece: CubePiece, { position, scheme }: SaidMiss): string {
  const asked = piecesOf(targetsOf(position));
  return asked.length > 1
    ? capitalised(pieceInWords(piece, scheme))
    : `The ${piece.kind}`;
}

function whereNow(piece: CubePiece, { after, scheme }: SaidMiss): string {
  const where = pieceWhereInWords(after, piece, scheme);
  return where === undefined ? "" : `It is at the ${where}.`;
}

/** Of the last layer, whose pieces are asked for together: how many are not yet as asked. */
function lastLayerWords({
  position,
  verdict,
  scheme,
  hasTurned,
}: SaidMiss): VerdictWords {
  const { length } = piecesOf(verdict.missing);
  if (!hasTurned)
    return { sentence: "Nothing was turned, so all is as it was.", more: "" };
  if (length === 0)
    return (
      lostOfTopWords(position, verdict.lost, scheme) ?? {
        sentence: "The last layer is as asked, but the layers below are not.",
        more: "",
      }
    );
  return {
    sentence:
      length === 1
        ? "One piece of the last layer is not as asked yet."
        : `${length} pieces of the last layer are not as asked yet.`,
    more: topLostBesides(position, verdict.lost, scheme),
  };
}

/** The words for a missed answer. */
export function missWords(said: SaidMiss): VerdictWords {
  const { verdict, after, position } = said;
  if (said.shownTheWay)
    return {
      sentence: "Here is the whole way.",
      more: "Being shown it counts as missed, so the case comes back soon.",
    };
  if (said.reported)
    return {
      sentence: "Not done this time.",
      more: "Go through the way here, then try it again.",
    };
  const [piece] = piecesOf(verdict.missing);
  if (verdict.layerTurned !== undefined) {
    const side = sideName(viewFace(after.hold, "U"));
    return {
      sentence: `Almost: only ${side} is turned away.`,
      more: "",
    };
  }
  if (isLastLayerStage(caseEntry(position.case).stage))
    return lastLayerWords(said);
  if (piece === undefined) {
    const pieces = piecesOf(targetsOf(position));
    const subject =
      pieces.length > 1 ? "Both are" : `The ${pieces[0]?.kind ?? "piece"} is`;
    return {
      sentence: `${subject} home, but something else left its place.`,
      more: "",
    };
  }
  const name = nameOf(piece, said);
  if (!said.hasTurned)
    return {
      sentence: `Nothing was turned, so ${name.replace(/^The/, "the")} is not home yet.`,
      more: whereNow(piece, said),
    };
  switch (verdict.pieceState) {
    case "home-but-turned":
      return {
        sentence: `${name} is in its home, but ${piece.kind === "edge" ? "flipped" : "twisted"}.`,
        more: "",
      };
    case "up-but-wrong-side-colours":
      return {
        sentence: `${name} is up, but in another piece’s home.`,
        more: "Its side colours do not match the middles.",
      };
    case "placed":
    case "elsewhere":
      return { sentence: `${name} is not home yet.`, more: "" };
  }
}
