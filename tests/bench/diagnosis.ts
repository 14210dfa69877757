/**
 * How long a wrong answer takes to explain, over mistakes of every kind in
 * every stage, the ways of the stages worked out; and how long the first one
 * of a stage takes, which works them out.
 */
import { diagnose } from "../../core/answer/diagnose";
import { type Stage, STAGES } from "../../core/cases/stage";
import { randomSource } from "../../core/random-source";
import {
  type Mistake,
  simulatedMistake,
} from "../core/answer/simulated-mistakes";
import { tableOfWays } from "../core/answer/table-of-ways";
import { type BenchResult, quantile, resultFrom, WrongAnswer } from "./result";

const SEED = 83;
const OF_EACH_STAGE = 125;
/** At most so long for 95 in 100. Units: milliseconds. */
const TARGET = 15;

/** Measures diagnosis. */
export function diagnosis(): Promise<BenchResult[]> {
  const random = randomSource(SEED);
  const mistakesIn = (stage: Stage) =>
    Array.from({ length: OF_EACH_STAGE }, () =>
      simulatedMistake(random, stage, tableOfWays),
    );
  const first: number[] = [];
  const further: number[] = [];
  for (const stage of STAGES) {
    const [one, ...more] = mistakesIn(stage);
    if (one !== undefined) first.push(timeOf(one));
    further.push(...more.map(timeOf));
  }
  const form = { unit: "ms", better: "lower" } as const;
  return Promise.resolve([
    resultFrom({
      ...form,
      name: "diagnosis: a wrong answer",
      samples: further,
    }),
    resultFrom({
      ...form,
      name: "diagnosis: 95 in 100 wrong answers within",
      samples: [quantile(further, 0.95)],
      target: TARGET,
    }),
    resultFrom({
      ...form,
      name: "diagnosis: a stage's first wrong answer",
      samples: first,
    }),
  ]);
}

/** How long a mistake takes. Errors: it is said to be right. */
function timeOf({ position, turns, taught }: Mistake): number {
  const start = performance.now();
  const { explanation } = diagnose(position, turns, taught, tableOfWays);
  const taken = performance.now() - start;
  if (explanation === undefined)
    throw new WrongAnswer("a wrong answer is said to be right");
  return taken;
}
