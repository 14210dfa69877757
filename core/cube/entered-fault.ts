/**
 * Why no cube can look as somebody entered it, as far as the middles, the
 * counts and single pieces say it. The order is that in which a person can do
 * something about it.
 */
import type { Slip } from "./entry-slips";
import {
  CENTRE_FACELETS,
  NO_STICKER,
  type PieceKind,
  pieceSeenAt,
  type StickerCodes,
} from "./sticker-codes";

/** How often a colour was told where nine are right. */
export interface ColourCount<Colour extends string> {
  readonly colour: Colour;
  readonly count: number;
}

/** What turning can never do, named as in `CubeError`. */
export const ASSEMBLY_FAULTS = [
  "corner-twisted",
  "edge-flipped",
  "pieces-swapped",
] as const;

/** One thing that turning can never do. */
export type AssemblyFault = (typeof ASSEMBLY_FAULTS)[number];

/**
 * Each way in which entered stickers are no cube.
 *
 * Shape: `facelets` are where the fault shows, in reading order; `slips`, once
 *        all 54 are told, the single slips that would explain it.
 */
export type EnteredFault<Colour extends string> =
  | {
      readonly code: "centres-alike";
      readonly colour: Colour;
      readonly facelets: readonly number[];
      readonly slips: readonly Slip<Colour>[];
    }
  | {
      readonly code: "colour-of-no-centre";
      readonly colour: Colour;
      readonly facelets: readonly number[];
    }
  | {
      readonly code: "colour-count";
      /** More than nine of each of these. */
      readonly tooMany: readonly ColourCount<Colour>[];
      /** Fewer than nine of each of these; empty while stickers are missing. */
      readonly tooFew: readonly ColourCount<Colour>[];
      readonly facelets: readonly number[];
      readonly slips: readonly Slip<Colour>[];
    }
  | {
      readonly code: "colours-never-meet";
      readonly kind: "corner" | "edge";
      /** Two stickers of the piece: of one colour, or of opposite colours. */
      readonly colours: readonly [Colour, Colour];
      readonly facelets: readonly number[];
      readonly slips: readonly Slip<Colour>[];
    }
  | {
      readonly code: "corner-mirrored";
      /** Shape: as they go round clockwise. */
      readonly colours: readonly Colour[];
      readonly facelets: readonly number[];
      readonly slips: readonly Slip<Colour>[];
    }
  | {
      readonly code: "piece-twice";
      readonly kind: "corner" | "edge";
      readonly colours: readonly Colour[];
      /** Where it was met first and again. */
      readonly places: readonly [readonly number[], readonly number[]];
      readonly facelets: readonly number[];
      /** The piece of this kind that is nowhere; undefined while stickers are missing, or for several. */
      readonly missing: readonly Colour[] | undefined;
      readonly slips: readonly Slip<Colour>[];
    }
  | {
      readonly code: "stickers-missing";
      readonly facelets: readonly number[];
    }
  | {
      readonly code: "put-together-wrongly";
      /** At least one, in the order of `ASSEMBLY_FAULTS`. */
      readonly broken: readonly AssemblyFault[];
      /** By how many thirds, clockwise, one corner is turned too far. Shape: 0–2. */
      readonly cornerThirds: number;
      readonly facelets: readonly number[];
      readonly slips: readonly Slip<Colour>[];
    };

/** Every facelet, in reading order. */
const ALL_FACELETS = Array.from({ length: 54 }, (_, at) => at);

/** Stickers as they are told, with the means to say more about them. */
export interface Entry<Colour extends string> {
  /** The colours of the centres, then any others; a colour's index is its code. */
  readonly colours: readonly Colour[];
  readonly codes: StickerCodes;
  /** Whether all 54 are told. */
  readonly isWhole: boolean;
  /** What would explain the stickers; none while some are missing. */
  readonly slips: () => readonly Slip<Colour>[];
}

