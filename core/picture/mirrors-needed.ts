/**
 * Which mirrors a case needs.
 *
 * A side that is hidden from the viewer can decide a case, so by default every
 * sticker that matters is seen, directly or in a mirror. A thumbnail has less
 * room and shows only the mirrors that tell its case from others.
 */
import { FACES, type Face } from "../cube/faces";
import { FACE_FRAMES, HALF_CUBE, faceletPlace } from "./cube-layout";
import type { MirrorChoice } from "./cube-picture";
import { type Mirror, MIRRORED_FACE, MIRRORS } from "./mirror-glass";
import { type CubeView, perspective } from "./projection";
import { times } from "./vector";

/** The faces that a view shows. */
export function facesInView(view: CubeView): readonly Face[] {
  const projector = perspective(view);
  return FACES.filter((face) => {
    const { normal } = FACE_FRAMES[face];
    return projector.facesViewer(times(normal, HALF_CUBE), normal);
  });
}

/**
 * The mirrors with which every one of these facelets is seen.
 *
 * There is no mirror for the top or the front: from in front and above, which
 * is where mirrors are shown at all, those two are always seen.
 */
export function mirrorsNeeded(
  facelets: readonly number[],
  view: CubeView,
): MirrorChoice {
  const seen = facesInView(view);
  const needs = (mirror: Mirror) =>
    !seen.includes(MIRRORED_FACE[mirror]) &&
    facelets.some(
      (facelet) => faceletPlace(facelet).face === MIRRORED_FACE[mirror],
    );
  return Object.fromEntries(
    MIRRORS.filter(needs).map((mirror) => [mirror, true]),
  );
}

/**
 * The mirrors of a thumbnail: the floor for a piece at the bottom, a side
 * mirror where the first colour is on the hidden side or the piece is at the
 * back of it.
 *
 * Shape: `piece` lists the piece's facelets, `stickers` what each of the 54
 *        facelets carries; the first colour is that of body face U.
 */
export function thumbnailMirrors(
  piece: readonly number[],
  stickers: readonly (Face | undefined)[],
  view: CubeView,
): MirrorChoice {
  const needed = mirrorsNeeded(piece, view);
  const faces = piece.map((facelet) => faceletPlace(facelet).face);
  const firstColour = piece.find((facelet) => stickers[facelet] === "U");
  const firstOn =
    firstColour === undefined ? undefined : faceletPlace(firstColour).face;
  const side = (mirror: "left" | "right") => {
    const face = MIRRORED_FACE[mirror];
    return needed[mirror] === true && (firstOn === face || faces.includes("B"));
  };
  return {
    ...(needed.floor === true ? { floor: true } : {}),
    ...(side("left") ? { left: true } : {}),
    ...(side("right") ? { right: true } : {}),
  };
}

/**
 * The mirrors of a question whose subject is the layer on top: both sides that
 * the view hides always, so that no mirror gives the answer away, and the
 * floor only where one of these facelets is seen in no other.
 */
export function stageMirrors(
  facelets: readonly number[],
  view: CubeView,
): MirrorChoice {
  const side = view.yaw < 0 ? "right" : "left";
  return { ...mirrorsNeeded(facelets, view), [side]: true, back: true };
}

/** Whether these facelets, which a view shows, all lie along the back of the near side: slivers in a thumbnail. */
function isAtFarEdge(facelets: readonly number[], view: CubeView): boolean {
  const nearSide = view.yaw < 0 ? "L" : "R";
  return facelets.every((facelet) => {
    const { face, cubie } = faceletPlace(facelet);
    return face === nearSide && cubie.z < 0;
  });
}

/**
 * The mirrors of a thumbnail of these pieces. One sticker of a known piece,
 * with its place, tells how the piece is turned: so a mirror stands at the
 * hidden side for a piece that shows no sticker by itself, and behind for one
 * that shows itself only as a sliver at the far edge of the near side.
 */
export function smallMirrors(
  pieces: readonly (readonly number[])[],
  view: CubeView,
): MirrorChoice {
  const seen = facesInView(view);
  const shown = pieces.map((piece) =>
    piece.filter((facelet) => seen.includes(faceletPlace(facelet).face)),
  );
  const isHidden = shown.some((facelets) => facelets.length === 0);
  const isSliver = shown.some(
    (facelets) => facelets.length > 0 && isAtFarEdge(facelets, view),
  );
  return {
    ...(isHidden ? { [view.yaw < 0 ? "right" : "left"]: true } : {}),
    ...(isSliver ? { back: true } : {}),
  };
}
