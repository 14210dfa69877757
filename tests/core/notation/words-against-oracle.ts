/**
 * Holds the words of one step against the geometric oracle: every statement is
 * taken apart and compared with where the stickers really went. The home of a
 * piece is followed as three (or two) ghost stickers, by the rule of
 * `followed-piece.ts` told in vectors.
 */
import { expect } from "vitest";
import {
  afterTurns,
  dot,
  type FaceLetter,
  isSameVector,
  NORMALS,
  type Sticker,
  type Vector,
} from "../../oracles/geometric-cube";

const FREE_LAYER = NORMALS.D;

/** What the oracle knows at one moment. */
export interface Seen {
  readonly stickers: readonly Sticker[];
  /** The stickers that the piece would show if it were in its home. */
  readonly home: readonly Sticker[];
  /** The centre of the layer that took the home along, if one did. */
  readonly takenBy: Vector | undefined;
  /** Whether the last turn took it away from that layer: it is where the centres say again. */
  readonly isBroken: boolean;
}

function centre(stickers: readonly Sticker[], colour: Vector): Vector {
  const found = stickers.find((sticker) => isSameVector(sticker.piece, colour));
  if (found === undefined) throw new Error("every colour has a centre");
  return found.at;
}

function sum(vectors: readonly Vector[]): Vector {
  const along = (i: 0 | 1 | 2) => vectors.reduce((n, v) => n + v[i], 0);
  return [along(0), along(1), along(2)];
}

/** Where the centres say that the piece belongs. */
function trueHome(
  stickers: readonly Sticker[],
  colours: readonly Vector[],
): readonly Sticker[] {
  const piece = sum(colours);
  const at = sum(colours.map((colour) => centre(stickers, colour)));
  return colours.map((colour) => ({
    piece,
    colour,
    at,
    facing: centre(stickers, colour),
  }));
}

/** The oracle's view before the first turn. */
export function seenAtStart(
  stickers: readonly Sticker[],
  colours: readonly Vector[],
): Seen {
  return {
    stickers,
    home: trueHome(stickers, colours),
    takenBy: undefined,
    isBroken: false,
  };
}

function pieceOf(seen: Seen): readonly Sticker[] {
  const own = seen.home[0]?.piece ?? [0, 0, 0];
  return seen.stickers.filter((sticker) => isSameVector(sticker.piece, own));
}

function placeOf(stickers: readonly Sticker[]): Vector {
  return stickers[0]?.at ?? [0, 0, 0];
}

function areSame(a: readonly Sticker[], b: readonly Sticker[]): boolean {
  return a.every((one) =>
    b.some(
      (other) =>
        isSameVector(one.colour, other.colour) &&
        isSameVector(one.at, other.at) &&
        isSameVector(one.facing, other.facing),
    ),
  );
}

