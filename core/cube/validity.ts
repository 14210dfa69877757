/**
 * From 54 stickers to a cube, and whether that cube can exist.
 *
 * The order of the checks is the order in which a person can find the fault
 * on a real cube: count the stickers, look at the pieces, and only then think
 * of twisted, flipped or exchanged ones.
 */
import { present } from "../invariant";
import { err, ok, type Result } from "../result";
import { type Cubies, isOddPermutation, trustedCubies } from "./cubies";
import {
  centreFacelet,
  CORNER_FACELETS,
  EDGE_FACELETS,
  viewFacelet,
} from "./facelets";
import { type Face, FACES } from "./faces";
import type { HeldCube } from "./held-cube";
import { CORNER_FACES, EDGE_FACES } from "./pieces";
import { faceImage, type Rotation, rotationBringing } from "./symmetries";

/** Each way in which a cube can be impossible, and where. */
export type CubeError =
  | { readonly code: "facelet-count"; readonly count: number }
  | {
      readonly code: "unknown-sticker";
      readonly facelet: number;
      readonly text: string;
    }
  | {
      readonly code: "sticker-count";
      readonly face: Face;
      readonly count: number;
    }
  | { readonly code: "centres" }
  | {
      readonly code: "unknown-piece";
      readonly facelets: readonly number[];
      readonly faces: readonly Face[];
    }
  | {
      readonly code: "duplicate-piece";
      readonly facelets: readonly number[];
      readonly faces: readonly Face[];
    }
  | { readonly code: "corner-twisted" }
  | { readonly code: "edge-flipped" }
  | { readonly code: "pieces-swapped" };

/**
 * Checks that a fully known state can be reached by turning.
 *
 * Errors: `corner-twisted`, `edge-flipped`, `pieces-swapped`.
 * Source: the three invariants of the cube group (its order, 8!·3^7·12!·2^10,
 *         is a twelfth of all assemblies).
 */
export function validateCubies(state: Cubies): Result<Cubies, CubeError> {
  const sum = (values: Uint8Array) => values.reduce((a, b) => a + b, 0);
  if (sum(state.cornerOrientation) % 3 !== 0)
    return err({ code: "corner-twisted" });
  if (sum(state.edgeOrientation) % 2 !== 0)
    return err({ code: "edge-flipped" });
  const cornersOdd = isOddPermutation(state.cornerPermutation);
  if (cornersOdd !== isOddPermutation(state.edgePermutation))
    return err({ code: "pieces-swapped" });
  return ok(state);
}

/**
 * Reads a 54-letter string of face letters, in the order of `facelets.ts`.
 *
 * Errors: `facelet-count`, `unknown-sticker`; then those of `cubeFromStickers`.
 */
export function parseFacelets(
  text: string,
): Result<HeldCube<Cubies>, CubeError> {
  const letters = [...text];
  if (letters.length !== 54)
    return err({ code: "facelet-count", count: letters.length });
  const stickers: Face[] = [];
  for (const [facelet, letter] of letters.entries()) {
    const face = FACES.find((known) => known === letter);
    if (face === undefined)
      return err({ code: "unknown-sticker", facelet, text: letter });
    stickers.push(face);
  }
  return cubeFromStickers(stickers);
}

/**
 * The cube that shows these stickers.
 *
 * Shape: 54 faces, indexed as in `facelets.ts`; each says to which centre of
 *        the body the sticker's colour belongs.
 * Errors: `facelet-count`, `sticker-count`, `centres` (not six different, or a
 *         mirrored cube), `unknown-piece`, `duplicate-piece`, and those of
 *         `validateCubies`.
 */
export function cubeFromStickers(
  stickers: readonly Face[],
): Result<HeldCube<Cubies>, CubeError> {
  if (stickers.length !== 54)
    return err({ code: "facelet-count", count: stickers.length });
  for (const face of FACES) {
    const count = stickers.filter((sticker) => sticker === face).length;
    if (count !== 9) return err({ code: "sticker-count", face, count });
  }
  const hold = holdFromCentres(stickers);
  if (hold === undefined) return err({ code: "centres" });

  const seen = (facelets: readonly number[]) =>
    facelets.map((facelet) => viewFacelet(hold, facelet));
  const corners = readPieces(CORNER_FACELETS.map(seen), CORNER_FACES, stickers);
  if (!corners.ok) return corners;
  const edges = readPieces(EDGE_FACELETS.map(seen), EDGE_FACES, stickers);
  if (!edges.ok) return edges;

  const state = trustedCubies({
    cornerPermutation: corners.value.permutation,
    cornerOrientation: corners.value.orientation,
    edgePermutation: edges.value.permutation,
    edgeOrientation: edges.value.orientation,
  });
  const valid = validateCubies(state);
  return valid.ok ? ok({ cubies: valid.value, hold }) : valid;
}

function holdFromCentres(stickers: readonly Face[]): Rotation | undefined {
  const up = stickers[centreFacelet("U")];
  const front = stickers[centreFacelet("F")];
  if (up === undefined || front === undefined) return undefined;
  const hold = rotationBringing(up, front);
  if (hold === undefined) return undefined;
  const matches = FACES.every(
    (body) => stickers[centreFacelet(faceImage(hold, body))] === body,
  );
  return matches ? hold : undefined;
}

function readPieces(
  facelets: readonly (readonly number[])[],
  faces: readonly (readonly Face[])[],
  stickers: readonly Face[],
): Result<
  { readonly permutation: Uint8Array; readonly orientation: Uint8Array },
  CubeError
> {
  const permutation = new Uint8Array(facelets.length);
  const orientation = new Uint8Array(facelets.length);
  const met = new Set<number>();
  for (const [position, places] of facelets.entries()) {
    const seen = places.map((facelet) =>
      present(stickers[facelet], "facelets are below 54"),
    );
    const turned = seen.findIndex((_, o) =>
      faces.some((own) => isTurnedTo(own, seen, o)),
    );
    const piece = faces.findIndex((own) => isTurnedTo(own, seen, turned));
    if (turned < 0 || piece < 0)
      return err({ code: "unknown-piece", facelets: places, faces: seen });
    if (met.has(piece))
      return err({ code: "duplicate-piece", facelets: places, faces: seen });
    met.add(piece);
    permutation[position] = piece;
    orientation[position] = turned;
  }
  return ok({ permutation, orientation });
}

/** Whether a piece with these faces, turned by `orientation`, shows `seen`. */
function isTurnedTo(
  own: readonly Face[],
  seen: readonly Face[],
  orientation: number,
): boolean {
  return own.every((face, k) => face === seen[(k + orientation) % own.length]);
}
