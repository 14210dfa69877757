import { createSetUpFinder } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/solver/steps";
import { randomSource } from "../../../core/random-source";
import type { SetUpFinder } from "./my-cube-attempt.svelte";

// Replaced by the worker's client as soon as that is there.
const finder = createSetUpFinder();

export const findSetUp: SetUpFinder = (from, to, seed) => {
  const found = runToEnd(finder.find(from, to, randomSource(seed)));
  return Promise.resolve(found.ok ? found.value.turns : undefined);
};
