import { describe, expect, it, vi } from "vitest";
import {
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../../core/cases/case-ids";
import { waysOf } from "../../../core/cases/case-table";
import { mostPlaced } from "../../../core/cases/constraint";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { FREE_LAYER } from "../../../core/cases/stage";
import { sampleState } from "../../../core/cube/sample-state";
import { randomSource } from "../../../core/random-source";
import type { CaseGoal } from "../../../core/cases/case-goal";
import {
  faceTurnsOf,
  normalised,
  withoutEndsOf,
} from "../../../core/solver/face-turn-sequence";
import { everyVariant } from "../cases/every-variant";
import {
  goalOf,
  pairStates,
  secondLayerEdgeStates,
  TWO_LAYERS,
} from "./case-questions";
import {
  afterByOracle,
  answers,
  isPlacedByOracle,
  lengthOf,
} from "./case-answers";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

describe("the case search on the first layer", () => {
  const IDS = [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS];

  it.each(IDS)(
    "finds for %s nothing longer than any taught way, and every way found is right by the oracle",
    (id) => {
      const random = randomSource(5);
      for (const variant of everyVariant(id, mostPlaced(id)).filter(
        ({ seenFrom, turnedAway }) => seenFrom === 0 && turnedAway === 0,
      )) {
        const position = randomPosition(random, id, variant, "up");
        const goal = goalOf(position);
        const from = partlyKnownPosition(position, "named").cubies;
        const found = answers({ from, goal });
        const taught = waysOf(id, "up").map(({ school, turns }) => {
          const sequence = faceTurnsOf(startOf(position).hold, turns);
          const { length } = withoutEndsOf(FREE_LAYER, normalised(sequence));
          return { school, length };
        });
        const least = Math.min(...taught.map(({ length }) => length));
        expect(lengthOf(found)).toBeLessThanOrEqual(least);
        // Source: `ways.test.ts` and `shortest-ways.test.ts` (computed).
        expect([id, lengthOf(found)]).toEqual([id, least]);
        for (const answer of found) {
          const after = afterByOracle(position.cubies, answer);
          expect(isPlacedByOracle(after, goal)).toBe(true);
        }
      }
    },
  );
});

describe("the case search on the second layer", () => {
  const goal: CaseGoal = { placed: TWO_LAYERS };

  it.each([
    ["second-layer edge", secondLayerEdgeStates, 10],
    ["pair", pairStates, 150],
  ] as const)(
    "answers every state of one %s, by the oracle too",
    (_, states, count) => {
      const random = randomSource(6);
      expect(states()).toHaveLength(count);
      for (const state of states()) {
        const from = sampleState(random, {
          ...state,
          unplacedCorners: [],
          unplacedEdges: [],
        });
        const found = answers({ from: state, goal });
        expect(found.length).toBeGreaterThan(0);
        for (const answer of found) {
          expect(answer.turns).toHaveLength(lengthOf(found) ?? NaN);
          expect(isPlacedByOracle(afterByOracle(from, answer), goal)).toBe(
            true,
          );
        }
      }
    },
  );

  // Source: check-values, "Cases": 41 pairs without the solved one are common practice.
  it("asks the same of the 41 pairs however the free layer is turned", () => {
    const found = pairStates().map((from) =>
      answers({ from, goal })
        .map(({ turns }) => turns.join())
        .toSorted()
        .join(" "),
    );
    expect(new Set(found).size).toBe(42);
  });
});
