/**
 * How a case is shown where it is looked up rather than asked: always the same
 * way, from the reference home, lined up, with everything placed that can be.
 */
import type { CaseId } from "../../core/cases/case-ids";
import { caseEntry, stageOfCase } from "../../core/cases/case-table";
import {
  allowedPlacedSets,
  mostPlaced,
  targetsOf,
} from "../../core/cases/constraint";
import { holdFor } from "../../core/cases/hold-in-stage";
import { lastLayerPositionSampler } from "../../core/cases/last-layer-position";
import {
  knownPieces,
  partlyKnownPosition,
} from "../../core/cases/partly-known-position";
import { type Position, startOf } from "../../core/cases/position";
import { randomPosition } from "../../core/cases/random-position";
import { groupOfStage } from "../../core/cases/stage";
import {
  lastLayerStickers,
  lastLayerTellingFacelets,
  slotFacelets,
} from "../../core/cases/stickers-that-matter";
import {
  type Hold,
  HOME_INDICES,
  type Variant,
} from "../../core/cases/variant";
import type { Turn } from "../../core/cube/turns";
import { emptyCubies } from "../../core/cube/sample-state";
import { present } from "../../core/invariant";
import {
  cubePicture,
  type CubePictureInput,
  type MirrorChoice,
  type PictureBounds,
} from "../../core/picture/cube-picture";
import {
  mirrorsNeeded,
  smallMirrors,
  stageMirrors,
  thumbnailMirrors,
} from "../../core/picture/mirrors-needed";
import type { CubePalette } from "../../core/picture/palette";
import {
  type CubeView,
  highView,
  usualView,
} from "../../core/picture/projection";
import type { Turning } from "../../core/picture/slabs";
import { randomSource } from "../../core/random-source";
import {
  casePicture,
  type CubeOnItsWay,
  pieceFacelets,
  shownStickers,
} from "./practise/case-picture";
import { piecesOf } from "./practise/prompt-words";

const shown = new Map<string, Position>();

/** Any seed does: what it decides is forgotten, or bare, except how pieces are twisted whose twist a case leaves free. */
const SEED = 1;

function newShowcase(id: CaseId, hold: Hold, look: number): Position {
  const entry = caseEntry(id);
  const [placed] = allowedPlacedSets(id, 0, mostPlaced(id));
  const variant: Variant = {
    home: 0,
    placed: present(placed, "a case allows what it allows at most"),
    turnedAway:
      entry.group === "slot"
        ? present(HOME_INDICES[look], "a slot's pieces show four looks at most")
        : 0,
    seenFrom: 0,
  };
  const random = randomSource(SEED);
  if (entry.group !== "last-layer")
    return partlyKnownPosition(
      randomPosition(random, id, variant, hold),
      "named",
    );
  const cubies = emptyCubies();
  lastLayerPositionSampler(entry.shows, look).drawInPlace(random, cubies);
  return { case: id, hold, variant, cubies };
}

/**
 * The position by which a case is shown; only the pieces it names are known.
 *
 * Shape: `look` as in `LookAlike`; 0 is how the case is shown by itself.
 */
export function showcasePosition(id: CaseId, chosen: Hold, look = 0): Position {
  const hold = holdFor(stageOfCase(id), chosen);
  const key = `${id} ${hold} ${look}`;
  const known = shown.get(key);
  if (known !== undefined) return known;
  const position = newShowcase(id, hold, look);
  shown.set(key, position);
  return position;
}

/** How a case's picture is wanted. */
export interface Showing {
  readonly hold: Hold;
  readonly palette: CubePalette;
  readonly pixelsPerCubie: number;
  /** Which mirrors stand around it: those of a question, those that tell a thumbnail's case, or none. */
  readonly mirrors: "all" | "telling" | "none";
  /** Stickers that carry a ring. */
  readonly rings?: readonly number[];
  /** Whether the home is marked. */
  readonly homes?: boolean;
  /** Which of its looks, as in `LookAlike`; absent: 0. */
  readonly look?: number;
}

/** The facelets of the pieces to bring home, as the learner sees them; in the last layer of its whole layer. */
export function showcasePieceFacelets(
  id: CaseId,
  hold: Hold,
  look = 0,
): readonly (readonly number[])[] {
  const position = showcasePosition(id, hold, look);
  const start = startOf(position);
  return piecesOf(targetsOf(position)).map((piece) =>
    pieceFacelets(start, piece),
  );
}

/**
 * Whether a case's home is seen on the left: a first-layer corner's home at
 * the top front right comes to the bottom front left when the cube is turned
 * over.
 */
function isHomeOnLeft(position: Position): boolean {
  return (
    groupOfStage(stageOfCase(position.case)) === "first-layer" &&
    position.hold === "down" &&
    targetsOf(position).corners.length > 0
  );
}

/** From where a case is seen: from higher up where the layer on top is the subject. */
function showcaseView(position: Position, pixelsPerCubie: number): CubeView {
  return groupOfStage(stageOfCase(position.case)) === "first-layer"
    ? usualView(pixelsPerCubie, isHomeOnLeft(position) ? "left" : "right")
    : highView(pixelsPerCubie);
}

