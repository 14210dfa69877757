import { ok } from "../../../../core/result";
import { randomSource } from "../../../../core/random-source";
import { createSetUpFinder } from "../../../../core/solver/set-up";
import { runToEnd } from "../../../../core/steps";
import type { SetUpFinder } from "../../../../renderer/state/practise/my-cube-stage";

const finder = createSetUpFinder();

/** Finds set-ups as the worker does, without one. */
export const foundAtOnce: SetUpFinder = (from, to, seed) => {
  const found = runToEnd(finder.find(from, to, randomSource(seed)));
  return Promise.resolve(found.ok ? ok(found.value.turns) : found);
};
