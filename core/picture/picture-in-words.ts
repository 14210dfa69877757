/**
 * The text alternative of a picture: the same things, in a learner's words.
 *
 * It is made from what the picture is made from and from nothing else, so it
 * cannot say more than the picture shows, nor something different.
 */
import { CORNER_FACELETS, EDGE_FACELETS } from "../cube/facelets";
import { FACES, type Face } from "../cube/faces";
import { CORNER_FACES, EDGE_FACES } from "../cube/pieces";
import { turnInWords } from "../notation/say-in-words";
import { capitalised, listInWords } from "../notation/sentence";
import {
  type ColourNames,
  coloursInWords,
  onSideInWords,
  placeInWords,
  sideName,
} from "../notation/place-words";
import { faceletPlace } from "./cube-layout";
import type { CubePictureInput } from "./cube-picture";

/** What of a picture is said. */
export type PictureToSay = Pick<
  CubePictureInput,
  "stickers" | "pieces" | "home" | "rings" | "arrow"
>;

/** A picture in words: the short text says what matters, the details the rest. */
export interface PictureWords {
  readonly short: string;
  readonly details: string;
}

function facesOf(facelets: readonly number[]): readonly Face[] {
  return facelets.map((facelet) => faceletPlace(facelet).face);
}

/** A piece by its colours, or as bare where the picture shows it so. */
function pieceName(
  carried: readonly (Face | undefined)[],
  names: ColourNames,
): string {
  const kind = carried.length === 3 ? "corner" : "edge";
  const own = [...CORNER_FACES, ...EDGE_FACES].find(
    (faces) =>
      faces.length === carried.length &&
      faces.every((face) => carried.includes(face)),
  );
  return own === undefined
    ? `the bare ${kind}`
    : `the ${coloursInWords(own, names)} ${kind}`;
}

function pieceInWords(
  { stickers, home = [] }: PictureToSay,
  piece: readonly number[],
  names: ColourNames,
): string {
  const carried = piece.map((facelet) => stickers[facelet]);
  const name = capitalised(pieceName(carried, names));
  const place = placeInWords(facesOf(piece));
  const isAtHome = piece.every((facelet) => home.includes(facelet));
  const sides = piece.flatMap((facelet, i) => {
    const face = carried[i];
    return face === undefined
      ? []
      : [`${names[face]} ${onSideInWords(faceletPlace(facelet).face)}`];
  });
  const where = isAtHome ? `in its home, ${place}` : place;
  return `${name}: ${[where, ...sides].join(", ")}.`;
}

function homeInWords({ pieces = [], home = [] }: PictureToSay): string[] {
  // A pair has two homes: each is a place of its own.
  const places = [...CORNER_FACELETS, ...EDGE_FACELETS].filter(
    (facelets) =>
      facelets.every((facelet) => home.includes(facelet)) &&
      !pieces.some((piece) =>
        piece.every((facelet) => facelets.includes(facelet)),
      ),
  );
  if (places.length === 0) return [];
  const named = places.map((facelets) => placeInWords(facesOf(facelets)));
  return [`${places.length === 1 ? "Home" : "Homes"}: ${listInWords(named)}.`];
}

/** Places whose piece matches the centres on every side. */
function placedInWords({ stickers }: PictureToSay): string[] {
  const matching = (places: readonly (readonly number[])[]) =>
    places
      .filter((facelets) =>
        facelets.every((facelet) => {
          const centre = 9 * Math.floor(facelet / 9) + 4;
          const carried = stickers[facelet];
          return carried !== undefined && carried === stickers[centre];
        }),
      )
      .map((facelets) => placeInWords(facesOf(facelets)));
  const groups = [
    ["edge", "edges", matching(EDGE_FACELETS)],
    ["corner", "corners", matching(CORNER_FACELETS)],
  ] as const;
  return groups.flatMap(([one, many, places]) =>
    places.length === 0
      ? []
      : [`Placed ${places.length === 1 ? one : many}: ${listInWords(places)}.`],
  );
}

/** One side of a cube, row by row as it is read from outside; "bare" where nothing is known. */
export function sideInWords(
  stickers: PictureToSay["stickers"],
  side: Face,
  names: ColourNames,
): string {
  const first = 9 * FACES.indexOf(side);
  const rows = [0, 1, 2].map((row) =>
    [0, 1, 2]
      .map((column) => {
        const face = stickers[first + 3 * row + column];
        return face === undefined ? "bare" : names[face];
      })
      .join(" "),
  );
  return `${capitalised(sideName(side))}, row by row: ${rows.join("; ")}.`;
}

/** How the cube is held, by the centres of its top, front and right. */
function holdInWords(
  stickers: PictureToSay["stickers"],
  names: ColourNames,
): string[] {
  const centre = (side: Face) => stickers[9 * FACES.indexOf(side) + 4];
  const said = (["U", "F", "R"] as const).flatMap((side) => {
    const face = centre(side);
    const at = side === "F" ? "in front" : onSideInWords(side);
    return face === undefined ? [] : [`${names[face]} ${at}`];
  });
  return said.length === 0 ? [] : [`${capitalised(said.join(", "))}.`];
}

function ringsInWords(
  { stickers, rings = [] }: PictureToSay,
  names: ColourNames,
): string[] {
  if (rings.length === 0) return [];
  const said = rings.map((facelet) => {
    const { face, cubie } = faceletPlace(facelet);
    const carried = stickers[facelet];
    const sides = FACES.filter((side) => {
      const along = { R: cubie.x, U: cubie.y, F: cubie.z };
      const back = { L: cubie.x, D: cubie.y, B: cubie.z };
      return side === "R" || side === "U" || side === "F"
        ? along[side] === 1
        : back[side] === -1;
    });
    return `${carried === undefined ? "bare" : names[carried]} ${onSideInWords(face)} at ${placeInWords(sides)}`;
  });
  return [`With a ring: ${listInWords(said)}.`];
}

/** A picture in words, with the learner's own colour names. */
export function pictureInWords(
  picture: PictureToSay,
  names: ColourNames,
): PictureWords {
  const { stickers, pieces = [], arrow } = picture;
  const short = [
    ...holdInWords(stickers, names),
    ...pieces.map((piece) => pieceInWords(picture, piece, names)),
    ...homeInWords(picture),
    ...ringsInWords(picture, names),
    ...(arrow === undefined ? [] : [`Arrow: ${turnInWords(arrow)}`]),
  ];
  const details = [
    ...placedInWords(picture),
    ...FACES.map((side) => sideInWords(stickers, side, names)),
  ];
  return { short: short.join(" "), details: details.join(" ") };
}
