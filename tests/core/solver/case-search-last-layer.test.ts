import { describe, expect, it, vi } from "vitest";
import { FREE_LAYER } from "../../../core/cases/stage";
import { rotationAbout } from "../../../core/cube/symmetries";
import {
  faceTurnsOf,
  type FaceTurnSequence,
  normalised,
  withoutEndsOf,
} from "../../../core/solver/face-turn-sequence";
import {
  LAST_LAYER_ORIENTATIONS,
  LAST_LAYER_PERMUTATIONS,
  SHORTEST_PERMUTATIONS,
} from "../../reference/published-values";
import { turnsOf } from "../notation/turns-of";
import { ALL_PLACED, answeredBy, LAST_LAYER_TURNED } from "./case-questions";
import {
  afterByOracle,
  answers,
  isPlacedByOracle,
  lengthOf,
} from "./case-answers";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const IN_SOAK = process.env["TURNWISE_SOAK"] !== undefined;

describe("the case search on the last layer", () => {
  // Thirteen turns take two minutes each; V and E, with fourteen, are not searched.
  const USUAL = LAST_LAYER_PERMUTATIONS.filter(
    ({ name }) => (SHORTEST_PERMUTATIONS[name] ?? NaN) <= (IN_SOAK ? 13 : 10),
  );

  it.each(USUAL)(
    "places permutation $name in the fewest turns published (those of up to 10 turns; up to 13 with TURNWISE_SOAK)",
    ({ name, sequence }) => {
      const from = answeredBy(sequence);
      const found = answers({ from, goal: ALL_PLACED });
      expect(lengthOf(found)).toBe(SHORTEST_PERMUTATIONS[name]);
      for (const answer of found)
        expect(isPlacedByOracle(afterByOracle(from, answer), ALL_PLACED)).toBe(
          true,
        );
    },
    IN_SOAK ? 1_800_000 : 60_000,
  );

  it("has a length for each of the 21", () => {
    expect(Object.keys(SHORTEST_PERMUTATIONS).toSorted()).toEqual(
      LAST_LAYER_PERMUTATIONS.map(({ name }) => name).toSorted(),
    );
  });

  // The listed sequences (common practice) need at least as many turns.
  const TURNED = LAST_LAYER_ORIENTATIONS.filter(
    ({ number }) =>
      IN_SOAK || [26, 27, 33, 37, 43, 44, 45, 57].includes(number),
  );

  it.each(TURNED)(
    "turns orientation $number in no more turns than the usual sequence, by the oracle too (8 of the 57; all with TURNWISE_SOAK)",
    ({ sequence }) => {
      const from = answeredBy(sequence);
      const found = answers({ from, goal: LAST_LAYER_TURNED });
      const listed = withoutEndsOf(FREE_LAYER, usual(sequence)).length;
      expect(lengthOf(found)).toBeGreaterThan(0);
      expect(lengthOf(found)).toBeLessThanOrEqual(listed);
      for (const answer of found) {
        const after = afterByOracle(from, answer);
        expect(isPlacedByOracle(after, LAST_LAYER_TURNED)).toBe(true);
        // The nine stickers of the bottom, in the order of the usual string.
        expect(after.slice(27, 36)).toBe("DDDDDDDDD");
      }
    },
    60_000,
  );
});

/** A listed sequence as face turns of a cube whose last layer is at the bottom. */
function usual(sequence: string): FaceTurnSequence {
  return normalised(faceTurnsOf(rotationAbout("z", 2), turnsOf(sequence)));
}
