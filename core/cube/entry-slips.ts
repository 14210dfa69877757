/**
 * Slips of the finger or the eye that would explain 54 stickers which no cube
 * shows: every small change that makes them possible, the likeliest first.
 *
 * Tried out rather than reasoned about: a few thousand changed copies are
 * looked at in a few milliseconds, and a change that mends the whole cube is
 * hardly ever there by chance. Where many do (any edge turned over mends a
 * flipped one) the one that leaves the most pieces placed comes first, for
 * cubes that are shown are mostly partly solved.
 */
import { faceletFace } from "./facelets";
import { FACES, type Face } from "./faces";
import {
  CENTRE_FACELETS,
  CORNER_KIND,
  EDGE_KIND,
  placedIfPossible,
  type StickerCodes,
} from "./sticker-codes";

/**
 * Kinds of slips, the likeliest first: one sticker; a face entered turned, or
 * as if seen in a mirror; two faces in each other's place; two colours taken
 * for each other throughout; the stickers of one piece in each other's place;
 * any two stickers.
 */
export const SLIP_KINDS = [
  "sticker",
  "face-turned",
  "face-mirrored",
  "faces-exchanged",
  "colours-exchanged",
  "piece-turned",
  "two-stickers",
] as const;

/** One change that makes the stickers those of a possible cube. */
export interface Slip<Colour = number> {
  readonly kind: (typeof SLIP_KINDS)[number];
  /** Every facelet that may have been entered wrongly, in reading order. */
  readonly facelets: readonly number[];
  /** What the changed facelets would carry. Shape: facelet → colour, or its code. */
  readonly changes: ReadonlyMap<number, Colour>;
  /** How many pieces would be placed. Shape: 0–20. */
  readonly placed: number;
}

const ALL_FACELETS = Array.from({ length: 54 }, (_, at) => at);

/** Shape: for each new place within a face, the old one. */
const QUARTER = [6, 3, 0, 7, 4, 1, 8, 5, 2];
const MIRROR = [2, 1, 0, 5, 4, 3, 8, 7, 6];

/** Every single slip that makes a full set of stickers possible, the likeliest first. */
export function slipsExplaining(codes: StickerCodes): readonly Slip[] {
  const found = new Map<string, Slip>();
  const attempt = (
    kind: Slip["kind"],
    changes: ReadonlyMap<number, number>,
  ): void => {
    const changed = codes.slice();
    for (const [facelet, colour] of changes) changed[facelet] = colour;
    const placed = placedIfPossible(changed);
    if (placed === undefined) return;
    const real = [...changes].filter(([at, colour]) => codes[at] !== colour);
    const key = real.map(([at, colour]) => `${at}=${colour}`).join(" ");
    // The same change under two names is told as the likelier.
    if (real.length === 0 || found.has(key)) return;
    const facelets = wholeFacelets(
      kind,
      real.map(([at]) => at),
    );
    found.set(key, {
      kind,
      facelets: [...facelets].sort((a, b) => a - b),
      changes: new Map(real),
      placed,
    });
  };
  attemptSticker(codes, attempt);
  // One wrong sticker is so much likelier that two are not looked for beside it.
  if (found.size === 0) attemptTwoStickers(codes, attempt);
  attemptFaces(codes, attempt);
  attemptColours(codes, attempt);
  attemptCorners(codes, attempt);
  return [...found.values()].sort(
    (a, b) =>
      SLIP_KINDS.indexOf(a.kind) - SLIP_KINDS.indexOf(b.kind) ||
      b.placed - a.placed,
  );
}

/** Whatever may have been entered wrongly: whole faces and pieces where they were mistaken as a whole. */
function wholeFacelets(
  kind: Slip["kind"],
  changed: readonly number[],
): readonly number[] {
  switch (kind) {
    case "face-turned":
    case "face-mirrored":
    case "faces-exchanged":
      return ALL_FACELETS.filter((at) =>
        changed.some((other) => faceletFace(other) === faceletFace(at)),
      );
    case "piece-turned":
      return pieceHolding(changed) ?? changed;
    case "sticker":
    case "colours-exchanged":
    case "two-stickers":
      return changed;
  }
}

function pieceHolding(facelets: readonly number[]) {
  return [...EDGE_KIND.facelets, ...CORNER_KIND.facelets].find((piece) =>
    facelets.every((at) => piece.includes(at)),
  );
}

/**
 * The slips worth pointing at: a few that stand out. None where so many would
 * do that pointing at three of them would only mislead.
 */
export function standingOut<Colour>(
  slips: readonly Slip<Colour>[],
): readonly Slip<Colour>[] {
  const [first] = slips;
  if (first === undefined) return [];
  // That a whole side or a colour fits again is no chance: nothing else is named.
  const isSmall = SMALL_KINDS.includes(first.kind);
  const named = isSmall
    ? slips
    : slips.filter(({ kind }) => kind === first.kind);
  if (named.length <= MOST_POINTED_AT) return named;
  // On a cube that is all mixed up a piece is home by chance.
  if (first.placed < MOSTLY_SOLVED) return [];
  const alike = named.filter(
    ({ kind, placed }) => kind === first.kind && placed === first.placed,
  );
  return alike.length <= MOST_POINTED_AT ? alike : [];
}

