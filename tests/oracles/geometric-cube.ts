/**
 * A slow cube that knows no tables: 54 stickers as vectors, turned by rotation
 * matrices, with a little reader of notation of its own. It stands outside the
 * program: it imports nothing of it, and nothing of the program imports it.
 *
 * Axes: x to the learner's right, y up, z towards the learner.
 * Source: WCA Regulations, Article 12, for the directions; `M E S` as in
 *         common practice: M turns with L, E with D, S with F.
 */

/** A vector of integers, or of −1, 0 and 1 where it names a place. */
export type Vector = readonly [x: number, y: number, z: number];

/** One sticker: on which piece, where it sits and faces, and where it came from. */
export interface Sticker {
  /** Where its piece is when solved: the piece's identity. */
  readonly piece: Vector;
  /** Where it faces when solved: its colour. */
  readonly colour: Vector;
  /** Where its piece is now, each coordinate −1, 0 or 1. */
  readonly at: Vector;
  /** Where it faces now. */
  readonly facing: Vector;
}

/** Outward directions of the six faces. */
export const NORMALS = {
  U: [0, 1, 0],
  R: [1, 0, 0],
  F: [0, 0, 1],
  D: [0, -1, 0],
  L: [-1, 0, 0],
  B: [0, 0, -1],
} as const satisfies Readonly<Record<string, Vector>>;

export type FaceLetter = keyof typeof NORMALS;

const FACE_LETTERS: readonly FaceLetter[] = ["U", "R", "F", "D", "L", "B"];

/** For each face as seen from outside: where its columns and its rows run. */
const READING: Readonly<Record<FaceLetter, readonly [Vector, Vector]>> = {
  U: [NORMALS.R, NORMALS.F],
  R: [NORMALS.B, NORMALS.D],
  F: [NORMALS.R, NORMALS.D],
  D: [NORMALS.R, NORMALS.B],
  L: [NORMALS.F, NORMALS.D],
  B: [NORMALS.L, NORMALS.D],
};

type Matrix = readonly [Vector, Vector, Vector];

interface OracleTurn {
  /** Clockwise is meant as seen from the tip of this vector. */
  readonly axis: Vector;
  /** Which layers turn, by how far out they are along the axis. */
  readonly layers: readonly number[];
  readonly quarters: number;
}

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function isSameVector(a: Vector, b: Vector): boolean {
  return a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
}

/** A quarter turn clockwise as seen from the tip of a unit axis: −90° by Rodrigues' formula. */
function clockwise([x, y, z]: Vector): Matrix {
  return [
    [x * x, x * y + z, x * z - y],
    [y * x - z, y * y, y * z + x],
    [z * x + y, z * y - x, z * z],
  ];
}

function times(matrix: Matrix, v: Vector): Vector {
  const [x, y, z] = matrix.map((row) => dot(row, v));
  if (x === undefined || y === undefined || z === undefined)
    throw new Error("a matrix has three rows");
  // Adding 0 makes a −0 a 0.
  return [x + 0, y + 0, z + 0];
}

/** A solved cube: 54 stickers in the order of the usual string. */
export function solvedStickers(): readonly Sticker[] {
  return FACE_LETTERS.flatMap((letter) => {
    const [columns, rows] = READING[letter];
    const normal = NORMALS[letter];
    return [-1, 0, 1].flatMap((row) =>
      [-1, 0, 1].map((column): Sticker => {
        const at: Vector = [
          normal[0] + column * columns[0] + row * rows[0],
          normal[1] + column * columns[1] + row * rows[1],
          normal[2] + column * columns[2] + row * rows[2],
        ];
        return { piece: at, colour: normal, at, facing: normal };
      }),
    );
  });
}

function isFaceLetter(text: string): text is FaceLetter {
  return FACE_LETTERS.some((letter) => letter === text);
}

const LETTER_MEANS: Readonly<
  Record<string, readonly [FaceLetter, readonly number[]]>
> = {
  M: ["L", [0]],
  E: ["D", [0]],
  S: ["F", [0]],
  x: ["R", [-1, 0, 1]],
  y: ["U", [-1, 0, 1]],
  z: ["F", [-1, 0, 1]],
};

function readTurn(token: string): OracleTurn {
  const [, letter = "", wide = "", suffix = ""] =
    /^([URFDLBMESxyz])(w?)(2|'|)$/.exec(token) ?? [];
  const quarters = suffix === "2" ? 2 : suffix === "'" ? 3 : 1;
  if (isFaceLetter(letter))
    return {
      axis: NORMALS[letter],
      layers: wide === "w" ? [0, 1] : [1],
      quarters,
    };
  const meaning = LETTER_MEANS[letter];
  if (meaning === undefined || wide !== "")
    throw new Error(`the oracle cannot read "${token}"`);
  return { axis: NORMALS[meaning[0]], layers: meaning[1], quarters };
}

function turnOnce(
  stickers: readonly Sticker[],
  turn: OracleTurn,
): readonly Sticker[] {
  const matrix = clockwise(turn.axis);
  return stickers.map((sticker) =>
    turn.layers.includes(dot(sticker.at, turn.axis))
      ? {
          ...sticker,
          at: times(matrix, sticker.at),
          facing: times(matrix, sticker.facing),
        }
      : sticker,
  );
}

/**
 * The stickers after turns written with spaces between, first one first.
 *
 * Errors: throws on what it cannot read; a test of ours wrote it.
 */
export function afterTurns(
  stickers: readonly Sticker[],
  text: string,
): readonly Sticker[] {
  let now = stickers;
  for (const token of text.split(" ").filter((part) => part !== "")) {
    const turn = readTurn(token);
    for (let i = 0; i < turn.quarters; i++) now = turnOnce(now, turn);
  }
  return now;
}

/** The usual 54-letter string: each place shows the face its sticker came from. */
export function faceletString(stickers: readonly Sticker[]): string {
  return solvedStickers()
    .map((place) => {
      const found = stickers.find(
        (sticker) =>
          isSameVector(sticker.at, place.at) &&
          isSameVector(sticker.facing, place.facing),
      );
      return FACE_LETTERS.find(
        (letter) => found && isSameVector(NORMALS[letter], found.colour),
      );
    })
    .join("");
}
