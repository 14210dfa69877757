/** What a question to choose from shows: its places with their numbers, and the colours of its small pictures. */
import {
  placeOfPiece,
  type PieceQuestion,
  type RecognisingQuestion,
} from "../../../core/answer/recognising-question";
import type { CaseId } from "../../../core/cases/case-ids";
import { stageOfCase } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { lookAlikes } from "../../../core/cases/look-alikes";
import { type Position, startOf } from "../../../core/cases/position";
import { isLastLayerStage, rotationToHome } from "../../../core/cases/stage";
import type { Face } from "../../../core/cube/faces";
import { NO_PIECES, type Pieces } from "../../../core/cube/pieces";
import { faceImage } from "../../../core/cube/symmetries";
import type { Badge } from "../../../core/picture/badges";
import type { CubePalette } from "../../../core/picture/palette";
import { HIGH_VIEW } from "../../../core/picture/projection";
import { differingFacelets } from "../case-showcase";
import { placeFacelets } from "./case-picture";
import { lookFrom, type LookFrom } from "./looks";

/** The pieces that a question is about. */
export function piecesAskedAbout(
  question: RecognisingQuestion,
  position: Position,
): Pieces {
  if (question.way === "which-is-it") return targetsOf(position);
  const { piece } = question;
  return piece.kind === "corner"
    ? { ...NO_PIECES, corners: [piece.piece] }
    : { ...NO_PIECES, edges: [piece.piece] };
}

/** Where a question is looked at from: its places lie all around the cube, and from high up most are seen. */
export function choiceLookFrom(
  { way }: Pick<RecognisingQuestion, "way">,
  position: Position,
): LookFrom {
  return way === "which-is-it"
    ? lookFrom(position)
    : { side: 1, pitch: HIGH_VIEW.pitch };
}

/** The facelets of each place to choose from, in the order of the choices, as the learner sees them. */
export function choicePlaces(
  question: PieceQuestion,
  position: Position,
): readonly (readonly number[])[] {
  const cube = startOf(position);
  return question.choices.map((choice) => {
    const at = question.way === "find-it" ? placeOfPiece(cube, choice) : choice;
    return placeFacelets(cube, at.kind, at.piece);
  });
}

/** The numbers on the places: all of them while it is asked, then the right one and the one that was taken for it. */
export function choiceBadges(
  question: PieceQuestion,
  position: Position,
  chosen?: number,
): readonly Badge[] {
  return choicePlaces(question, position).flatMap(
    (facelets, i): readonly Badge[] => {
      const badge = { text: String(i + 1), facelets };
      if (chosen === undefined) return [{ ...badge, kind: "choice" }];
      if (i === question.right) return [{ ...badge, kind: "right" }];
      return i === chosen ? [{ ...badge, kind: "mistaken" }] : [];
    },
  );
}

/**
 * The palette in which a case's own picture has the colours of a position: the
 * pictures show the reference home, and here it is another one.
 */
export function paletteAtHome(
  { faces, letters, signs, ...rest }: CubePalette,
  { variant }: Position,
): CubePalette {
  const toHome = rotationToHome(variant.home);
  const turned = <T>(of: Readonly<Record<Face, T>>) => {
    const at = (face: Face) => of[faceImage(toHome, face)];
    return {
      U: at("U"),
      R: at("R"),
      F: at("F"),
      D: at("D"),
      L: at("L"),
      B: at("B"),
    };
  };
  return {
    ...rest,
    faces: turned(faces),
    letters: letters === undefined ? undefined : turned(letters),
    signs: signs === undefined ? undefined : turned(signs),
  };
}

/** How a case that was taken for another is set beside it. */
export interface TakenPicture {
  /** Its nearest look, as in `LookAlike`. */
  readonly look: number;
  /** Its stickers that differ from those of the right one. */
  readonly rings: readonly number[];
}

/** The picture of a case that was taken for another. */
export function takenPicture(
  taken: CaseId,
  right: CaseId,
  showing: Pick<Position, "hold"> & { readonly palette: CubePalette },
): TakenPicture {
  // Only the last layer's names hold for every look.
  const look = isLastLayerStage(stageOfCase(right))
    ? (lookAlikes(right).find((other) => other.case === taken)?.look ?? 0)
    : 0;
  return { look, rings: differingFacelets(taken, right, { ...showing, look }) };
}
