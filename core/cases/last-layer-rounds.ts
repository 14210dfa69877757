/**
 * What must go where in the last layer, as rounds of places, and the look of
 * a case that leaves the fewest pieces to move.
 *
 * Places are told up to a turn of the layer: counting all homes on by the same
 * number describes the same layer above a cube that is turned under it. Of the
 * four ways to count the one is told in which most pieces are home already.
 */
import { present } from "../invariant";
import type { LastLayerCase } from "./last-layer-cases";
import { partTurnedBefore, SOLVED_LOOK } from "./last-layer-look";
import type { SeenLook } from "./last-layer-orbits";
import { LAST_LAYER_RULES, type LastLayerRule } from "./last-layer-stages";

/**
 * Places that pieces go round: the piece at each belongs at the next, the one
 * at the last belongs at the first.
 *
 * Shape: two to four numbers 0–3, as the digits of a look; the least first.
 */
export type Round = readonly number[];

/** The rounds of a text of places, pieces that are home left out. */
export function roundsOf(places: string): readonly Round[] {
  const rounds: Round[] = [];
  const met = new Set<number>();
  for (const start of [0, 1, 2, 3]) {
    const round: number[] = [];
    for (let at = start; !met.has(at); at = Number(places[at])) {
      met.add(at);
      round.push(at);
    }
    if (round.length > 1) rounds.push(round);
  }
  return rounds;
}

/**
 * Which way pieces go round, seen from above; undefined where two change
 * places or four do not follow the layer around.
 */
export function roundDirection(
  round: Round,
): "clockwise" | "anticlockwise" | undefined {
  if (round.length < 3) return undefined;
  // A round begins with its least place, and places go clockwise.
  const isAscending = (places: readonly number[]) =>
    places.every((place, i) => i === 0 || place > (places[i - 1] ?? place));
  if (isAscending(round)) return "clockwise";
  return isAscending(round.slice(1).toReversed()) ? "anticlockwise" : undefined;
}

/** Whether two places are next to each other; if not they are across. */
export function areNeighbours([a = 0, b = 0]: Round): boolean {
  return ((b - a) & 1) === 1;
}

function countedOn(look: SeenLook): SeenLook {
  const { cornerPlaces, edgePlaces } = look;
  return {
    ...look,
    ...(cornerPlaces !== undefined && {
      cornerPlaces: partTurnedBefore("cornerPlaces", cornerPlaces),
    }),
    ...(edgePlaces !== undefined && {
      edgePlaces: partTurnedBefore("edgePlaces", edgePlaces),
    }),
  };
}

interface Effort {
  readonly moved: number;
  readonly longest: number;
}

function effortOf(places: readonly (string | undefined)[]): Effort {
  const rounds = places.flatMap((text) =>
    text === undefined ? [] : roundsOf(text),
  );
  return {
    moved: rounds.flat().length,
    longest: Math.max(1, ...rounds.map((round) => round.length)),
  };
}

/** Less than 0 where the first is the shorter to tell. */
function compareEfforts(a: Effort, b: Effort): number {
  return a.moved - b.moved || a.longest - b.longest;
}

/** Stages sorted by what their corners show, whose corners are therefore told as briefly as can be. */
function isToldByCorners({ stage }: LastLayerCase): boolean {
  return stage === "last-layer-but-edges-turned";
}

/**
 * The look that names a case (`lookAt(0)`), its homes counted so that the
 * fewest pieces have to move, in the shortest rounds, and of those the fewest
 * corners. What the stage takes as done stays as when solved.
 */
export function briefestLook(one: LastLayerCase): SeenLook {
  const { done }: LastLayerRule = LAST_LAYER_RULES[one.stage];
  const looks = [one.lookAt(0)];
  for (let i = 1; i < 4; i++)
    looks.push(countedOn(present(looks.at(-1), "there is a first look")));
  const [briefest] = looks
    .filter((look) => done.every((part) => look[part] === SOLVED_LOOK[part]))
    .toSorted((a, b) => {
      const corners = compareEfforts(
        effortOf([a.cornerPlaces]),
        effortOf([b.cornerPlaces]),
      );
      const all = compareEfforts(
        effortOf([a.cornerPlaces, a.edgePlaces]),
        effortOf([b.cornerPlaces, b.edgePlaces]),
      );
      if (!isToldByCorners(one)) return all || corners;
      // Two corners across from each other can be told as either two: always
      // the same, so that within the family the edges tell cases apart.
      const isBefore = (a.cornerPlaces ?? "") < (b.cornerPlaces ?? "");
      return corners || (isBefore ? -1 : 1);
    });
  return present(briefest, "a case's first look has all before it done");
}
