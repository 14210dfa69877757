/** What the cube of a case shows, for somebody who does not see it. */
import { caseEntry } from "../../../core/cases/case-table";
import { markedOf, targetsOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { stickersOf } from "../../../core/cube/facelets";
import { FACES } from "../../../core/cube/faces";
import type { HeldCube } from "../../../core/cube/held-cube";
import { holdInWords } from "../../../core/notation/place-words";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { CubePictureInput } from "../../../core/picture/cube-picture";
import { sideInWords } from "../../../core/picture/picture-in-words";
import { planInWords } from "../../../core/picture/plan-in-words";
import { capitalised, listInWords } from "../../../core/notation/sentence";
import { askWords } from "../../state/practise/ask-words";
import { shownStickers } from "../../state/practise/case-picture";
import {
  homeInWords,
  pieceWhereInWords,
} from "../../state/practise/case-words";
import {
  pieceInWords,
  piecesOf,
  placedInWords,
} from "../../state/practise/prompt-words";
import { isHome } from "../../state/practise/own-cube";

function heldInWords(
  { hold }: HeldCube<PartlyKnownCubies>,
  scheme: ColourScheme,
): string {
  return `${capitalised(listInWords(holdInWords(hold, scheme)))}.`;
}

/** How the cube is held, and its six sides row by row: what a picture shows that marks nothing. */
export function describeSides(
  cube: HeldCube<PartlyKnownCubies>,
  stickers: CubePictureInput["stickers"],
  scheme: ColourScheme,
): string {
  const sides = FACES.map((side) => sideInWords(stickers, side, scheme));
  return [heldInWords(cube, scheme), ...sides].join(" ");
}

/**
 * How the cube is held, where the piece is and which way it faces, where its
 * home is, and what is placed. Where nothing is marked, finding the piece is
 * part of the task: then the six sides are read out instead. Of the last layer
 * what a look from above shows, while it is learnt without what is bare.
 */
export function describeCase(
  cube: HeldCube<PartlyKnownCubies>,
  position: Position,
  isMarked: boolean,
  scheme: ColourScheme,
): string {
  if (!isMarked) return describeSides(cube, stickersOf(cube), scheme);
  const held = heldInWords(cube, scheme);
  const targets = targetsOf(position);
  const marked = markedOf(position);
  const displaced = piecesOf(marked)
    .filter((piece) => !isHome(cube.cubies, piece))
    .map((piece) => pieceInWords(piece, scheme));
  const notPlaced =
    displaced.length === 0
      ? []
      : [`Not placed now: ${listInWords(displaced)}.`];
  const entry = caseEntry(position.case);
  if (entry.group === "last-layer") {
    const stickers = shownStickers(cube, entry.stage);
    return [held, planInWords({ stickers }, scheme), ...notPlaced].join(" ");
  }
  // A turn may have displaced what was placed when the case was asked.
  const placed = {
    corners: marked.corners.filter((piece) =>
      isHome(cube.cubies, { kind: "corner", piece }),
    ),
    edges: marked.edges.filter((piece) =>
      isHome(cube.cubies, { kind: "edge", piece }),
    ),
  };
  const pieces = piecesOf(targets).map((piece) => {
    const name = capitalised(pieceInWords(piece, scheme));
    if (isHome(cube.cubies, piece)) return `${name} is home.`;
    const where = pieceWhereInWords(cube, piece, scheme) ?? "out of sight";
    return `${name}: ${where}. Its home is ${homeInWords(cube, piece)}.`;
  });
  return [
    held,
    ...pieces,
    // Of a slot's many pieces only those are told that are not placed now.
    ...(entry.group === "first-layer"
      ? [placedInWords(placed, targets, scheme)]
      : displaced.length === 0
        ? [askWords(position, scheme).placed]
        : []),
    ...notPlaced,
  ].join(" ");
}
