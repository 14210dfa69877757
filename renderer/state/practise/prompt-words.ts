/**
 * What a case asks, in a learner's words: which piece to bring home, and what
 * is already placed. Colours are the learner's own.
 */
import {
  type Pieces,
  CORNER_FACES,
  EDGE_FACES,
} from "../../../core/cube/pieces";
import { present } from "../../../core/invariant";
import {
  colourHex,
  type ColourName,
  type ColourScheme,
  type Paints,
} from "../../../core/picture/colour-sets";
import { listInWords } from "../../../core/notation/sentence";
import type { CubePiece } from "./own-cube";

/** The same pieces as a list, edges first. */
export function piecesOf(pieces: Pieces): readonly CubePiece[] {
  return [
    ...pieces.edges.map((piece): CubePiece => ({ kind: "edge", piece })),
    ...pieces.corners.map((piece): CubePiece => ({ kind: "corner", piece })),
  ];
}

/**
 * A piece's colours, the first layer's first; a corner's other two as they are
 * met from left to right.
 */
export function pieceColours(
  piece: CubePiece,
  scheme: ColourScheme,
): readonly ColourName[] {
  const table = piece.kind === "corner" ? CORNER_FACES : EDGE_FACES;
  const faces = present(table[piece.piece], "pieces are in range");
  const [first, second, third] = faces.map((face) => scheme[face]);
  return [first, third, second].filter((colour) => colour !== undefined);
}

/** The same as they are painted. Shape: `#rrggbb`. */
export function piecePaints(
  piece: CubePiece,
  scheme: ColourScheme,
  paints: Paints,
): readonly string[] {
  return pieceColours(piece, scheme).map((name) => colourHex(name, paints));
}

/** A piece by its colours: "the white, green and red corner". */
export function pieceInWords(piece: CubePiece, scheme: ColourScheme): string {
  return `the ${listInWords(pieceColours(piece, scheme))} ${piece.kind}`;
}

/** What to do: "Bring the white and green edge home." */
export function promptInWords(targets: Pieces, scheme: ColourScheme): string {
  const pieces = piecesOf(targets).map((piece) => pieceInWords(piece, scheme));
  return pieces.length === 1
    ? `Bring ${listInWords(pieces)} home.`
    : `Bring both home: ${listInWords(pieces)}.`;
}

const COUNTS = ["no", "one", "two", "three", "four"] as const;

function group(
  count: number,
  targets: number,
  kind: "edge" | "corner",
  first: ColourName,
): string {
  const plural = count === 1 ? kind : `${kind}s`;
  const number = COUNTS[count] ?? String(count);
  if (count + targets === 4)
    return targets === 0
      ? `the four ${first} ${plural}`
      : `the other ${count === 1 ? "" : `${number} `}${first} ${plural}`;
  return `${number} ${first} ${plural}`;
}

/** What is already placed and must stay so: "Already placed: the four white edges." */
export function placedInWords(
  marked: Pieces,
  targets: Pieces,
  scheme: ColourScheme,
): string {
  const first = scheme.U;
  const groups: string[] = [];
  if (marked.edges.length > 0)
    groups.push(
      group(marked.edges.length, targets.edges.length, "edge", first),
    );
  if (marked.corners.length > 0)
    groups.push(
      group(marked.corners.length, targets.corners.length, "corner", first),
    );
  return groups.length === 0
    ? `No other ${first} ${targets.edges.length > 0 ? "edge" : "corner"} is placed yet.`
    : `Already placed: ${listInWords(groups)}.`;
}
