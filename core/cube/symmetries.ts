/**
 * The 48 symmetries of the cube: 24 rotations, and the same after a mirror.
 *
 * A symmetry is a permutation of the six faces. What it does to corners,
 * edges and facelets follows from their face names alone, so no second set of
 * tables can disagree with the first.
 */
import { type PartlyKnownCubies, UNKNOWN } from "./cubies";
import { FACES, type Face } from "./faces";
import {
  CORNER_FACES,
  type Corner,
  CORNERS,
  EDGE_FACES,
  type Edge,
  EDGES,
} from "./pieces";
import { invariant, present } from "../invariant";

declare const symmetryBrand: unique symbol;
declare const rotationBrand: unique symbol;

/** One of the 48 symmetries: 0–23 are the rotations, 24–47 the mirrored ones. */
export type Symmetry = number & { readonly [symmetryBrand]: true };

/** One of the 24 rotations of the whole cube; 0 is none. */
export type Rotation = Symmetry & { readonly [rotationBrand]: true };

type FaceMap = Readonly<Record<Face, Face>>;

const NONE: FaceMap = { U: "U", R: "R", F: "F", D: "D", L: "L", B: "B" };
// WCA 12a4: x turns as R, y as U, z as F. Each entry: where that face goes.
const X: FaceMap = { U: "B", B: "D", D: "F", F: "U", R: "R", L: "L" };
const Y: FaceMap = { F: "L", L: "B", B: "R", R: "F", U: "U", D: "D" };
const Z: FaceMap = { U: "R", R: "D", D: "L", L: "U", F: "F", B: "B" };
const MIRROR: FaceMap = { ...NONE, R: "L", L: "R" };

function followedBy(first: FaceMap, second: FaceMap): FaceMap {
  return {
    U: second[first.U],
    R: second[first.R],
    F: second[first.F],
    D: second[first.D],
    L: second[first.L],
    B: second[first.B],
  };
}

function key(map: FaceMap): string {
  return FACES.map((face) => map[face]).join("");
}

// Breadth first from "none" by x and y, so that the numbering is stable.
const FACE_MAPS: readonly FaceMap[] = (() => {
  const rotations = [NONE];
  const seen = new Set([key(NONE)]);
  for (const map of rotations) {
    for (const next of [followedBy(map, X), followedBy(map, Y)]) {
      if (seen.has(key(next))) continue;
      seen.add(key(next));
      rotations.push(next);
    }
  }
  invariant(rotations.length === 24, "x and y generate 24 rotations");
  return [...rotations, ...rotations.map((map) => followedBy(MIRROR, map))];
})();

const SYMMETRY_BY_KEY: ReadonlyMap<string, Symmetry> = new Map(
  FACE_MAPS.map((map, index) => [key(map), index as Symmetry]),
);

function symmetryOf(map: FaceMap): Symmetry {
  return present(SYMMETRY_BY_KEY.get(key(map)), "the maps form a group");
}

/** All 48 symmetries. */
export const SYMMETRIES: readonly Symmetry[] = FACE_MAPS.map(
  (_, index) => index as Symmetry,
);

/** The 24 rotations. */
export const ROTATIONS: readonly Rotation[] = SYMMETRIES.slice(0, 24).map(
  (symmetry) => symmetry as Rotation,
);

/** The rotation that changes nothing. */
export const NO_ROTATION: Rotation = 0 as Rotation;

/** A quarter turn of the whole cube about each axis (WCA 12a4). */
export const AXIS_ROTATION: Readonly<Record<"x" | "y" | "z", Rotation>> = {
  x: symmetryOf(X) as Rotation,
  y: symmetryOf(Y) as Rotation,
  z: symmetryOf(Z) as Rotation,
};

/** The mirror that exchanges left and right. */
export const LEFT_RIGHT_MIRROR: Symmetry = symmetryOf(MIRROR);

const PRODUCT: readonly Uint8Array[] = FACE_MAPS.map((first) =>
  Uint8Array.from(FACE_MAPS, (second) => symmetryOf(followedBy(first, second))),
);

/** Symmetry `a`, then `b`. */
export function thenSymmetry<S extends Symmetry>(a: S, b: S): S {
  return present(PRODUCT[a]?.[b], "symmetries are below 48") as S;
}

const INVERSE: Uint8Array = Uint8Array.from(SYMMETRIES, (a) =>
  present(
    SYMMETRIES.find((b) => PRODUCT[a]?.[b] === 0),
    "every symmetry has an inverse",
  ),
);

/** The symmetry that undoes `a`. */
export function inverseSymmetry<S extends Symmetry>(a: S): S {
  return INVERSE[a] as S;
}

/** Whether a symmetry turns the cube into its mirror image. */
export function isMirrored(symmetry: Symmetry): boolean {
  return symmetry >= 24;
}

