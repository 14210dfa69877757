/**
 * How long the progress page's worker takes over a long log, from the packed
 * columns to the facts, and the window's own part, packing them. The page with
 * its store and its drawing is not in it.
 */
import { invariant } from "../../core/invariant";
import type { Milliseconds, Review } from "../../core/memory/review";
import {
  logDigest,
  packLog,
  type PackedAnswer,
  unpacked,
} from "../../core/progress/packed-log";
import { progressFacts } from "../../core/progress/progress-facts";
import { pick, randomSource } from "../../core/random-source";
import { madeLog } from "./replay";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const TIMES = 3;

/** Sizes with the limits that the whole page has. Units: milliseconds. */
const SIZES = [
  { answers: 100_000, name: "100,000", target: 1000 },
  { answers: 1_000_000, name: "a million", target: 4000 },
] as const;

/** From two to ten turns, after every thinking time; shared, or a million answers would not fit in memory. */
const TURNS = Array.from({ length: 9 }, (_, more): Review["turns"] =>
  Array.from({ length: more + 2 }, (_, i) => ({
    turn: "R",
    at: (7000 + i) as Milliseconds,
  })),
);

/** The replay's log as one learner's, with times. */
function withTimes(count: number): readonly PackedAnswer[] {
  const random = randomSource(7);
  const duration = (upTo: number) => (500 + random.below(upTo)) as Milliseconds;
  return madeLog(count).map((review) => {
    const [thinking, turning] = [duration(6000), duration(4000)];
    const answerWay: Review["answerWay"] =
      random.below(5) === 0 ? "my-cube" : "on-screen";
    const total = (thinking + turning) as Milliseconds;
    const turns = pick(random, TURNS);
    return { ...review, answerWay, thinking, turning, total, turns, target: 8 };
  });
}

/** Measures packing and reading. */
export function progress(): Promise<BenchResult[]> {
  const results = SIZES.flatMap(({ answers, name, target }) => {
    const log = withTimes(answers);
    const today = log.at(-1)?.localDay;
    invariant(today !== undefined, "the log is not empty");
    const packing: number[] = [];
    const reading: number[] = [];
    for (let i = 0; i < TIMES; i++) {
      const start = performance.now();
      const packed = packLog(log);
      logDigest(packed);
      const middle = performance.now();
      const facts = progressFacts(unpacked(packed), today);
      packing.push(middle - start);
      reading.push(performance.now() - middle);
      if (facts.answers !== answers || facts.casesOverDays.length !== 33)
        throw new WrongAnswer(`${facts.answers} answers`);
    }
    return [
      resultFrom({
        name: `progress: packing ${name} answers`,
        unit: "ms",
        better: "lower",
        samples: packing,
      }),
      resultFrom({
        name: `progress: facts of ${name} answers`,
        unit: "ms",
        better: "lower",
        samples: reading,
        target,
      }),
    ];
  });
  return Promise.resolve(results);
}
