/** Where each of the 54 facelets lies in space, in the viewer's frame. */
import { FACES, type Face } from "../cube/faces";
import { present } from "../invariant";
import { onPlane, times, type Vector, vector } from "./vector";

/**
 * A face's directions as its facelets are read from outside.
 *
 * Shape: unit vectors; `column` goes along a row, `row` from row to row.
 */
export interface FaceFrame {
  readonly normal: Vector;
  readonly column: Vector;
  readonly row: Vector;
}

const RIGHT = vector(1, 0, 0);
const LEFT = vector(-1, 0, 0);
const UP = vector(0, 1, 0);
const DOWN = vector(0, -1, 0);
const FRONT = vector(0, 0, 1);
const BACK = vector(0, 0, -1);

/** The directions of each face. */
export const FACE_FRAMES: Readonly<Record<Face, FaceFrame>> = {
  U: { normal: UP, column: RIGHT, row: FRONT },
  R: { normal: RIGHT, column: BACK, row: DOWN },
  F: { normal: FRONT, column: RIGHT, row: DOWN },
  D: { normal: DOWN, column: RIGHT, row: BACK },
  L: { normal: LEFT, column: FRONT, row: DOWN },
  B: { normal: BACK, column: LEFT, row: DOWN },
};

/** Half the cube's edge, in cubies. */
export const HALF_CUBE = 1.5;

/** One facelet in space. */
export interface FaceletPlace {
  readonly facelet: number;
  readonly face: Face;
  readonly frame: FaceFrame;
  readonly centre: Vector;
  /** The cubie it belongs to: each part −1, 0 or 1. */
  readonly cubie: Vector;
}

/** All facelets in order. Shape: 54. */
export const FACELET_PLACES: readonly FaceletPlace[] = FACES.flatMap(
  (face, index) =>
    Array.from({ length: 9 }, (_, k): FaceletPlace => {
      const frame = FACE_FRAMES[face];
      const across = Math.floor(k / 3) - 1;
      const along = (k % 3) - 1;
      return {
        facelet: 9 * index + k,
        face,
        frame,
        centre: onPlane(
          times(frame.normal, HALF_CUBE),
          frame.column,
          along,
          frame.row,
          across,
        ),
        cubie: onPlane(frame.normal, frame.column, along, frame.row, across),
      };
    }),
);

/** The place of a facelet. Errors: an index outside 0–53 is our own bug. */
export function faceletPlace(facelet: number): FaceletPlace {
  return present(FACELET_PLACES[facelet], "facelets are below 54");
}

/** The facelets of the cubie a facelet belongs to, itself included. */
export function faceletsOfCubie(cubie: Vector): readonly FaceletPlace[] {
  return FACELET_PLACES.filter(
    (place) =>
      place.cubie.x === cubie.x &&
      place.cubie.y === cubie.y &&
      place.cubie.z === cubie.z,
  );
}