/** What is wrong with the centres or the counts, if anything. */
export function faultOfColours<Colour extends string>({
  colours,
  codes,
  isWhole,
  slips,
}: Entry<Colour>): EnteredFault<Colour> | undefined {
  const at = (code: number) => ALL_FACELETS.filter((i) => codes[i] === code);
  const centres = CENTRE_FACELETS.map((facelet) => codes[facelet]!);
  for (const [code, colour] of colours.entries()) {
    const alike = CENTRE_FACELETS.filter((facelet) => codes[facelet] === code);
    if (alike.length > 1)
      return {
        code: "centres-alike",
        colour,
        facelets: alike.sort((a, b) => a - b),
        slips: slips(),
      };
  }
  if (!centres.includes(NO_STICKER)) {
    const [stranger] = colours.slice(6);
    if (stranger !== undefined)
      return {
        code: "colour-of-no-centre",
        colour: stranger,
        facelets: at(6),
      };
  }
  const counts = colours.map((colour, code) => ({
    colour,
    code,
    count: at(code).length,
  }));
  const told = (list: typeof counts) =>
    list.map(({ colour, count }) => ({ colour, count }));
  const tooMany = counts.filter(({ count }) => count > 9);
  return tooMany.length === 0
    ? undefined
    : {
        code: "colour-count",
        tooMany: told(tooMany),
        tooFew: isWhole ? told(counts.filter(({ count }) => count < 9)) : [],
        facelets: tooMany.flatMap(({ code }) => at(code)).sort((a, b) => a - b),
        slips: slips(),
      };
}

/**
 * The first piece of a kind that no cube has, or that is there twice, if any.
 *
 * Shape: `faceOf` says where each colour's centre is; see `facesOfColours`.
 */
export function faultOfPieces<Colour extends string>(
  kind: PieceKind,
  { colours, codes, isWhole, slips }: Entry<Colour>,
  faceOf: Uint8Array,
): EnteredFault<Colour> | undefined {
  const stickers = kind.kind === "corner" ? 3 : 2;
  const named = (code: number) => colours[code]!;
  const seen = kind.facelets.map((_, position) =>
    pieceSeenAt(kind, position, codes, faceOf),
  );
  for (const [position, places] of kind.facelets.entries()) {
    const own = places.map((at) => codes[at]!);
    if (own.includes(NO_STICKER) || seen[position] !== NO_STICKER) continue;
    const facelets = [...places].sort((a, b) => a - b);
    const never = neverMeeting(own, faceOf);
    return never === undefined
      ? {
          code: "corner-mirrored",
          colours: own.map(named),
          facelets,
          slips: slips(),
        }
      : {
          code: "colours-never-meet",
          kind: kind.kind,
          colours: [named(never[0]), named(never[1])],
          facelets,
          slips: slips(),
        };
  }
  const pieces = seen.map((code) =>
    code === NO_STICKER ? undefined : Math.floor(code / stickers),
  );
  const coloursOfPiece = (piece: number) =>
    kind.faces[piece]!.map((face) => named(faceOf.indexOf(face)));
  for (const [again, piece] of pieces.entries()) {
    const first = pieces.indexOf(piece);
    if (piece === undefined || first === again) continue;
    const places = [kind.facelets[first]!, kind.facelets[again]!] as const;
    const gone = [...kind.faces.keys()].filter(
      (known) => !pieces.includes(known),
    );
    const [missing, another] = gone;
    return {
      code: "piece-twice",
      kind: kind.kind,
      colours: coloursOfPiece(piece),
      places,
      facelets: places.flat().sort((a, b) => a - b),
      missing:
        !isWhole || missing === undefined || another !== undefined
          ? undefined
          : coloursOfPiece(missing),
      slips: slips(),
    };
  }
  return undefined;
}

/** Two colours of a piece that are one, or lie opposite each other. */
function neverMeeting(
  own: readonly number[],
  faceOf: Uint8Array,
): readonly [number, number] | undefined {
  for (const [k, b] of own.entries())
    for (const a of own.slice(0, k))
      // Opposite faces stand three apart in `FACES`.
      if (faceOf[a]! % 3 === faceOf[b]! % 3) return [a, b];
  return undefined;
}
