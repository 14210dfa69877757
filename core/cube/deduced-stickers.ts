/**
 * What must follow from the stickers that are entered so far: the third
 * sticker of a corner when two are told, the last pieces of a colour.
 *
 * Worked out from the pieces: where each could still lie, with every other
 * piece somewhere else (a perfect matching), rather than by a list of rules of
 * thumb, which would miss some. What only *turning* rules out (the last corner
 * cannot be twisted) is left open on purpose: filled in from that, a cube that
 * was put together wrongly would never be found out.
 */
import { readEnteredStickers, type EnteredStickers } from "./entered-stickers";
import {
  CENTRE_FACELETS,
  CORNER_KIND,
  EDGE_KIND,
  type PieceKind,
} from "./sticker-codes";

/** A piece as it could lie at a position: the colours it would show there. */
interface Candidate<Colour extends string> {
  readonly piece: number;
  readonly shows: readonly Colour[];
}

/**
 * The missing stickers that can be only of one colour.
 *
 * Shape: facelet → colour, for facelets that are not told; empty until all six
 *        centres are, and where the stickers already contradict each other.
 */
export function deducedStickers<Colour extends string>(
  entered: EnteredStickers<Colour>,
): ReadonlyMap<number, Colour> {
  const deduced = new Map<number, Colour>();
  const centres = CENTRE_FACELETS.map((at) => entered[at]).filter(
    (colour) => colour !== undefined,
  );
  const read = readEnteredStickers(entered);
  if (
    centres.length < 6 ||
    (!read.ok && read.error.code !== "stickers-missing")
  )
    return deduced;
  for (const kind of [CORNER_KIND, EDGE_KIND]) {
    const possible = possiblePieces(kind, entered, centres);
    for (const [position, candidates] of possible.entries()) {
      for (const [k, at] of kind.facelets[position]!.entries()) {
        const colours = new Set(candidates.map(({ shows }) => shows[k]!));
        const [only, another] = colours;
        if (entered[at] === undefined && only !== undefined && !another)
          deduced.set(at, only);
      }
    }
  }
  return deduced;
}

/** For each position, every piece that can lie there, in every way it can. */
function possiblePieces<Colour extends string>(
  { facelets, faces }: PieceKind,
  entered: EnteredStickers<Colour>,
  centres: readonly Colour[],
): readonly (readonly Candidate<Colour>[])[] {
  const agreeing = facelets.map((places) =>
    faces.flatMap((own, piece) =>
      own.flatMap((_, turned): Candidate<Colour>[] => {
        const shows = own.map(
          (_, k) => centres[own[(k + own.length - turned) % own.length]!]!,
        );
        return places.every(
          (at, k) => entered[at] === undefined || entered[at] === shows[k],
        )
          ? [{ piece, shows }]
          : [];
      }),
    ),
  );
  const canLie = agreeing.map(
    (candidates) => new Set(candidates.map(({ piece }) => piece)),
  );
  return agreeing.map((candidates, position) => {
    const lasting = [...canLie[position]!].filter((piece) =>
      canAllLie(
        canLie.map((pieces, at) =>
          at === position ? new Set([piece]) : pieces,
        ),
      ),
    );
    return candidates.filter(({ piece }) => lasting.includes(piece));
  });
}

/**
 * Whether every position can have a piece of its own.
 *
 * Source: augmenting paths for bipartite matching (H. W. Kuhn, 1955).
 */
function canAllLie(canLie: readonly ReadonlySet<number>[]): boolean {
  const positionOf = new Map<number, number>();
  const seat = (position: number, tried: Set<number>): boolean => {
    for (const piece of canLie[position]!) {
      if (tried.has(piece)) continue;
      tried.add(piece);
      const before = positionOf.get(piece);
      if (before !== undefined && !seat(before, tried)) continue;
      positionOf.set(piece, position);
      return true;
    }
    return false;
  };
  return canLie.every((_, position) => seat(position, new Set()));
}