/** The symmetry `a` as it looks after everything went through `through`: conjugation. */
export function symmetryThrough<S extends Symmetry>(
  a: S,
  through: Rotation,
): S {
  const undone: Symmetry = thenSymmetry<Symmetry>(inverseSymmetry(through), a);
  // Conjugation keeps a mirror a mirror and a rotation a rotation.
  return thenSymmetry<Symmetry>(undone, through) as S;
}

/** The rotation made of `quarters` quarter turns about one axis. */
export function rotationAbout(
  axis: "x" | "y" | "z",
  quarters: number,
): Rotation {
  let rotation = NO_ROTATION;
  for (let i = ((quarters % 4) + 4) % 4; i > 0; i--)
    rotation = thenSymmetry(rotation, AXIS_ROTATION[axis]);
  return rotation;
}

/** Where a face goes under a symmetry. */
export function faceImage(symmetry: Symmetry, face: Face): Face {
  return present(FACE_MAPS[symmetry], "symmetries are below 48")[face];
}

/** The rotation that brings `up` to U and `front` to F, or undefined where no rotation does. */
export function rotationBringing(up: Face, front: Face): Rotation | undefined {
  return ROTATIONS.find(
    (rotation) =>
      faceImage(rotation, up) === "U" && faceImage(rotation, front) === "F",
  );
}

interface PieceImages {
  /** Shape: piece → image piece. */
  readonly image: Uint8Array;
  /** Shape: stickers × piece: index, in the image's face list, of the image of sticker k. */
  readonly slot: Uint8Array;
}

function pieceImages(
  map: FaceMap,
  faces: readonly (readonly Face[])[],
): PieceImages {
  const stickers = present(faces[0], "there are pieces").length;
  const image = new Uint8Array(faces.length);
  const slot = new Uint8Array(faces.length * stickers);
  faces.forEach((own, piece) => {
    const moved = own.map((face) => map[face]);
    image[piece] = faces.findIndex((other) =>
      moved.every((face) => other.includes(face)),
    );
    const target = present(faces[image[piece]], "symmetries permute pieces");
    moved.forEach((face, k) => {
      slot[piece * stickers + k] = target.indexOf(face);
    });
  });
  return { image, slot };
}

const CORNER_IMAGES = FACE_MAPS.map((map) => pieceImages(map, CORNER_FACES));
const EDGE_IMAGES = FACE_MAPS.map((map) => pieceImages(map, EDGE_FACES));

/** Where a corner position goes under a symmetry. */
export function cornerImage(symmetry: Symmetry, position: Corner): Corner {
  return present(
    CORNERS[CORNER_IMAGES[symmetry]!.image[position]!],
    "symmetries permute corners",
  );
}

/** Where an edge position goes under a symmetry. */
export function edgeImage(symmetry: Symmetry, position: Edge): Edge {
  return present(
    EDGES[EDGE_IMAGES[symmetry]!.image[position]!],
    "symmetries permute edges",
  );
}

function conjugatePieces(
  permutation: Uint8Array,
  orientation: Uint8Array,
  { image, slot }: PieceImages,
  stickers: 2 | 3,
): readonly [Uint8Array, Uint8Array] {
  const newPermutation = new Uint8Array(permutation.length);
  const newOrientation = new Uint8Array(permutation.length);
  for (let position = 0; position < permutation.length; position++) {
    const target = image[position]!;
    const piece = permutation[position]!;
    newPermutation[target] = piece === UNKNOWN ? UNKNOWN : image[piece]!;
    const turned = orientation[position]!;
    if (turned === UNKNOWN) {
      newOrientation[target] = UNKNOWN;
      continue;
    }
    // Follow the sticker whose image is the image piece's reference sticker;
    // of a piece without a name it is the one that is known.
    let k = 0;
    if (piece !== UNKNOWN) while (slot[piece * stickers + k] !== 0) k++;
    newOrientation[target] =
      slot[position * stickers + ((k + turned) % stickers)]!;
  }
  return [newPermutation, newOrientation];
}

/**
 * The state seen through a symmetry: positions and pieces both mapped.
 *
 * A sequence conjugated turn by turn has the conjugate of its effect. With a
 * mirror, clockwise becomes counter-clockwise.
 *
 * Shape: where pieces are known without their names, the symmetry keeps face D.
 */
export function conjugate<State extends PartlyKnownCubies>(
  state: State,
  symmetry: Symmetry,
): State {
  const [cornerPermutation, cornerOrientation] = conjugatePieces(
    state.cornerPermutation,
    state.cornerOrientation,
    CORNER_IMAGES[symmetry]!,
    3,
  );
  const [edgePermutation, edgeOrientation] = conjugatePieces(
    state.edgePermutation,
    state.edgeOrientation,
    EDGE_IMAGES[symmetry]!,
    2,
  );
  return {
    cornerPermutation,
    cornerOrientation,
    edgePermutation,
    edgeOrientation,
  } as PartlyKnownCubies as State;
}
