/**
 * Cases as orbits: the places and facings that the pieces of a stage can have
 * while its constraint holds, gathered under turns of the layer it leaves free.
 *
 * Computed instead of listed: the numbers of orbits are published, so a
 * mistake in the rules of the cube shows here as a wrong count, while a list
 * of cases would only repeat what its author believed. Names are laid over the
 * orbits elsewhere, each bound to its orbit by computation.
 */
import { compose, type PartlyKnownCubies, UNKNOWN } from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import type { Face } from "../cube/faces";
import { type Corner, CORNERS, type Edge, EDGES } from "../cube/pieces";
import { present } from "../invariant";

/** What a stage asks for and what it takes as done. */
export interface CaseConstraint {
  /** The pieces to bring home. */
  readonly targetCorners: readonly Corner[];
  readonly targetEdges: readonly Edge[];
  /** The pieces that are placed and stay so. */
  readonly placedCorners: readonly Corner[];
  readonly placedEdges: readonly Edge[];
  /** The layer whose turns do not matter (body frame). */
  readonly freeLayer: Face;
}

/** Where one piece sits and how it is turned there. */
export interface Whereabouts {
  readonly position: number;
  readonly orientation: number;
}

/** Where all target pieces are: corners, then edges, in the constraint's order. */
export type Arrangement = readonly Whereabouts[];

/** The arrangements that one case can show, turned by 0, 1, 2, … quarters. */
export type Orbit = readonly Arrangement[];

/** A text that two arrangements share exactly when they are the same. */
export function arrangementKey(arrangement: Arrangement): string {
  return arrangement
    .map(({ position, orientation }) => `${position}.${orientation}`)
    .join(" ");
}

function everyWhereabouts(
  positions: readonly number[],
  orientations: number,
): readonly Whereabouts[] {
  return positions.flatMap((position) =>
    Array.from({ length: orientations }, (_, orientation) => ({
      position,
      orientation,
    })),
  );
}

/** Every way to give each of `count` pieces one of `choices`, no position twice. */
function arrangementsOf(
  choices: readonly Whereabouts[],
  count: number,
): readonly Arrangement[] {
  if (count === 0) return [[]];
  return arrangementsOf(choices, count - 1).flatMap((others) =>
    choices
      .filter(({ position }) => others.every((o) => o.position !== position))
      .map((chosen) => [...others, chosen]),
  );
}

/** A state in which only the targets of a constraint are known, where an arrangement has them. */
export function stateShowing(
  constraint: CaseConstraint,
  arrangement: Arrangement,
): PartlyKnownCubies {
  const state = {
    cornerPermutation: new Uint8Array(8).fill(UNKNOWN),
    cornerOrientation: new Uint8Array(8).fill(UNKNOWN),
    edgePermutation: new Uint8Array(12).fill(UNKNOWN),
    edgeOrientation: new Uint8Array(12).fill(UNKNOWN),
  };
  const corners = constraint.targetCorners.length;
  arrangement.forEach(({ position, orientation }, i) => {
    if (i < corners) {
      state.cornerPermutation[position] = present(
        constraint.targetCorners[i],
        "corners come first",
      );
      state.cornerOrientation[position] = orientation;
    } else {
      state.edgePermutation[position] = present(
        constraint.targetEdges[i - corners],
        "edges come after the corners",
      );
      state.edgeOrientation[position] = orientation;
    }
  });
  return state;
}

/** Where the targets of a constraint are in a state, or undefined where one is not known. */
export function arrangementIn(
  state: PartlyKnownCubies,
  constraint: CaseConstraint,
): Arrangement | undefined {
  const find = (
    piece: number,
    permutation: Uint8Array,
    orientation: Uint8Array,
  ): Whereabouts | undefined => {
    const position = permutation.indexOf(piece);
    const turned = orientation[position];
    return turned === undefined ? undefined : { position, orientation: turned };
  };
  const found = [
    ...constraint.targetCorners.map((piece) =>
      find(piece, state.cornerPermutation, state.cornerOrientation),
    ),
    ...constraint.targetEdges.map((piece) =>
      find(piece, state.edgePermutation, state.edgeOrientation),
    ),
  ];
  const known = found.filter((where) => where !== undefined);
  return known.length === found.length ? known : undefined;
}

/** A name that two things share exactly when they are the same. */
type KeyOf<T> = (thing: T) => string | number;

/** Ways to come from a thing to another that shows the same case. */
type Steps<T> = readonly ((thing: T) => T)[];

/**
 * Everything that steps lead to from a start, each once, the nearest first:
 * with one step, the start turned by 0, 1, 2, … of it.
 */
export function orbitUnder<T>(
  start: T,
  keyOf: KeyOf<T>,
  steps: Steps<T>,
): readonly T[] {
  const orbit = [start];
  const met = new Set([keyOf(start)]);
  for (const thing of orbit) {
    for (const step of steps) {
      const next = step(thing);
      if (met.has(keyOf(next))) continue;
      met.add(keyOf(next));
      orbit.push(next);
    }
  }
  return orbit;
}

/** Things gathered into their orbits, in the order in which each orbit is first met. */
export function orbitsUnder<T>(
  things: Iterable<T>,
  keyOf: KeyOf<T>,
  steps: Steps<T>,
): readonly (readonly T[])[] {
  const met = new Set<string | number>();
  const orbits: (readonly T[])[] = [];
  for (const thing of things) {
    if (met.has(keyOf(thing))) continue;
    const orbit = orbitUnder(thing, keyOf, steps);
    for (const member of orbit) met.add(keyOf(member));
    orbits.push(orbit);
  }
  return orbits;
}

/** An arrangement after a quarter turn of the free layer. */
function quarterTurned(
  constraint: CaseConstraint,
  arrangement: Arrangement,
): Arrangement {
  const quarter = present(
    FACE_TURNS[faceTurnIndex(constraint.freeLayer, 1)],
    "every face has a quarter turn",
  );
  return present(
    arrangementIn(
      compose(stateShowing(constraint, arrangement), quarter),
      constraint,
    ),
    "turning loses no piece",
  );
}

/**
 * All orbits of a constraint's targets, without the one that is already
 * answered (every target placed, up to turns of the free layer).
 *
 * Every arrangement can be reached: each stage that is asked about leaves at
 * least two other edges and one other corner free to take up parity, flip and
 * twist.
 */
export function caseOrbits(constraint: CaseConstraint): readonly Orbit[] {
  const free = (all: readonly number[], placed: readonly number[]) =>
    all.filter((position) => !placed.includes(position));
  const corners = arrangementsOf(
    everyWhereabouts(free(CORNERS, constraint.placedCorners), 3),
    constraint.targetCorners.length,
  );
  const edges = arrangementsOf(
    everyWhereabouts(free(EDGES, constraint.placedEdges), 2),
    constraint.targetEdges.length,
  );
  const answered = arrangementKey(
    [...constraint.targetCorners, ...constraint.targetEdges].map(
      (position) => ({ position, orientation: 0 }),
    ),
  );
  return orbitsUnder(
    corners.flatMap((cornerPart) =>
      edges.map((edgePart) => [...cornerPart, ...edgePart]),
    ),
    arrangementKey,
    [(arrangement: Arrangement) => quarterTurned(constraint, arrangement)],
  ).filter((orbit) =>
    orbit.every((member) => arrangementKey(member) !== answered),
  );
}