function isFaceToken(token: string): boolean {
  return /^[URFDLB]['2]?$/.test(token);
}

/** Whether a home is always where the centres say: that of a first-layer edge. */
function staysWithCentres(colours: readonly Vector[]): boolean {
  return (
    colours.length === 2 &&
    colours.some((colour) => isSameVector(colour, NORMALS.U))
  );
}

/** The oracle's view after a turn of a face or of the whole cube; a first-layer edge's home is where the centres say after any turn. */
export function seenAfter(before: Seen, token: string): Seen {
  const stickers = afterTurns(before.stickers, token);
  const colours = before.home.map(({ colour }) => colour);
  const fresh: Seen = {
    stickers,
    home: trueHome(stickers, colours),
    takenBy: undefined,
    isBroken: false,
  };
  const now = pieceOf({ ...fresh, stickers });
  if (staysWithCentres(colours) || areSame(now, fresh.home)) return fresh;
  if (!isFaceToken(token))
    return {
      stickers,
      home: afterTurns(before.home, token),
      takenBy: before.takenBy,
      isBroken: false,
    };
  const letter = token.charAt(0) as FaceLetter;
  const layer = before.stickers.find(
    ({ at, facing }) =>
      isSameVector(at, NORMALS[letter]) &&
      isSameVector(facing, NORMALS[letter]),
  )?.colour;
  const isTouched = dot(placeOf(before.home), NORMALS[letter]) === 1;
  if (layer === undefined || !isTouched || isSameVector(layer, FREE_LAYER))
    return { ...before, stickers, isBroken: false };
  if (before.takenBy !== undefined && !isSameVector(before.takenBy, layer))
    return { ...fresh, isBroken: true };
  const home = afterTurns(before.home, token);
  return areSame(home, fresh.home)
    ? fresh
    : { stickers, home, takenBy: layer, isBroken: false };
}

const WORD_MEANS: Readonly<Record<string, Vector>> = {
  top: NORMALS.U,
  bottom: NORMALS.D,
  front: NORMALS.F,
  back: NORMALS.B,
  left: NORMALS.L,
  right: NORMALS.R,
  middle: [0, 0, 0],
};

/** The place that words name. */
function placeNamed(words: string): Vector {
  return sum(
    words.split(" ").map((word) => {
      const vector = WORD_MEANS[word];
      if (vector === undefined) throw new Error(`"${word}" names no place`);
      return vector;
    }),
  );
}

function climb(from: Vector, to: Vector): number {
  return Math.sign(to[1] - from[1]);
}

const CLIMB_SAID: Readonly<Record<string, number>> = { up: 1, down: -1 };

/** In the free layer, on the sides of its home: one step away from it. */
function isBeside(seen: Seen): boolean {
  const down = centre(seen.stickers, FREE_LAYER);
  const at = placeOf(pieceOf(seen));
  const home = placeOf(seen.home);
  const oneDown = sum([home, down, down]);
  return seen.takenBy === undefined && isSameVector(at, oneDown);
}

/**
 * Checks what is said about the piece and its home.
 *
 * Shape: `words` is what stands between "; " and the full stop, with the piece
 *        called `noun`, "corner" or "edge".
 */
export function expectTrueWords(
  words: string,
  noun: string,
  before: Seen,
  after: Seen,
): void {
  const p0 = placeOf(pieceOf(before));
  const p1 = placeOf(pieceOf(after));
  const h0 = placeOf(before.home);
  const h1 = placeOf(after.home);
  const moves = !isSameVector(p0, p1);
  const homeMoves = !isSameVector(h0, h1);
  const wasHome = isSameVector(p0, h0);
  const isHome = isSameVector(p1, h1);
  const isRight = areSame(pieceOf(after), after.home);
  const why = `"${words}"`;

  const expectMotion = (
    said: string,
    from: Vector,
    to: Vector,
    isBack: boolean,
  ) => {
    const back = /^goes back (up|down)$/.exec(said);
    const bare = /^comes (up|down)$/.exec(said);
    const toPlace = /^(goes|goes back|comes up|comes down) to the (.+)$/.exec(
      said,
    );
    const [, verb = "", place = ""] = toPlace ?? [];
    expect(back ?? bare ?? toPlace, `${why}: a motion`).not.toBeNull();
    const way = back?.[1] ?? bare?.[1] ?? verb.replace("comes ", "");
    expect(climb(from, to), why).toBe(CLIMB_SAID[way] ?? 0);
    if (toPlace !== null) expect(placeNamed(place), why).toEqual(to);
    expect(said.startsWith("goes back "), why).toBe(isBack);
  };
  const expectHomeMotion = (said: string) =>
    expectMotion(
      said,
      h0,
      h1,
      before.takenBy !== undefined && after.takenBy === undefined,
    );

  const apart = new RegExp(
    `^its home comes apart(?:, the ${noun} (.+))?$`,
  ).exec(words);
  expect(apart !== null, why).toBe(after.isBroken);
  if (apart !== null) {
    expect(apart[1] !== undefined, why).toBe(moves);
    if (apart[1] !== undefined) expectMotion(apart[1], p0, p1, false);
    return;
  }

  const together = new RegExp(
    `^${noun} and home (rise|go down|go to the (.+)) together$`,
  ).exec(words);
  if (together !== null) {
    expect([wasHome, isHome, moves, homeMoves], why).toEqual([
      true,
      true,
      true,
      true,
    ]);
    const [, verb = "", place] = together;
    expect(climb(p0, p1), why).toBe(
      verb === "rise" ? 1 : verb === "go down" ? -1 : 0,
    );
    if (place !== undefined) expect(placeNamed(place), why).toEqual(p1);
    return;
  }

  const arrival = new RegExp(
    `^(?:the ${noun} (slides into its home|goes home)|its home comes to the ${noun})(, but (?:twisted|flipped))?$`,
  ).exec(words);
  if (arrival !== null) {
    expect([wasHome, isHome], why).toEqual([false, true]);
    expect(moves, why).toBe(arrival[1] !== undefined);
    if (arrival[1] === "slides into its home")
      expect(after.takenBy, why).toBeDefined();
    if (arrival[1] === "goes home") expect(after.takenBy, why).toBeUndefined();
    expect(isRight, why).toBe(arrival[2] === undefined);
    if (arrival[2] !== undefined)
      expect(arrival[2]).toBe(
        noun === "corner" ? ", but twisted" : ", but flipped",
      );
    return;
  }

  if (
    words === `the ${noun} stays home` ||
    words === `the ${noun} stays as it is`
  ) {
    expect([moves, wasHome, isHome], why).toEqual([false, true, true]);
    expect(isRight, why).toBe(words.endsWith("home"));
    return;
  }
  // From here on nothing may be left out: it neither is nor comes home.
  expect(isHome, why).toBe(false);

  if (words === `the ${noun} leaves its home`) {
    expect([wasHome, moves, homeMoves], why).toEqual([true, true, false]);
    return;
  }
  const without = new RegExp(`^its home (.+) without the ${noun}$`).exec(words);
  if (without !== null) {
    expect([wasHome, moves, homeMoves], why).toEqual([true, false, true]);
    expectHomeMotion(without[1] ?? "");
    return;
  }
  expect(wasHome, why).toBe(false);

  const [, homeSaid, pieceSaid] =
    new RegExp(`^(?:its home (.+?))?(?:(?:, |^)the ${noun} (.+))?$`).exec(
      words,
    ) ?? [];
  expect(homeSaid !== undefined, why).toBe(homeMoves);
  if (homeSaid !== undefined) expectHomeMotion(homeSaid);
  if (pieceSaid === undefined) {
    expect(moves, why).toBe(false);
    expect(homeMoves, why).toBe(true);
    return;
  }

  const waits = /^waits(?: (under|above|next to) its home)?$/.exec(pieceSaid);
  const comes = /^comes (under|above|next to) (?:its home|it)$/.exec(pieceSaid);
  expect(moves, why).toBe(waits === null);
  if (waits !== null || comes !== null) {
    const side = waits?.[1] ?? comes?.[1];
    expect(isBeside(after), why).toBe(side !== undefined);
    if (side !== undefined)
      expect(Math.sign(p1[1] - h1[1]), why).toBe(
        side === "under" ? -1 : side === "above" ? 1 : 0,
      );
    return;
  }
  if (pieceSaid === "steps aside") {
    expect([isBeside(before), isBeside(after)], why).toEqual([true, false]);
    expect(climb(p0, p1), why).toBe(0);
    return;
  }
  expect(isBeside(after), why).toBe(false);
  expectMotion(pieceSaid, p0, p1, false);
}

/** Whether a corner and an edge show each of the edge's colours on the same side: they are next to each other as at home. */
function areJoined(corner: Seen, edge: Seen): boolean {
  const ofCorner = pieceOf(corner);
  return pieceOf(edge).every(({ colour, facing }) =>
    ofCorner.some(
      (one) =>
        isSameVector(one.colour, colour) && isSameVector(one.facing, facing),
    ),
  );
}

/** Checks what is said about a corner and the edge of its slot: whether they are joined, whether they are home, and every place that is named. */
export function expectTruePairWords(
  words: string,
  [cornerBefore, edgeBefore]: readonly [Seen, Seen],
  [corner, edge]: readonly [Seen, Seen],
): void {
  const why = `"${words}"`;
  const isHome = (seen: Seen) => areSame(pieceOf(seen), seen.home);
  const wasJoined = areJoined(cornerBefore, edgeBefore);
  const isJoined = areJoined(corner, edge);
  expect(/pair|come together/.test(words), why).toBe(isJoined);
  expect(words.includes("come together"), why).toBe(isJoined && !wasJoined);
  expect(/\bpart$/.test(words), why).toBe(wasJoined && !isJoined);
  expect(
    /pair and home|pair (?:slides into|goes) (?:its )?home|stays home|comes to the pair|in their home/.test(
      words,
    ),
    why,
  ).toBe(isHome(corner) && isHome(edge) && isJoined);

  const moved = (before: Seen, after: Seen) =>
    !isSameVector(placeOf(pieceOf(before)), placeOf(pieceOf(after)));
  for (const [noun, before, after] of [
    ["pair", cornerBefore, corner],
    ["corner", cornerBefore, corner],
    ["edge", edgeBefore, edge],
  ] as const) {
    const said = new RegExp(
      `(?<!of )the ${noun} (?:goes|comes (up|down)) to the ([a-z ]+?)(?: and|,|$)`,
    ).exec(words);
    if (said === null) continue;
    expect(moved(before, after), why).toBe(true);
    const [, way = "", place = ""] = said;
    expect(placeNamed(place), why).toEqual(placeOf(pieceOf(after)));
    expect(climb(placeOf(pieceOf(before)), placeOf(pieceOf(after))), why).toBe(
      CLIMB_SAID[way] ?? 0,
    );
  }
  const home = /home (?:of the pair )?(?:comes|goes back) (up|down)/.exec(
    words,
  );
  if (home !== null)
    expect(climb(placeOf(cornerBefore.home), placeOf(corner.home)), why).toBe(
      CLIMB_SAID[home[1] ?? ""],
    );
}

/** Checks only that a named place is where the piece now is, for turns of the whole cube. */
export function expectTruePlace(
  words: string,
  noun: string,
  after: Seen,
): void {
  const [, place = ""] =
    new RegExp(`^the ${noun} comes to the (.+)$`).exec(words) ?? [];
  expect(placeNamed(place), `"${words}"`).toEqual(placeOf(pieceOf(after)));
}
