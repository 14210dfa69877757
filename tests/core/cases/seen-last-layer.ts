/**
 * The last layer read off a picture with the first layer underneath, by the
 * geometric oracle alone: where the last layer's stickers face, and what must
 * go where.
 */
import { dot, type Vector } from "../../oracles/geometric-cube";
import { carried, sourcesOf } from "./seen-by-oracle";
import { facingOf, onSide, piecesSeen, type SeenPiece } from "./seen-pieces";

export type LayerPieces = "corners" | "edges";

/** A piece of the last layer, the place where it belongs, and its angle around the layer. */
export interface LayerPiece {
  readonly at: Vector;
  readonly home: Vector;
  readonly facing: Vector;
  /** Quarters clockwise, seen from above, from the first place told. */
  readonly quarter: number;
}

/** How far clockwise seen from above a place is, in quarters from the right (edges) or the front right (corners). */
function quarterOf([x, , z]: Vector, pieces: LayerPieces): number {
  // From above, x points right and z towards the reader: an angle grows clockwise.
  const angle = Math.atan2(z, x) - (pieces === "corners" ? Math.PI / 4 : 0);
  return (Math.round(angle / (Math.PI / 2)) + 4) % 4;
}

/** The four pieces of one kind, clockwise from the first place told. */
export function layerOf(
  facelets: string,
  pieces: LayerPieces,
): readonly LayerPiece[] {
  const all = piecesSeen(facelets);
  const centres = all.filter(({ stickers }) => stickers.length === 1);
  const count = pieces === "corners" ? 3 : 2;
  const homeOf = ({ stickers }: SeenPiece): Vector => {
    const sum = [0, 1, 2].map((axis) =>
      stickers
        .map(
          ({ carries }) =>
            centres.find((one) => one.stickers[0]?.carries === carries)?.at[
              axis
            ] ?? NaN,
        )
        .reduce((a, b) => a + b, 0),
    );
    return [sum[0] ?? NaN, sum[1] ?? NaN, sum[2] ?? NaN];
  };
  return all
    .filter(({ at, stickers }) => at[1] === 1 && stickers.length === count)
    .map((piece) => ({
      at: piece.at,
      home: homeOf(piece),
      facing: facingOf(piece, "D"),
      quarter: quarterOf(piece.at, pieces),
    }))
    .toSorted((a, b) => a.quarter - b.quarter);
}

/** Rounds of quarters: a piece at each belongs at the next. */
export function roundsSeen(
  facelets: string,
  pieces: LayerPieces,
): readonly (readonly number[])[] {
  const next = layerOf(facelets, pieces).map(({ home }) =>
    quarterOf(home, pieces),
  );
  const rounds: number[][] = [];
  for (let start = 0; start < 4; start++) {
    if (rounds.flat().includes(start)) continue;
    const round = [start];
    for (let at = next[start] ?? start; at !== start; at = next[at] ?? start)
      round.push(at);
    if (round.length > 1) rounds.push(round);
  }
  return rounds;
}

/** How often pieces go around the layer clockwise until each is back where it was: 1 and one less than their number are the two directions. */
export function timesAround(round: readonly number[]): number {
  const steps = round.map(
    (at, i) => ((round[(i + 1) % round.length] ?? at) - at + 4) % 4,
  );
  return steps.reduce((a, b) => a + b, 0) / 4;
}

/**
 * The same look above a cube turned under it by 0 to 3 quarters: the layer
 * shows the same, and all homes are elsewhere.
 */
export function turnedUnder(facelets: string): readonly string[] {
  return ["", "y U'", "y2 U2", "y' U"].map((turns) =>
    carried(facelets, sourcesOf(turns)),
  );
}

/** Which way a corner must turn so that its last-layer sticker comes up. */
export function mustTurn({ at, facing }: LayerPiece): string {
  // The triple product of up, facing and the corner itself: positive where the
  // sticker went from up to its side anticlockwise, seen from outside.
  const [fx, fy, fz] = facing;
  const crossed: Vector = [fz, 0, -fx];
  if (fy !== 0) return "not at all";
  return dot(crossed, at) > 0 ? "clockwise" : "anticlockwise";
}

const NAMES: Readonly<Record<LayerPieces, readonly string[]>> = {
  corners: ["front right", "front left", "back left", "back right"],
  edges: ["right", "front", "left", "back"],
};

/** "Corners: front right has yellow on top, …." */
export function facingsSaid(facelets: string, pieces: LayerPieces): string {
  const kind = pieces === "corners" ? "Corners" : "Edges";
  const sides = layerOf(facelets, pieces).map(({ facing }) => onSide(facing));
  if (sides.every((side) => side === "on top"))
    return `${kind}: yellow is on top at all four.`;
  const [a, b, c, d] = NAMES[pieces];
  return `${kind}: ${a} has yellow ${sides[0]}, ${b} ${sides[1]}, ${c} ${sides[2]}, ${d} ${sides[3]}.`;
}

/** "front and right edges change places, …", or "". */
export function movesSaid(facelets: string, pieces: LayerPieces): string {
  return roundsSeen(facelets, pieces)
    .map((round) => {
      const names = round.map((at) => NAMES[pieces][at] ?? "?");
      const listed = `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
      if (round.length === 2) return `${listed} ${pieces} change places`;
      const which =
        round.length === 4 ? `all four ${pieces}` : `${listed} ${pieces}`;
      const times = timesAround(round);
      if (times === 1) return `${which} go round clockwise`;
      if (times === round.length - 1) return `${which} go round anticlockwise`;
      return `${which} go round from ${[...names, names[0]].join(" to ")}`;
    })
    .join(", ");
}
