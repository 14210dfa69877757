/** What is said about the cubes of a class before a set-up. */
import { caseEntry } from "../../../core/cases/case-table";
import type { Position } from "../../../core/cases/position";
import { startOf } from "../../../core/cases/position";
import {
  holdInWords,
  placeInWords,
  seenCornerFaces,
  seenEdgeFaces,
} from "../../../core/notation/place-words";
import { listInWords } from "../../../core/notation/sentence";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { ShowDesk } from "./show-desk.svelte";
import { alsoHome, type CubeStart } from "../../../core/solver/class-set-up";

/** What a class's cubes have, as it is chosen. */
export const START_NAMES: Readonly<Record<CubeStart, string>> = {
  cross: "Cross",
  layer: "First layer",
  "two-layers": "Two layers",
  step: "This step",
  solved: "Solved",
};

const HAS: Readonly<Record<CubeStart, string>> = {
  cross: "your cross done",
  layer: "your first layer done",
  "two-layers": "your first two layers done",
  step: "this step done already",
  solved: "a solved cube",
};

/** What of the cube comes on top or below, on a cube of any make. */
function heldAnyhow(position: Position, start: CubeStart): string {
  if (start === "solved") return "Hold it any way you like.";
  if (start === "step") return "Hold the last layer on top.";
  const what = start === "cross" ? "the cross" : "what is done";
  const isUp =
    caseEntry(position.case).group === "first-layer" && position.hold === "up";
  return `Hold ${what} ${isUp ? "on top" : "at the bottom"}.`;
}

/** A slot is always held there. */
const PAIR_PLACE = "front right";

function alsoInWords(position: Position, start: CubeStart): string {
  const { corners, edges } = alsoHome(position, start);
  const { hold } = startOf(position);
  if (corners.length > 0 && edges.length > 0)
    return ` and the ${PAIR_PLACE} pair home`;
  const told = [
    ...corners.map(
      (corner) =>
        `the corner at the ${placeInWords(seenCornerFaces(hold, corner))}`,
    ),
    ...edges.map(
      (edge) => `the edge at the ${placeInWords(seenEdgeFaces(hold, edge))}`,
    ),
  ];
  return told.length === 0 ? "" : ` and ${listInWords(told)} home`;
}

/**
 * What every cube needs, and how it is held: "Start with your cross done and
 * the corner at the top front right home. Hold the cross on top."
 *
 * Shape: `scheme` where all cubes have the same colours; undefined: any.
 */
export function startInWords(
  position: Position,
  start: CubeStart,
  scheme: ColourScheme | undefined,
): string {
  const has = `Start with ${HAS[start]}${alsoInWords(position, start)}.`;
  if (scheme === undefined) return `${has} ${heldAnyhow(position, start)}`;
  const [top, front] = holdInWords(startOf(position).hold, scheme);
  return `${has} Hold it ${top} and ${front}.`;
}

/** Which turns of how many are on the screen; nothing before the first: "Turns 1 to 3 of 3". */
export function turnsCounted({
  station,
  lengths,
}: Pick<ShowDesk, "station" | "lengths">): string {
  if (station.kind === "case" || station.to === station.from) return "";
  const all = station.kind === "set-up" ? lengths.setUp : lengths.way;
  const { from, to } = station;
  return to - from === 1
    ? `Turn ${to} of ${all}`
    : `Turns ${from + 1} to ${to} of ${all}`;
}
