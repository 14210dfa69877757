import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { FREE_LAYER } from "../../../core/cases/stage";
import { type Cubies, SOLVED } from "../../../core/cube/cubies";
import { faceTurnIndex } from "../../../core/cube/face-turns";
import { agreesWith, knownOnly } from "../../../core/cube/partly-known";
import { CORNERS, EDGES } from "../../../core/cube/pieces";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { rotationAbout } from "../../../core/cube/symmetries";
import { randomSource } from "../../../core/random-source";
import type { CaseGoal } from "../../../core/cases/case-goal";
import { sequenceImage } from "../../../core/solver/case-starts";
import {
  afterSequence,
  type FaceTurnSequence,
  normalised,
  withoutEndsOf,
} from "../../../core/solver/face-turn-sequence";
import { ALL_TURNS } from "../../../core/solver/move-tables";
import { ALL_PLACED, answeredBy } from "./case-questions";
import { answers } from "./case-answers";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

describe("the case search", () => {
  it("finds nothing shorter and nothing else than trying everything up to 4 turns, on random goals", () => {
    const some = (all: readonly number[]) =>
      fc.subarray([...all], { maxLength: 3 });
    fc.assert(
      fc.property(
        some(CORNERS),
        some(EDGES),
        fc.array(fc.nat(17), { minLength: 2, maxLength: 4 }),
        (corners, edges, walk) => {
          const goal: CaseGoal = {
            placed: {
              corners: CORNERS.filter((piece) => corners.includes(piece)),
              edges: EDGES.filter((piece) => edges.includes(piece)),
            },
          };
          const from = afterSequence(SOLVED, walk);
          const found = answers({ from, goal, mostTurns: 4 });
          const blind = blindAnswers(from, goal, 4);
          const own = found.map(({ turns }) => turns.join());
          expect(own.filter((turns) => !blind.has(turns))).toEqual([]);
          // What is one answer from several sides is given once.
          const fromAllSides = new Set(
            found.flatMap(({ turns }) =>
              [0, 1, 2, 3].map((quarters) =>
                sequenceImage(rotationAbout("y", quarters), turns).join(),
              ),
            ),
          );
          expect(
            [...blind].filter((turns) => !fromAllSides.has(turns)),
          ).toEqual([]);
        },
      ),
      { numRuns: 12 },
    );
  });

  it("finds every answer where no two sides look alike", () => {
    const goal: CaseGoal = {
      placed: { corners: CORNERS.slice(0, 1), edges: EDGES.slice(8, 9) },
    };
    const random = randomSource(8);
    for (let i = 0; i < 10; i++) {
      const from = sampleState(random, ANY_STATE);
      const found = answers({ from, goal, mostTurns: 3 });
      const own = new Set(found.map(({ turns }) => turns.join()));
      expect(own).toEqual(blindAnswers(from, goal, 3));
    }
  });

  it("gives an answer that looks the same from four sides once", () => {
    const from = answeredBy("R2 L2 U R2 L2 U2 R2 L2 U R2 L2");
    const found = answers({ from, goal: ALL_PLACED });
    expect(found.length).toBeGreaterThan(0);
    for (const { turns } of found) {
      const images = [1, 2, 3].map((quarters) =>
        sequenceImage(rotationAbout("y", quarters), turns).join(),
      );
      const others = found.filter((other) => other.turns !== turns);
      expect(others.filter((o) => images.includes(o.turns.join()))).toEqual([]);
    }
  });

  it("begins with the layer across from the free one where all sides look alike", () => {
    const cross: CaseGoal = {
      placed: { corners: [], edges: EDGES.slice(0, 4) },
    };
    const from = afterSequence(SOLVED, [0]);
    expect(answers({ from, goal: cross })).toEqual([
      { before: 0, turns: [2], after: 0 },
    ]);
    // U F2 and one turn more, but not a turn of the free layer beside the U.
    const two = afterSequence(SOLVED, [7, 2]);
    for (const { turns } of answers({ from: two, goal: cross, extraTurns: 1 }))
      expect(withoutEndsOf(FREE_LAYER, turns)).toEqual(turns);
  });
});

/** All shortest sequences that place a goal's pieces, up to a length, with no bound and none of the search's own questions. */
function blindAnswers(
  from: Cubies,
  { placed }: CaseGoal,
  most: number,
): ReadonlySet<string> {
  const free = [0, 1, 2, 3].map((quarters) =>
    quarters === 0 ? [] : [faceTurnIndex(FREE_LAYER, quarters)],
  );
  const ends = free.map((turns) =>
    knownOnly(
      afterSequence(SOLVED, turns),
      new Set(placed.corners),
      new Set(placed.edges),
    ),
  );
  let level = free.map((turns) => ({
    turns: [] as FaceTurnSequence,
    state: afterSequence(from, turns),
  }));
  for (let length = 0; ; length++) {
    const reached = level.filter(
      ({ turns, state }) =>
        ends.some((end) => agreesWith(state, end)) &&
        withoutEndsOf(FREE_LAYER, turns).length === length,
    );
    if (reached.length > 0 || length === most)
      return new Set(reached.map(({ turns }) => turns.join()));
    level = level.flatMap(({ turns, state }) =>
      ALL_TURNS.map((turn) => [...turns, turn])
        .filter((longer) => normalised(longer).join() === longer.join())
        .map((longer) => ({
          turns: longer,
          state: afterSequence(state, longer.slice(-1)),
        })),
    );
  }
}
