/**
 * The 54 stickers as the holder sees them, and back to pieces.
 *
 * Shape: index 9 × face + 3 × row + column, faces U R F D L B, each read row
 *        by row as seen from outside, the order of the usual 54-letter string.
 */
import { invariant, present } from "../invariant";
import { type PartlyKnownCubies, UNKNOWN } from "./cubies";
import { FACE_INDEX, FACES, type Face } from "./faces";
import type { HeldCube } from "./held-cube";
import { CORNER_FACES, EDGE_FACES } from "./pieces";
import {
  faceImage,
  inverseSymmetry,
  type Rotation,
  ROTATIONS,
} from "./symmetries";

/** Facelets of each corner position, in the order of its faces. Shape: 8 × 3. */
export const CORNER_FACELETS: readonly (readonly number[])[] = [
  [8, 9, 20],
  [6, 18, 38],
  [0, 36, 47],
  [2, 45, 11],
  [29, 26, 15],
  [27, 44, 24],
  [33, 53, 42],
  [35, 17, 51],
];

/** Facelets of each edge position, in the order of its faces. Shape: 12 × 2. */
export const EDGE_FACELETS: readonly (readonly number[])[] = [
  [5, 10],
  [7, 19],
  [3, 37],
  [1, 46],
  [32, 16],
  [28, 25],
  [30, 43],
  [34, 52],
  [23, 12],
  [21, 41],
  [50, 39],
  [48, 14],
];

/** The facelet of a face's centre. */
export function centreFacelet(face: Face): number {
  return 9 * FACE_INDEX[face] + 4;
}

/** The face on which a facelet lies. */
export function faceletFace(facelet: number): Face {
  return present(FACES[Math.floor(facelet / 9)], "facelets are below 54");
}

/** Where each facelet of the body is seen under a hold. Shape: 24 × 54. */
const FACELET_IMAGES: readonly Uint8Array[] = ROTATIONS.map((rotation) => {
  const image = new Uint8Array(54);
  for (const face of FACES)
    image[centreFacelet(face)] = centreFacelet(faceImage(rotation, face));
  const place = (
    faces: readonly (readonly Face[])[],
    facelets: readonly (readonly number[])[],
  ) => {
    faces.forEach((own, piece) => {
      const moved = own.map((face) => faceImage(rotation, face));
      const target = faces.findIndex((other) =>
        moved.every((face) => other.includes(face)),
      );
      moved.forEach((face, k) => {
        const slot = faces[target]?.indexOf(face) ?? -1;
        image[facelets[piece]![k]!] = facelets[target]![slot]!;
      });
    });
  };
  place(CORNER_FACES, CORNER_FACELETS);
  place(EDGE_FACES, EDGE_FACELETS);
  return image;
});

/** Where the holder sees a facelet of the body. */
export function viewFacelet(hold: Rotation, bodyFacelet: number): number {
  return present(
    FACELET_IMAGES[hold]?.[bodyFacelet],
    "facelets are below 54 and holds below 24",
  );
}

/** The facelet of the body that the holder sees at a place. */
export function bodyFacelet(hold: Rotation, seenFacelet: number): number {
  return viewFacelet(inverseSymmetry(hold), seenFacelet);
}

const UNNAMED: readonly Face[] = ["D"];

function paint(
  stickers: (Face | undefined)[],
  hold: Rotation,
  permutation: Uint8Array,
  orientation: Uint8Array,
  faces: readonly (readonly Face[])[],
  facelets: readonly (readonly number[])[],
): void {
  permutation.forEach((piece, position) => {
    const turned = orientation[position]!;
    if (turned === UNKNOWN) return;
    const places = facelets[position];
    // Of a piece without a name the sticker of face D is known, and no other.
    const own = piece === UNKNOWN ? UNNAMED : faces[piece];
    invariant(
      own !== undefined && places !== undefined,
      "pieces and positions are in range",
    );
    own.forEach((face, k) => {
      const place = places[(k + turned) % places.length]!;
      stickers[viewFacelet(hold, place)] = face;
    });
  });
}

/**
 * What the holder sees: for each facelet, the body face whose colour it
 * carries, or undefined where that is not known.
 *
 * Shape: 54 entries.
 */
export function stickersOf(
  cube: HeldCube<PartlyKnownCubies>,
): readonly (Face | undefined)[] {
  const stickers = new Array<Face | undefined>(54).fill(undefined);
  const { cubies, hold } = cube;
  for (const face of FACES)
    stickers[viewFacelet(hold, centreFacelet(face))] = face;
  paint(
    stickers,
    hold,
    cubies.cornerPermutation,
    cubies.cornerOrientation,
    CORNER_FACES,
    CORNER_FACELETS,
  );
  paint(
    stickers,
    hold,
    cubies.edgePermutation,
    cubies.edgeOrientation,
    EDGE_FACES,
    EDGE_FACELETS,
  );
  return stickers;
}

/** A cube as the usual 54-letter string; `?` where a sticker is not known. */
export function formatFacelets(cube: HeldCube<PartlyKnownCubies>): string {
  return stickersOf(cube)
    .map((face) => face ?? "?")
    .join("");
}
