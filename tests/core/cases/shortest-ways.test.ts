import { describe, expect, it } from "vitest";
import {
  type CaseId,
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../../core/cases/case-ids";
import { waysOf } from "../../../core/cases/case-table";
import { homesAllowed } from "../../../core/cases/constraint";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { randomPosition } from "../../../core/cases/random-position";
import {
  compose,
  type PartlyKnownCubies,
  SOLVED,
  UNKNOWN,
} from "../../../core/cube/cubies";
import { FACE_TURNS } from "../../../core/cube/face-turns";
import { knownOnly } from "../../../core/cube/partly-known";
import { CORNERS, EDGES } from "../../../core/cube/pieces";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { randomSource } from "../../../core/random-source";

const SINGLE = [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS];

/** The lined-up case with all placed that can be, and nothing else known. */
function shown(id: CaseId): PartlyKnownCubies {
  const variant = {
    home: 0,
    placed: homesAllowed(id, 0),
    turnedAway: 0,
    seenFrom: 0,
  } as const;
  const position = randomPosition(randomSource(1), id, variant, "up");
  return partlyKnownPosition(position, "named").cubies;
}

function solvedOf(state: PartlyKnownCubies): PartlyKnownCubies {
  return knownOnly(
    SOLVED,
    new Set(CORNERS.filter((c) => state.cornerPermutation.includes(c))),
    new Set(EDGES.filter((e) => state.edgePermutation.includes(e))),
  );
}

function key(state: PartlyKnownCubies): string {
  return [
    state.cornerPermutation,
    state.cornerOrientation,
    state.edgePermutation,
    state.edgeOrientation,
  ]
    .map((list) => list.filter((value) => value !== UNKNOWN).join("."))
    .concat(
      state.cornerPermutation.map((c) => (c === UNKNOWN ? 0 : 1)).join(""),
    )
    .concat(state.edgePermutation.map((e) => (e === UNKNOWN ? 0 : 1)).join(""))
    .join(" ");
}

/** All states at exactly 0, 1, …, `depth` face turns from a state. */
function levelsFrom(start: PartlyKnownCubies, depth: number): Set<string>[] {
  const met = new Set([key(start)]);
  const levels = [new Set(met)];
  let edge = [start];
  for (let i = 0; i < depth; i++) {
    const next: PartlyKnownCubies[] = [];
    const level = new Set<string>();
    for (const state of edge) {
      for (const turn of FACE_TURNS) {
        const turned = compose(state, turn);
        const name = key(turned);
        if (met.has(name)) continue;
        met.add(name);
        level.add(name);
        next.push(turned);
      }
    }
    levels.push(level);
    edge = next;
  }
  return levels;
}

/** The fewest face turns from one state to another, up to 6, by meeting in the middle. */
function fewestTurns(from: PartlyKnownCubies, back: Set<string>[]): number {
  const forward = levelsFrom(from, 3);
  for (let sum = 0; sum <= 6; sum++) {
    const ahead = Math.max(0, sum - 3);
    const isMet = [...(forward[ahead] ?? [])].some((name) =>
      back[sum - ahead]?.has(name),
    );
    if (isMet) return sum;
  }
  throw new Error("more than six turns");
}

describe("the shortest way of a case", () => {
  // Source: every sequence of face turns, tried here (computed).
  it("takes as few turns as any sequence that keeps all that can be placed", () => {
    const backOf = new Map<string, Set<string>[]>();
    for (const id of SINGLE) {
      const state = shown(id);
      const solved = solvedOf(state);
      const back = backOf.get(key(solved)) ?? levelsFrom(solved, 3);
      backOf.set(key(solved), back);
      const written = Math.min(
        ...waysOf(id, "up").map(({ turns }) => outerBlockTurns(turns)),
      );
      expect(written, id).toBe(fewestTurns(state, back));
    }
  }, 60_000);
});
