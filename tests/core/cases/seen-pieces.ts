import {
  isSameVector,
  NORMALS,
  solvedStickers,
  type Vector,
} from "../../oracles/geometric-cube";

const STICKERS = solvedStickers();

/** A sticker of a piece, read off a picture: the letter it carries and the side it faces. */
export interface SeenSticker {
  readonly carries: string;
  readonly facing: Vector;
}

/** A piece read off a picture: where it is, and its stickers there. */
export interface SeenPiece {
  readonly at: Vector;
  readonly stickers: readonly SeenSticker[];
}

// The stickers of one piece sit at the same place.
const PLACES = STICKERS.filter(
  ({ at }, i) => STICKERS.findIndex((s) => isSameVector(s.at, at)) === i,
).map(({ at }) => ({
  at,
  facelets: STICKERS.flatMap((sticker, i) =>
    isSameVector(sticker.at, at) ? [{ i, facing: sticker.facing }] : [],
  ),
}));

/** Every piece of a 54-letter string, by the geometric oracle alone. */
export function piecesSeen(facelets: string): readonly SeenPiece[] {
  return PLACES.map((place) => ({
    at: place.at,
    stickers: place.facelets.map(({ i, facing }) => ({
      carries: facelets[i] ?? "?",
      facing,
    })),
  }));
}

/** The piece that carries exactly these letters, in any order. */
export function pieceSeen(facelets: string, letters: string): SeenPiece {
  const wanted = [...letters].toSorted().join("");
  const found = piecesSeen(facelets).filter(
    ({ stickers }) =>
      stickers
        .map(({ carries }) => carries)
        .toSorted()
        .join("") === wanted,
  );
  if (found.length !== 1 || found[0] === undefined)
    throw new Error(`${letters} is on the cube ${found.length} times`);
  return found[0];
}

/** Where the sticker with a letter faces on a piece. */
export function facingOf({ stickers }: SeenPiece, letter: string): Vector {
  const found = stickers.find(({ carries }) => carries === letter);
  if (found === undefined) throw new Error(`the piece has no ${letter}`);
  return found.facing;
}

/** Where the centre with a letter is. */
export function centreSeen(facelets: string, letter: string): Vector {
  return pieceSeen(facelets, letter).at;
}

const ON_SIDE: readonly (readonly [Vector, string])[] = [
  [NORMALS.U, "on top"],
  [NORMALS.R, "on the right"],
  [NORMALS.F, "on the front"],
  [NORMALS.D, "on the bottom"],
  [NORMALS.L, "on the left"],
  [NORMALS.B, "on the back"],
];

/** "on the right", for a direction. */
export function onSide(facing: Vector): string {
  return ON_SIDE.find(([side]) => isSameVector(side, facing))?.[1] ?? "nowhere";
}

/** "top front right", for a place; an edge between upright sides is "middle front right". */
export function placeAt([x, y, z]: Vector): string {
  const height = y === 1 ? "top" : y === -1 ? "bottom" : "middle";
  return [
    height,
    ...(z === 1 ? ["front"] : z === -1 ? ["back"] : []),
    ...(x === -1 ? ["left"] : x === 1 ? ["right"] : []),
  ].join(" ");
}
