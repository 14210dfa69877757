/**
 * How long the shortest answers of a case take to find, tables ready: first
 * layer, second-layer edges, pairs, turning the last layer. Every answer is
 * played.
 */
import {
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../core/cases/case-ids";
import { partlyKnownPosition } from "../../core/cases/partly-known-position";
import { randomPosition } from "../../core/cases/random-position";
import { randomVariant } from "../../core/cases/random-variant";
import { randomSource } from "../../core/random-source";
import { afterFreeQuarters, quartersToGoal } from "../../core/cases/case-goal";
import {
  type CaseQuestion,
  type CaseSearch,
  createCaseSearch,
} from "../../core/solver/case-search";
import { afterSequence } from "../../core/solver/face-turn-sequence";
import { runToEnd } from "../../core/steps";
import {
  answeredBy,
  goalOf,
  LAST_LAYER_TURNED,
  pairStates,
  secondLayerEdgeStates,
  TWO_LAYERS,
} from "../core/solver/case-questions";
import { LAST_LAYER_ORIENTATIONS } from "../reference/published-values";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const SEED = 44;
const OF_EACH = 5;
const TARGET = { tables: 400, small: 10, pair: 20, turned: 30, worst: 2000 };

/** Measures each stage's search and how soon its tables are ready. */
export function caseSearch(): Promise<BenchResult[]> {
  const random = randomSource(SEED);
  const firstLayer = Array.from({ length: OF_EACH }, () =>
    [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS].map(
      (id): CaseQuestion => {
        const variant = randomVariant(random, id, { turnedAway: true });
        const position = randomPosition(random, id, variant, "up");
        const from = partlyKnownPosition(position, "named").cubies;
        return { from, goal: goalOf(position) };
      },
    ),
  ).flat();
  const goal = { placed: TWO_LAYERS };
  const secondLayer = secondLayerEdgeStates().map((from) => ({ from, goal }));
  const pairs = pairStates().map((from) => ({ from, goal }));
  const turned = LAST_LAYER_ORIENTATIONS.map(({ sequence }) => ({
    from: answeredBy(sequence),
    goal: LAST_LAYER_TURNED,
  }));

  const search = createCaseSearch();
  // Shorter questions need fewer tables: the last one needs them all.
  const [hard] = turned;
  if (hard === undefined) throw new WrongAnswer("there are 57 of them");
  const ready = time(() => runToEnd(search.prepare(hard.goal)));
  for (const question of [...firstLayer, ...secondLayer, ...pairs])
    answerTime(search, question);
  const turnedTimes = turned.map((question) => answerTime(search, question));
  const times = (questions: readonly CaseQuestion[]) =>
    questions.map((question) => answerTime(search, question));
  const form = { unit: "ms", better: "lower" } as const;
  const line = (name: string, samples: readonly number[], target: number) =>
    resultFrom({ ...form, name: `case search: ${name}`, samples, target });
  return Promise.resolve([
    line("tables ready", [ready], TARGET.tables),
    line("first layer", times(firstLayer), TARGET.small),
    line("second-layer edges", times(secondLayer), TARGET.small),
    line("pairs", times(pairs), TARGET.pair),
    line("turning the last layer", turnedTimes, TARGET.turned),
    line(
      "turning the last layer, worst",
      [Math.max(...turnedTimes)],
      TARGET.worst,
    ),
  ]);
}

function time(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** How long a question takes. Errors: an answer that does not reach the goal. */
function answerTime(search: CaseSearch, question: CaseQuestion): number {
  const start = performance.now();
  const found = runToEnd(search.answers(question));
  const taken = performance.now() - start;
  const { from, goal } = question;
  if (found.length === 0) throw new WrongAnswer("a case has no answer");
  for (const { before, turns, after } of found) {
    const end = afterSequence(afterFreeQuarters(from, before), turns);
    if (quartersToGoal(end, goal) !== after)
      throw new WrongAnswer(`${turns.join(" ")} does not answer`);
  }
  return taken;
}
