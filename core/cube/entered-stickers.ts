/**
 * A cube as a person enters it, sticker by sticker.
 *
 * `validity.ts` reads letters that are known to belong to centres; here the
 * colours are whatever the cube has, some may still be missing, and a fault
 * says where to look: the middles, the counts, single pieces, and only then
 * what turning could never have done.
 */
import { err, ok, type Result } from "../result";
import { type Cubies, trustedCubies } from "./cubies";
import {
  ASSEMBLY_FAULTS,
  type EnteredFault,
  faultOfColours,
  faultOfPieces,
} from "./entered-fault";
import { type Slip, slipsExplaining } from "./entry-slips";
import { FACES, type Face } from "./faces";
import type { HeldCube } from "./held-cube";
import {
  assemblyOf,
  CENTRE_FACELETS,
  CORNER_KIND,
  EDGE_KIND,
  facesOfColours,
  NO_STICKER,
  piecesSeen,
} from "./sticker-codes";
import { conjugate, faceImage, inverseSymmetry, ROTATIONS } from "./symmetries";

/**
 * The stickers as they are seen, undefined where one is not told yet.
 *
 * Shape: 54 entries, indexed as in `facelets.ts`, as the cube is held.
 */
export type EnteredStickers<Colour extends string> = readonly (
  Colour | undefined
)[];

/** A possible cube: its pieces as they are seen, and the colour of each centre. */
export interface EnteredCube<Colour extends string> {
  /** In the frame of the holder: face U is what is on top. */
  readonly cubies: Cubies;
  readonly centres: Readonly<Record<Face, Colour>>;
}

/**
 * Reads the stickers of a cube.
 *
 * Errors: the first of `EnteredFault` in the order of its members, but that
 *         faults of pieces come before `stickers-missing` only where all of
 *         their own stickers and the six centres are told. A list that is not
 *         of 54, or has more than six colours at its centres, is our own bug.
 */
export function readEnteredStickers<Colour extends string>(
  entered: EnteredStickers<Colour>,
): Result<EnteredCube<Colour>, EnteredFault<Colour>> {
  const colours = coloursOf(entered);
  const codes = Uint8Array.from({ length: 54 }, (_, at) => {
    const colour = entered[at];
    return colour === undefined ? NO_STICKER : colours.indexOf(colour);
  });
  const missing = [...codes.keys()].filter((at) => codes[at] === NO_STICKER);
  const isWhole = missing.length === 0;
  // A slip is looked for only among stickers that are all of the six colours.
  const slips = (): readonly Slip<Colour>[] =>
    !isWhole || colours.length > 6
      ? []
      : slipsExplaining(codes).map((slip) => ({
          ...slip,
          changes: new Map(
            [...slip.changes].map(
              ([at, code]) => [at, colours[code]!] as const,
            ),
          ),
        }));
  const early = faultOfColours({ colours, codes, isWhole, slips });
  if (early !== undefined) return err(early);
  const faceOf = facesOfColours(codes);
  if (faceOf !== undefined) {
    for (const kind of [CORNER_KIND, EDGE_KIND]) {
      const fault = faultOfPieces(
        kind,
        { colours, codes, isWhole, slips },
        faceOf,
      );
      if (fault !== undefined) return err(fault);
    }
  }
  if (!isWhole || faceOf === undefined)
    return err({ code: "stickers-missing", facelets: missing });
  const corners = piecesSeen(CORNER_KIND, codes, faceOf)!;
  const edges = piecesSeen(EDGE_KIND, codes, faceOf)!;
  const assembly = assemblyOf(corners, edges);
  const broken = ASSEMBLY_FAULTS.filter(
    (fault) =>
      (fault === "corner-twisted" && assembly.cornerThirds !== 0) ||
      (fault === "edge-flipped" && assembly.isEdgeFlipped) ||
      (fault === "pieces-swapped" && assembly.arePiecesSwapped),
  );
  if (broken.length > 0)
    return err({
      code: "put-together-wrongly",
      broken,
      cornerThirds: assembly.cornerThirds,
      facelets: [],
      slips: slips(),
    });
  const centre = (face: number) => entered[CENTRE_FACELETS[face]!]!;
  return ok({
    cubies: trustedCubies({
      cornerPermutation: corners.permutation,
      cornerOrientation: corners.orientation,
      edgePermutation: edges.permutation,
      edgeOrientation: edges.orientation,
    }),
    centres: {
      U: centre(0),
      R: centre(1),
      F: centre(2),
      D: centre(3),
      L: centre(4),
      B: centre(5),
    },
  });
}

/**
 * The same cube with its body named by a colouring: face U of the body is
 * where the colouring's U colour is. Undefined where the cube is not coloured
 * so, in whichever hold.
 */
export function heldAsColoured<Colour extends string>(
  { cubies, centres }: EnteredCube<Colour>,
  scheme: Readonly<Record<Face, Colour>>,
): HeldCube<Cubies> | undefined {
  const hold = ROTATIONS.find((rotation) =>
    FACES.every((body) => centres[faceImage(rotation, body)] === scheme[body]),
  );
  return hold === undefined
    ? undefined
    : { cubies: conjugate(cubies, inverseSymmetry(hold)), hold };
}

function coloursOf<Colour extends string>(
  entered: EnteredStickers<Colour>,
): readonly Colour[] {
  const centres = CENTRE_FACELETS.map((at) => entered[at]);
  return [...new Set([...centres, ...entered])].filter(
    (colour) => colour !== undefined,
  );
}
