/** A case as it is shown to a class: its words, its picture, and turns as pictures with arrows. */
import type { CaseId } from "../../../core/cases/case-ids";
import { stageOfCase } from "../../../core/cases/case-table";
import { caseNameInFamily, caseTitle } from "../../../core/cases/case-words";
import type { Position } from "../../../core/cases/position";
import { startOf } from "../../../core/cases/position";
import { isLargeShelf } from "../../../core/cases/shelf-counts";
import { isLastLayerStage } from "../../../core/cases/stage";
import {
  wholeCubeNaming,
  type WholeCubeNaming,
} from "../../../core/cases/whole-cube-naming";
import type { Hold } from "../../../core/cases/variant";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { formatTurn } from "../../../core/notation/format";
import type { ColourNames } from "../../../core/notation/place-words";
import { turnInWords } from "../../../core/notation/say-in-words";
import { anyCubeNames, anyCubePalette } from "../../../core/picture/any-cube";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import {
  cubePicture,
  type CubePictureInput,
} from "../../../core/picture/cube-picture";
import type { CubePalette, PictureTheme } from "../../../core/picture/palette";
import { cubeAtStart, type CubeStart } from "../../../core/solver/class-set-up";
import { pictureOnItsWay, showcasePicture } from "../case-showcase";

/** How stickers are told: by the side on which their colour's centre is, or in the class's own colours. */
export type ShowLook = "any" | "class";

/** Names and colours of the cube on the screen. */
export interface ShowColours {
  readonly names: ColourNames;
  readonly palette: CubePalette;
}

/** The learner's own colours, with the names that go with them. */
interface OwnColours {
  readonly scheme: ColourScheme;
  readonly palette: CubePalette;
}

/** The colours of a case in a look. */
export function showColours(
  position: Position,
  look: ShowLook,
  own: OwnColours,
  theme: PictureTheme,
): ShowColours {
  if (look === "class") return { names: own.scheme, palette: own.palette };
  const { hold } = startOf(position);
  return { names: anyCubeNames(hold), palette: anyCubePalette(hold, theme) };
}

/** A case's name; on a long shelf what it shows, too. */
export function shownTitle(
  id: CaseId,
  { names }: ShowColours,
  chosen: Hold,
): { readonly title: string; readonly more: string | undefined } {
  const naming: WholeCubeNaming = wholeCubeNaming(names, chosen);
  return {
    title: caseTitle(id, naming),
    more: isLargeShelf(stageOfCase(id))
      ? caseNameInFamily(id, naming)
      : undefined,
  };
}

/** One turn as a class sees it. */
export interface ClassTurn {
  readonly move: string;
  readonly words: string;
  /** The cube before the turn, with its arrow. */
  readonly picture: CubePictureInput;
}

/** Units: pixels a cubie. Any will do: a picture's size on the screen is its container's. */
const PIXELS = 40;

/** The cube before a set-up: as much of it as the start says is there. In the last layer a picture shows whole cubes only. */
export function setUpBegin(
  position: Position,
  start: CubeStart,
): HeldCube<PartlyKnownCubies> {
  const shown = isLastLayerStage(stageOfCase(position.case)) ? "solved" : start;
  return cubeAtStart(position, shown);
}

/** Turns as pictures with arrows, from a cube on. */
export function classTurns(
  position: Position,
  from: HeldCube<PartlyKnownCubies>,
  turns: readonly Turn[],
  { names, palette }: ShowColours,
): readonly ClassTurn[] {
  return turns.map((turn, n) => {
    const line = turns.slice(0, n);
    const cube = applyTurns(from, line);
    return {
      move: formatTurn(turn),
      words: turnInWords(turn, "short", { hold: cube.hold, colours: names }),
      picture: pictureOnItsWay(
        position,
        { start: from, line, cube },
        { palette, pixelsPerCubie: PIXELS, homes: false, arrow: turn },
      ),
    };
  });
}

/**
 * How large the names beside mirrors are: as what else is told, but no more
 * than a 16th of the room's width, or the longest of them, "bottom", would
 * take more than a quarter of it from the cube. Units: pixels.
 */
function mirrorWordSize(told: number, roomWidth: number): number {
  return Math.min(told, Math.max(16, roomWidth / 16));
}

/** The largest picture of a case that fits its room, the names beside its mirrors as large as what is told. Units: pixels. */
export function largestPicture(
  id: CaseId,
  hold: Hold,
  palette: CubePalette,
  room: {
    readonly width: number;
    readonly height: number;
    /** How large words are that the class reads. */
    readonly told: number;
  },
): CubePictureInput {
  const mirrorWords = mirrorWordSize(room.told, room.width);
  const at = (pixelsPerCubie: number): CubePictureInput => ({
    ...showcasePicture(id, { hold, palette, pixelsPerCubie, mirrors: "all" }),
    mirrorWords,
  });
  const scaleOf = (picture: CubePictureInput) => {
    const { left, right, top, bottom } = cubePicture(picture).bounds;
    return Math.min(room.width / (right - left), room.height / (bottom - top));
  };
  // Names and what surrounds a picture do not grow with it: the guess is
  // corrected once, and the last hundredths are left free.
  const guess = Math.max(8, Math.floor(scaleOf(at(PIXELS)) * PIXELS));
  const scale = 0.97 * scaleOf(at(guess)) * guess;
  return at(Math.max(8, Math.floor(scale)));
}