/** Kinds that may also mend a cube by chance. */
const SMALL_KINDS: readonly Slip["kind"][] = ["piece-turned", "two-stickers"];

/** From so many placed pieces on, one more is taken for a sign. Units: pieces of 20. */
const MOSTLY_SOLVED = 12;

/** More places than this are no help to look at. */
const MOST_POINTED_AT = 3;

type Attempt = (
  kind: Slip["kind"],
  changes: ReadonlyMap<number, number>,
) => void;

/** Colours that are there too often, once for each time, and those too seldom. */
function countFaults(codes: StickerCodes): {
  readonly over: readonly number[];
  readonly under: readonly number[];
} {
  const over: number[] = [];
  const under: number[] = [];
  for (let colour = 0; colour < 6; colour++) {
    const count = codes.filter((code) => code === colour).length;
    for (let i = 9; i < count; i++) over.push(colour);
    for (let i = count; i < 9; i++) under.push(colour);
  }
  return { over, under };
}

/** One sticker of the colour that is there too often, in the colour that is missing. */
function attemptSticker(codes: StickerCodes, attempt: Attempt): void {
  const { over, under } = countFaults(codes);
  const [tooOften] = over;
  const [missing] = under;
  if (tooOften === undefined || missing === undefined || over.length > 1)
    return;
  codes.forEach((colour, at) => {
    if (colour === tooOften) attempt("sticker", new Map([[at, missing]]));
  });
}

/**
 * Two stickers given other colours. The counts decide which: whatever is there
 * too often must become what is there too seldom.
 */
function attemptTwoStickers(codes: StickerCodes, attempt: Attempt): void {
  const { over, under } = countFaults(codes);
  if (over.length > 2) return;
  const [o1, o2] = over;
  const [u1, u2] = under;
  for (let i = 0; i < 54; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [codes[i]!, codes[j]!];
      if (o1 === undefined || u1 === undefined) {
        if (a !== b) attempt(kindOfPair(i, j), pair(i, b, j, a));
      } else if (o2 === undefined || u2 === undefined) {
        if (a === o1) attempt("two-stickers", pair(i, b, j, u1));
        if (b === o1) attempt("two-stickers", pair(i, u1, j, a));
      } else if ((a === o1 && b === o2) || (a === o2 && b === o1)) {
        attempt("two-stickers", pair(i, u1, j, u2));
        attempt("two-stickers", pair(i, u2, j, u1));
      }
    }
  }
}

function pair(
  i: number,
  colourAtI: number,
  j: number,
  colourAtJ: number,
): ReadonlyMap<number, number> {
  return new Map([
    [i, colourAtI],
    [j, colourAtJ],
  ]);
}

function kindOfPair(i: number, j: number): Slip["kind"] {
  return pieceHolding([i, j]) === undefined ? "two-stickers" : "piece-turned";
}

function attemptFaces(codes: StickerCodes, attempt: Attempt): void {
  const moved = (from: Face, to: Face, order: readonly number[]) =>
    order.flatMap((old, place): readonly (readonly [number, number])[] =>
      place === 4
        ? []
        : [
            [
              9 * FACES.indexOf(to) + place,
              codes[9 * FACES.indexOf(from) + old]!,
            ],
          ],
    );
  const same = [0, 1, 2, 3, 4, 5, 6, 7, 8];
  for (const face of FACES) {
    let order = QUARTER;
    for (let quarters = 1; quarters < 4; quarters++) {
      attempt("face-turned", new Map(moved(face, face, order)));
      order = order.map((old) => QUARTER[old]!);
    }
    attempt("face-mirrored", new Map(moved(face, face, MIRROR)));
    for (const other of FACES.slice(0, FACES.indexOf(face)))
      attempt(
        "faces-exchanged",
        new Map([...moved(face, other, same), ...moved(other, face, same)]),
      );
  }
}

function attemptColours(codes: StickerCodes, attempt: Attempt): void {
  for (let a = 0; a < 6; a++) {
    for (let b = 0; b < a; b++) {
      const changes = new Map<number, number>();
      codes.forEach((colour, at) => {
        if (CENTRE_FACELETS.includes(at)) return;
        if (colour === a) changes.set(at, b);
        if (colour === b) changes.set(at, a);
      });
      attempt("colours-exchanged", changes);
    }
  }
}

function attemptCorners(codes: StickerCodes, attempt: Attempt): void {
  for (const facelets of CORNER_KIND.facelets)
    for (const by of [1, 2])
      attempt(
        "piece-turned",
        new Map(
          facelets.map(
            (at, k) => [at, codes[facelets[(k + by) % 3]!]!] as const,
          ),
        ),
      );
}
