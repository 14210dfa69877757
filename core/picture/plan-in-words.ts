/** The text alternative of a plan: what it shows, in a learner's words. */
import { CORNER_FACELETS, EDGE_FACELETS, faceletFace } from "../cube/facelets";
import { FACE_INDEX, type Face } from "../cube/faces";
import {
  type ColourNames,
  placeInWords,
  sideName,
} from "../notation/place-words";
import { capitalised } from "../notation/sentence";
import { sideInWords } from "./picture-in-words";
import { joinedArrows } from "./plan-arrows";
import type { PlanPictureInput } from "./plan-picture";

/** What of a plan is said. */
export type PlanToSay = Pick<PlanPictureInput, "stickers" | "arrows">;

// As one goes round the cube.
const UPRIGHT = ["F", "R", "B", "L"] as const satisfies readonly Face[];

/** The place on top that a facelet belongs to. */
function placeOfFacelet(facelet: number): string {
  const facelets = [...CORNER_FACELETS, ...EDGE_FACELETS].find((place) =>
    place.includes(facelet),
  );
  return placeInWords((facelets ?? [facelet]).map(faceletFace));
}

/**
 * A plan in words: the top row by row, the upper row of each side as one faces
 * it, and which pieces change places.
 */
export function planInWords(
  { stickers, arrows = [] }: PlanToSay,
  names: ColourNames,
): string {
  const rows = UPRIGHT.map((side) => {
    const first = 9 * FACE_INDEX[side];
    const row = [0, 1, 2].map((column) => {
      const face = stickers[first + column];
      return face === undefined ? "bare" : names[face];
    });
    return `${capitalised(sideName(side))}, upper row: ${row.join(" ")}.`;
  });
  const moves = joinedArrows(arrows).map(({ from, to, isExchange }) =>
    isExchange
      ? `${placeOfFacelet(from)} and ${placeOfFacelet(to)} change places`
      : `${placeOfFacelet(from)} goes to ${placeOfFacelet(to)}`,
  );
  return [
    sideInWords(stickers, "U", names),
    ...rows,
    ...(moves.length === 0 ? [] : [`Arrows: ${moves.join("; ")}.`]),
  ].join(" ");
}
