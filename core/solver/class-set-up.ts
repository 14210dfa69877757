/**
 * How every cube of a class comes to one case in as few turns as there are.
 *
 * A set-up in practice hides its answer and takes 6 to 16 turns for it. In
 * class the case is to be talked about, and twenty seconds are all it may take:
 * here it is the case's shortest way, made backwards. None is shorter: turns
 * that lead to the case from a cube that has what an answer leaves are a way
 * read from its end. And for the same reason they are the same from every such
 * cube, whatever else is on it, so that a class whose cubes have a cross, a
 * layer or all six sides done makes the same turns together.
 *
 * Turns by stage (median / longest), over all cases as they are shown: first
 * layer 3 / 4 and 5 / 6, second layer and pairs 7 / 10, turning the last layer
 * 7 to 10 / 12, placing it 8 to 14 / 17. The price: a set-up that is undone is
 * the answer, so in practice the other ones stay.
 */
import type { CaseId } from "../cases/case-ids";
import { caseEntry, waysOf } from "../cases/case-table";
import {
  allPieces,
  hasHomes,
  placedBefore,
  stagePieces,
  targetsOf,
} from "../cases/constraint";
import { knownAfterAnswer, shownPosition } from "../cases/known-layer";
import { type Position, startOf } from "../cases/position";
import { isLastLayerStage, type Stage } from "../cases/stage";
import { wayForPosition } from "../cases/way-for-position";
import type { Variant } from "../cases/variant";
import { isFullyKnown, type PartlyKnownCubies, SOLVED } from "../cube/cubies";
import { applyTurns, type HeldCube } from "../cube/held-cube";
import { agreesWith, knownOnly } from "../cube/partly-known";
import type { Pieces } from "../cube/pieces";
import type { Turn } from "../cube/turns";
import { wholeCubeTurnsBetween } from "../cube/whole-cube-turns";
import { inverseTurns } from "../notation/inverse";
import { simplifyTurns } from "../notation/simplify";
import { dressed } from "./dressing";
import {
  faceTurnsOf,
  inverseSequence,
  normalised,
  turnSeen,
} from "./face-turn-sequence";

/** What a child's cube may have before a set-up, least first. */
export const CUBE_STARTS = [
  "cross",
  "layer",
  "two-layers",
  "step",
  "solved",
] as const;

/** One of them; `step`: what an answer of the stage leaves. */
export type CubeStart = (typeof CUBE_STARTS)[number];

const STARTS: Readonly<
  Record<Exclude<Stage, `last-layer-${string}`>, readonly CubeStart[]>
> = {
  "first-layer-edges": ["cross", "layer", "solved"],
  "first-layer-corners": ["cross", "layer", "solved"],
  "second-layer-edges": ["layer", "two-layers", "solved"],
  pairs: ["cross", "two-layers", "solved"],
};

/** The last layer has one. */
const ANY_VARIANT: Variant = {
  home: 0,
  placed: [],
  turnedAway: 0,
  seenFrom: 0,
};

/** From what a case can be set up, least first. Two corners in each other's homes take the whole layer. */
export function cubeStarts(id: CaseId): readonly CubeStart[] {
  const { stage, ways } = caseEntry(id);
  if (isLastLayerStage(stage))
    // After the last of all steps nothing is left to do.
    return isFullyKnown(knownAfterAnswer({ case: id, variant: ANY_VARIANT }))
      ? ["solved"]
      : ["step", "solved"];
  return ways.length > 0
    ? STARTS[stage]
    : STARTS[stage].filter((start) => start !== "cross");
}

function doneAt(start: CubeStart): Pieces {
  switch (start) {
    case "cross":
      return stagePieces("first-layer-edges");
    case "layer":
      return stagePieces("first-layer-corners");
    case "two-layers":
    case "step":
    case "solved":
      return stagePieces("pairs");
  }
}

/**
 * What must be home besides what a start has in any case: a cross alone says
 * nothing of the corner that a case is about, and one corner home is enough.
 */
export function alsoHome(position: Position, start: CubeStart): Pieces {
  if (!hasHomes(position.case)) return { corners: [], edges: [] };
  const { corners, edges } = targetsOf(position);
  const done = doneAt(start);
  return {
    corners: corners.filter((piece) => !done.corners.includes(piece)),
    edges: edges.filter((piece) => !done.edges.includes(piece)),
  };
}

/** What is known of a cube with such a start, held as the set-up begins. */
export function cubeAtStart(
  position: Position,
  start: CubeStart,
): HeldCube<PartlyKnownCubies> {
  const { hold } = startOf(position);
  if (start === "solved") return { cubies: SOLVED, hold };
  if (start === "step") return { cubies: knownAfterAnswer(position), hold };
  const { corners, edges } = allPieces([
    doneAt(start),
    alsoHome(position, start),
    placedBefore(caseEntry(position.case).stage),
  ]);
  return {
    cubies: knownOnly(SOLVED, new Set(corners), new Set(edges)),
    hold,
  };
}

/** What may come first, where the way ends with the layer on top turned on. */
const FIRST_TURNS: readonly (readonly Turn[])[] = [
  [],
  [{ layer: "U", quarters: 1 }],
  [{ layer: "U", quarters: 3 }],
  [{ layer: "U", quarters: 2 }],
];

/** What a turn costs a child who is told it. Common practice: sides in sight before the back and before layers that do not lie outside. */
function effortOf({ layer }: Turn): number {
  if (layer === "B") return 1.6;
  if ("MES".includes(layer)) return 1.5;
  return layer.endsWith("w") ? 1.2 : 1;
}

function effort(turns: readonly Turn[]): number {
  return turns.reduce((sum, turn) => sum + effortOf(turn), 0);
}

/** A way backwards, as hands may make it who hold the cube as the case is held, before and after. */
function backwards(
  way: readonly Turn[],
  { hold }: HeldCube<PartlyKnownCubies>,
): readonly (readonly Turn[])[] {
  const faces = inverseSequence(normalised(faceTurnsOf(hold, way)));
  const heldAfter = applyTurns({ cubies: SOLVED, hold }, way).hold;
  return [
    [...wholeCubeTurnsBetween(hold, heldAfter), ...inverseTurns(way)],
    faces.map((turn) => turnSeen(hold, turn)),
    dressed(faces, hold, hold, false).turns,
  ];
}

/** The ways that answer a position, of either hand. */
function waysFrom(position: Position): readonly (readonly Turn[])[] {
  const { case: id, hold } = position;
  return [...waysOf(id, hold), ...waysOf(id, hold, "left")].map((way) =>
    wayForPosition(position, way),
  );
}

/**
 * The turns that bring a cube, held as the case is, to what its question
 * shows: the fewest, where the back and the middle count for more than a turn.
 *
 * Shape:  undefined where no one way answers (two corners in each other's
 *         homes) and where ways are found on demand: there the solver's set-up
 *         is as good as any.
 * Source: `waysOf`, which holds a shortest way of every case it has ways of.
 */
export function classSetUp(position: Position): readonly Turn[] | undefined {
  const { hold } = startOf(position);
  const start = { cubies: SOLVED, hold };
  const { cubies: shown } = shownPosition(position);
  const found = waysFrom(position)
    .flatMap((way) => backwards(way, start))
    .flatMap((turns) =>
      FIRST_TURNS.map((first) => simplifyTurns([...first, ...turns])),
    )
    .filter((turns) => {
      const after = applyTurns(start, turns);
      return after.hold === hold && agreesWith(after.cubies, shown);
    });
  return found.sort((a, b) => effort(a) - effort(b) || a.length - b.length)[0];
}
