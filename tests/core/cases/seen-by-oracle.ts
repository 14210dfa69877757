import {
  afterTurns,
  dot,
  isSameVector,
  solvedStickers,
} from "../../oracles/geometric-cube";

const PLACES = solvedStickers();

const SOURCES = new Map<string, readonly number[]>();

/**
 * What turns do to a 54-letter string, found by the geometric oracle.
 *
 * Shape: for each place, the place its sticker came from.
 */
export function sourcesOf(text: string): readonly number[] {
  const sources = SOURCES.get(text) ?? findSources(text);
  SOURCES.set(text, sources);
  return sources;
}

function findSources(text: string): readonly number[] {
  const turned = afterTurns(PLACES, text);
  return PLACES.map((place) =>
    turned.findIndex(
      (sticker) =>
        isSameVector(sticker.at, place.at) &&
        isSameVector(sticker.facing, place.facing),
    ),
  );
}

/** A 54-letter string after turns. */
export function carried(facelets: string, sources: readonly number[]): string {
  return sources.map((source) => facelets[source] ?? "?").join("");
}

// Stickers of one piece sit at the same place: three for a corner, two for an
// edge, and the centre of a face lies straight under its facing.
const PIECES = PLACES.filter(
  (place, i) => PLACES.findIndex((p) => isSameVector(p.at, place.at)) === i,
)
  .map((place) =>
    PLACES.flatMap((p, i) => (isSameVector(p.at, place.at) ? [i] : [])),
  )
  .filter((stickers) => stickers.length > 1);

const CENTRE_OF = PLACES.map((place) =>
  PLACES.findIndex(
    (p) => isSameVector(p.facing, place.facing) && dot(p.at, p.at) === 1,
  ),
);

/** The pieces whose every sticker matches its centre, each as its letters in alphabetical order. */
export function placedPieces(facelets: string): ReadonlySet<string> {
  return new Set(
    PIECES.filter((stickers) =>
      stickers.every((i) => facelets[i] === facelets[CENTRE_OF[i] ?? -1]),
    ).map((stickers) =>
      stickers
        .map((i) => facelets[i])
        .toSorted()
        .join(""),
    ),
  );
}
