/**
 * How many random positions a second: drawn in place, as a long list is made,
 * and as the window asks for them, one new object each.
 */
import { FIRST_LAYER_IDS } from "../../core/cases/case-ids";
import {
  positionSampler,
  randomPosition,
} from "../../core/cases/random-position";
import { randomVariant } from "../../core/cases/random-variant";
import { emptyCubies } from "../../core/cube/sample-state";
import { validateCubies } from "../../core/cube/validity";
import { randomSource } from "../../core/random-source";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const SEED = 1;
const BLOCKS = 20;
const OF_EACH = 1_000;

const random = randomSource(SEED);
const ASKED = FIRST_LAYER_IDS.flatMap((id) =>
  Array.from({ length: 4 }, () => ({
    id,
    variant: randomVariant(random, id, { turnedAway: true }),
  })),
);

const IN_A_BLOCK = OF_EACH * ASKED.length;

/** Positions a second in each block, after one block to warm up. */
function rates(drawBlock: () => void): number[] {
  drawBlock();
  return Array.from({ length: BLOCKS }, () => {
    const start = performance.now();
    drawBlock();
    return (1000 * IN_A_BLOCK) / (performance.now() - start);
  });
}

/** Measures both, over every case with its pieces turned away in any way. */
export function positions(): Promise<BenchResult[]> {
  const state = emptyCubies();
  const inPlace = rates(() => {
    for (const { id, variant } of ASKED) {
      const sampler = positionSampler(id, variant);
      for (let i = 0; i < OF_EACH; i++) sampler.drawInPlace(random, state);
      if (!validateCubies(state).ok)
        throw new WrongAnswer(`a position of ${id} cannot be reached`);
    }
  });
  const asObjects = rates(() => {
    for (const { id, variant } of ASKED)
      for (let i = 0; i < OF_EACH; i++)
        randomPosition(random, id, variant, "up");
  });
  const shared = { unit: "positions/s", better: "higher" } as const;
  return Promise.resolve([
    resultFrom({
      ...shared,
      name: "positions: drawn in place",
      samples: inPlace,
      // The issue: over a million is known to be reachable.
      target: 1_000_000,
    }),
    resultFrom({
      ...shared,
      name: "positions: one object each",
      samples: asObjects,
    }),
  ]);
}
