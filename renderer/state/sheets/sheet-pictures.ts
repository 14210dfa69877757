/** The pictures of a sheet: as large as their column allows, on white paper. */
import { caseEntry } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { holdInStage } from "../../../core/cases/hold-in-stage";
import { type Position, startOf } from "../../../core/cases/position";
import { isLastLayerStage } from "../../../core/cases/stage";
import { lastLayerStickers } from "../../../core/cases/stickers-that-matter";
import type { Hold } from "../../../core/cases/variant";
import { SOLVED } from "../../../core/cube/cubies";
import { stickersOf } from "../../../core/cube/facelets";
import { present } from "../../../core/invariant";
import { MM_PER_PIXEL, pictureSize } from "../../../core/paper/block";
import type { ShownPicture, ShownStep } from "../../../core/paper/shown-case";
import type { Turn } from "../../../core/cube/turns";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import {
  cubePicture,
  type CubePictureInput,
} from "../../../core/picture/cube-picture";
import { mirrorsNeeded } from "../../../core/picture/mirrors-needed";
import type { CubePalette } from "../../../core/picture/palette";
import { pictureInWords } from "../../../core/picture/picture-in-words";
import { planInWords } from "../../../core/picture/plan-in-words";
import {
  planPicture,
  planPixelsPerCubie,
} from "../../../core/picture/plan-picture";
import { usualView } from "../../../core/picture/projection";
import { casePlan, type CasePlan } from "../case-plan";
import { pictureOnItsWay, showcasePicture } from "../case-showcase";
import { pieceFacelets } from "../practise/case-picture";
import { piecesOf } from "../practise/prompt-words";
import { walkedTurns } from "../way-walk";
import type { CaseId } from "../../../core/cases/case-ids";

/** How pictures on a sheet look. */
export interface SheetLook {
  readonly palette: CubePalette;
  /** The learner's own colour names. */
  readonly scheme: ColourScheme;
}

/** Sizes that a cube on paper may have, largest first. Units: pixels a cubie. */
const SIZES = [29, 27, 25, 23, 21, 19, 17, 15] as const;

/** As large as lets three rows of questions onto a page. */
const QUESTION_SIZE = 27;

/** How wide a plan is, as a share of its column: it tells as much in less room. */
const PLAN_SHARE = 0.72;

/** The largest size at which a picture is no wider than there is room. Units: `room` in millimetres, `most` in pixels a cubie. */
function largestSize(
  inputOf: (pixelsPerCubie: number) => CubePictureInput,
  room: number,
  most: number,
): number {
  const sizes = SIZES.filter((size) => size <= most);
  const fits = sizes.find(
    (size) => pictureSize(cubePicture(inputOf(size))).width <= room,
  );
  return fits ?? present(sizes.at(-1), "there are sizes");
}

/** The largest picture that is no wider than there is room. Units: as for `largestSize`. */
function fitted(
  inputOf: (pixelsPerCubie: number) => CubePictureInput,
  room: number,
  { scheme }: SheetLook,
  most: number,
): ShownPicture {
  const input = inputOf(largestSize(inputOf, room, most));
  return {
    picture: cubePicture(input),
    label: pictureInWords(input, scheme).short,
  };
}

function fittedPlan(
  plan: CasePlan,
  room: number,
  { scheme }: SheetLook,
): ShownPicture {
  const pixels = (PLAN_SHARE * room) / MM_PER_PIXEL;
  return {
    picture: planPicture({
      ...plan,
      pixelsPerCubie: planPixelsPerCubie(pixels),
    }),
    label: planInWords(plan, scheme),
  };
}

/** A case as it is looked up. Units: `room` in millimetres, `most` in pixels a cubie. */
export function casePictureOnPaper(
  id: CaseId,
  hold: Hold,
  room: number,
  look: SheetLook,
  most: number = SIZES[0],
): ShownPicture {
  const plan = casePlan(id, look.palette);
  return plan === undefined
    ? fitted(
        (pixelsPerCubie) =>
          showcasePicture(id, {
            hold,
            palette: look.palette,
            pixelsPerCubie,
            mirrors: "telling",
          }),
        room,
        look,
        most,
      )
    : fittedPlan(plan, room, look);
}

/** A position as it is asked: every sticker of the piece to bring home is seen, and of the last layer nothing that answers it. */
export function questionPictureOnPaper(
  position: Position,
  room: number,
  look: SheetLook,
): ShownPicture {
  const start = startOf(position);
  const { stage } = caseEntry(position.case);
  const { palette } = look;
  if (isLastLayerStage(stage))
    return fittedPlan(
      { stickers: lastLayerStickers(stage, start), palette },
      room,
      look,
    );
  const pieces = piecesOf(targetsOf(position)).flatMap((piece) =>
    pieceFacelets(start, piece),
  );
  return fitted(
    (pixelsPerCubie) => {
      const input = pictureOnItsWay(
        position,
        { start, line: [], cube: start },
        { palette, pixelsPerCubie },
      );
      return { ...input, mirrors: mirrorsNeeded(pieces, input.view) };
    },
    room,
    look,
    QUESTION_SIZE,
  );
}

/** A way turn by turn, each picture with its arrow. Units: `room` in millimetres. */
export function stepsOnPaper(
  position: Position,
  turns: readonly Turn[],
  room: number,
  { palette, scheme }: SheetLook,
): readonly ShownStep[] {
  const start = startOf(position);
  const size = largestSize(
    (pixelsPerCubie) =>
      pictureOnItsWay(
        position,
        { start, line: [], cube: start },
        { palette, pixelsPerCubie },
      ),
    room,
    SIZES[0],
  );
  return walkedTurns(position, turns, palette, scheme, size).map(
    ({ move, words, picture }) => ({
      move,
      words,
      picture: cubePicture(picture),
      label: pictureInWords(picture, scheme).short,
    }),
  );
}

/** A solved cube, for a certificate. */
export function solvedPictureOnPaper(
  hold: Hold,
  look: SheetLook,
): ShownPicture {
  const stickers = stickersOf({
    cubies: SOLVED,
    hold: holdInStage("first-layer-corners", { home: 0, seenFrom: 0 }, hold),
  });
  const { palette, scheme } = look;
  const input = { stickers, palette, view: usualView(40) };
  return {
    picture: cubePicture(input),
    label: pictureInWords(input, scheme).short,
  };
}
