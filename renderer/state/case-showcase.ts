/**
 * How a case is shown where it is looked up rather than asked: always the same
 * way, from the reference home, lined up, with everything placed that can be.
 */
import type { CaseId } from "../../core/cases/case-ids";
import {
  allowedPlacedSets,
  mostPlaced,
  targetsOf,
} from "../../core/cases/constraint";
import {
  knownPieces,
  partlyKnownPosition,
} from "../../core/cases/partly-known-position";
import { type Position, startOf } from "../../core/cases/position";
import { randomPosition } from "../../core/cases/random-position";
import type { Hold } from "../../core/cases/variant";
import { present } from "../../core/invariant";
import {
  cubePicture,
  type CubePictureInput,
  type MirrorChoice,
  type PictureBounds,
} from "../../core/picture/cube-picture";
import {
  mirrorsNeeded,
  thumbnailMirrors,
} from "../../core/picture/mirrors-needed";
import type { CubePalette } from "../../core/picture/palette";
import { usualView } from "../../core/picture/projection";
import { randomSource } from "../../core/random-source";
import { casePicture, pieceFacelets } from "./practise/case-picture";
import { piecesOf } from "./practise/prompt-words";

const shown = new Map<string, Position>();

/** Any seed does: what it decides is forgotten, except how two swapped corners are twisted. */
const SEED = 1;

/** The position by which a case is shown; only the pieces it names are known. */
export function showcasePosition(id: CaseId, hold: Hold): Position {
  const key = `${id} ${hold}`;
  const known = shown.get(key);
  if (known !== undefined) return known;
  const [placed] = allowedPlacedSets(id, 0, mostPlaced(id));
  const variant = {
    home: 0,
    placed: present(placed, "a case allows what it allows at most"),
    turnedAway: 0,
    seenFrom: 0,
  } as const;
  const random = randomSource(SEED);
  const position = partlyKnownPosition(
    randomPosition(random, id, variant, hold),
    "named",
  );
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
}

/** The facelets of the pieces to bring home, as the learner sees them. */
export function showcasePieceFacelets(
  id: CaseId,
  hold: Hold,
): readonly (readonly number[])[] {
  const position = showcasePosition(id, hold);
  const start = startOf(position);
  return piecesOf(targetsOf(position)).map((piece) =>
    pieceFacelets(start, piece),
  );
}

/** The picture by which a case is shown. */
export function showcasePicture(
  id: CaseId,
  { hold, palette, pixelsPerCubie, mirrors, rings, homes = true }: Showing,
): CubePictureInput {
  const position = showcasePosition(id, hold);
  const start = startOf(position);
  const targets = targetsOf(position);
  // A corner's home at the top front right comes to the bottom front left
  // when the cube is turned over.
  const homeOnLeft = hold === "down" && targets.corners.length > 0;
  const view = usualView(pixelsPerCubie, homeOnLeft ? "left" : "right");
  const picture = casePicture(
    { start, line: [], cube: start },
    {
      named: knownPieces(position, "named"),
      outlined: targets,
      homes: homes ? targets : undefined,
      palette,
      view,
      rings,
    },
  );
  const facelets = showcasePieceFacelets(id, hold);
  const choice = (): MirrorChoice => {
    switch (mirrors) {
      case "all":
        return {
          ...mirrorsNeeded(facelets.flat(), view),
          floor: true,
          [homeOnLeft ? "right" : "left"]: true,
        };
      case "telling":
        return facelets
          .map((piece) => thumbnailMirrors(piece, picture.stickers, view))
          .reduce((all, own) => ({ ...all, ...own }), {});
      case "none":
        return {};
    }
  };
  return { ...picture, mirrors: choice() };
}

/** The facelets of a case's piece that another case in the same place shows otherwise, as the learner sees them. */
export function differingFacelets(
  id: CaseId,
  other: CaseId,
  hold: Hold,
  palette: CubePalette,
): readonly number[] {
  const wanted = {
    hold,
    palette,
    pixelsPerCubie: 1,
    mirrors: "none",
  } as const;
  const mine = showcasePicture(id, wanted).stickers;
  const theirs = showcasePicture(other, wanted).stickers;
  return showcasePieceFacelets(id, hold)
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

/** The largest picture of a case that is no wider than there is room. */
export function largestShowcase(
  id: CaseId,
  showing: Omit<Showing, "pixelsPerCubie">,
  room: number,
): CubePictureInput {
  for (const pixelsPerCubie of SIZES) {
    const picture = showcasePicture(id, { ...showing, pixelsPerCubie });
    const { left, right } = boundsOf(picture);
    if (right - left <= room) return picture;
  }
  const smallest = present(SIZES.at(-1), "there are sizes");
  return showcasePicture(id, { ...showing, pixelsPerCubie: smallest });
}