/** What else there is to see of a case on its way. */
export interface OnItsWayShowing {
  readonly palette: CubePalette;
  readonly pixelsPerCubie: number;
  readonly mirrors?: MirrorChoice | undefined;
  readonly homes?: boolean | undefined;
  readonly rings?: readonly number[] | undefined;
  readonly turning?: Turning | undefined;
  readonly arrow?: Turn | undefined;
}

/** The picture of a case's cube before a way, in the middle of it or after it: what does not matter is bare plastic. */
export function pictureOnItsWay(
  position: Position,
  onItsWay: CubeOnItsWay,
  { pixelsPerCubie, homes = true, ...showing }: OnItsWayShowing,
): CubePictureInput {
  const { cube, line } = onItsWay;
  const { group, stage } = caseEntry(position.case);
  const view = showcaseView(position, pixelsPerCubie);
  const named = knownPieces(position, "named");
  switch (group) {
    case "first-layer": {
      const targets = targetsOf(position);
      return casePicture(onItsWay, {
        ...showing,
        named,
        outlined: targets,
        homes: homes ? targets : undefined,
        view,
      });
    }
    case "slot": {
      const { pieces, homes: home } = slotFacelets(
        stage,
        position.variant.home,
        cube,
      );
      return {
        ...showing,
        stickers: shownStickers(cube, named),
        view,
        pieces,
        // Once something turns, so does the slot: the mark would lie.
        home: homes && line.length === 0 ? home : [],
      };
    }
    case "last-layer":
      return { ...showing, stickers: lastLayerStickers(stage, cube), view };
  }
}

function mirrorsOf(
  position: Position,
  choice: Showing["mirrors"],
  { stickers, view }: CubePictureInput,
): MirrorChoice {
  if (choice === "none") return {};
  const { group, stage } = caseEntry(position.case);
  const start = startOf(position);
  const pieces = piecesOf(targetsOf(position)).map((piece) =>
    pieceFacelets(start, piece),
  );
  switch (group) {
    case "first-layer":
      return choice === "all"
        ? {
            ...mirrorsNeeded(pieces.flat(), view),
            floor: true,
            [isHomeOnLeft(position) ? "right" : "left"]: true,
          }
        : pieces
            .map((piece) => thumbnailMirrors(piece, stickers, view))
            .reduce((all, own) => ({ ...all, ...own }), {});
    case "slot":
      return choice === "all"
        ? stageMirrors(pieces.flat(), view)
        : smallMirrors(pieces, view);
    case "last-layer":
      return choice === "all"
        ? stageMirrors(lastLayerTellingFacelets(stage, start), view)
        : {};
  }
}

/** The picture by which a case is shown. */
export function showcasePicture(
  id: CaseId,
  { hold, mirrors, look = 0, ...showing }: Showing,
): CubePictureInput {
  const position = showcasePosition(id, hold, look);
  const start = startOf(position);
  const picture = pictureOnItsWay(
    position,
    { start, line: [], cube: start },
    showing,
  );
  return { ...picture, mirrors: mirrorsOf(position, mirrors, picture) };
}

/** The facelets by which one case, as it is shown, differs from another, as the learner sees them. */
export function differingFacelets(
  id: CaseId,
  other: CaseId,
  { hold, palette, look = 0 }: Pick<Showing, "hold" | "palette" | "look">,
): readonly number[] {
  const wanted = {
    hold,
    palette,
    pixelsPerCubie: 1,
    mirrors: "none",
  } as const;
  const mine = showcasePicture(id, { ...wanted, look }).stickers;
  const theirs = showcasePicture(other, wanted).stickers;
  return showcasePieceFacelets(id, hold, look)
    .flat()
    .filter((facelet) => mine[facelet] !== theirs[facelet]);
}

const bounds = new Map<string, PictureBounds>();

/** What a picture takes up, which depends on its view and its mirrors alone. */
function boundsOf(picture: CubePictureInput): PictureBounds {
  const key = JSON.stringify([picture.view, picture.mirrors]);
  const known = bounds.get(key) ?? cubePicture(picture).bounds;
  bounds.set(key, known);
  return known;
}

/**
 * Space for a picture that is placed by the cube's own centre, whatever stands
 * beside it: so wide to both sides, and as high as it needs.
 */
export function centredFrame(
  picture: CubePictureInput,
  halfWidth: number,
): PictureBounds {
  return { ...boundsOf(picture), left: -halfWidth, right: halfWidth };
}

/** Sizes a large picture may have, largest first. Units: pixels a cubie. */
const SIZES = [54, 50, 46, 44, 42, 40, 38, 36, 34, 32, 30, 28, 26] as const;

/** The size of the largest picture of a case that is no wider than there is room. Units: pixels a cubie. */
export function largestSize(
  id: CaseId,
  showing: Omit<Showing, "pixelsPerCubie">,
  room: number,
): number {
  const fits = SIZES.find((pixelsPerCubie) => {
    const picture = showcasePicture(id, { ...showing, pixelsPerCubie });
    const { left, right } = boundsOf(picture);
    return right - left <= room;
  });
  return fits ?? present(SIZES.at(-1), "there are sizes");
}
