/**
 * How long it takes to grade a log of a million reviews and rebuild every
 * memory from it: what the window does once at start, in a worker.
 */
import { FIRST_LAYER_IDS } from "../../core/cases/case-ids";
import { invariant } from "../../core/invariant";
import { dayNumber } from "../../core/memory/local-day";
import { type GradableReview, gradeLog } from "../../core/memory/grader";
import type { Milliseconds } from "../../core/memory/review";
import {
  inReplayOrder,
  memoriesOf,
  memoryKey,
  memoryOf,
} from "../../core/memory/schedule";
import { pick, randomSource, shuffled } from "../../core/random-source";
import { resultFrom, WrongAnswer, type BenchResult } from "./result";

const REVIEWS = 1_000_000;
const REVIEWS_A_DAY = 200;
const DAY = 86_400_000;
const TIMES = 7;

const LEARNERS = Array.from({ length: 30 }, (_, i) => `learner-${i}`);

/** A club's log: 30 learners, 5,000 days, a tenth missed, an eighth corrected. */
export function madeLog(reviews = REVIEWS): readonly GradableReview[] {
  const random = randomSource(20_260_310);
  return Array.from({ length: reviews }, (_, i): GradableReview => {
    const day = Math.floor(i / REVIEWS_A_DAY);
    return {
      id: `review-${String(i).padStart(7, "0")}`,
      learner: pick(random, LEARNERS),
      case: pick(random, FIRST_LAYER_IDS),
      hold: "up",
      at: (day * DAY + (i % REVIEWS_A_DAY) * 60_000) as Milliseconds,
      localDay: dayNumber(day),
      asking: "alone",
      interrupted: false,
      verdict: random.below(10) === 0 ? "missed" : "right",
      corrections: random.below(8) === 0 ? 1 : 0,
      hints: [],
      answerWay: "on-screen",
      thinking: 800 + random.below(2000),
      total: 5000 as Milliseconds,
      target: 8,
    };
  });
}

function timed(log: readonly GradableReview[]): number {
  const start = performance.now();
  const memories = memoriesOf(log);
  const time = performance.now() - start;
  if (memories.size !== LEARNERS.length * FIRST_LAYER_IDS.length)
    throw new WrongAnswer(`${memories.size} memories`);
  return time;
}

/** The same memory from its own graded answers alone, and from the log in another order. */
function check(log: readonly GradableReview[]): void {
  const [first] = log;
  invariant(first !== undefined, "the log is not empty");
  const { learner, hold, case: id } = first;
  const own = gradeLog(log).filter(
    ({ review: r }) => r.learner === learner && r.case === id,
  );
  const all = memoriesOf(shuffled(randomSource(1), log));
  const [a, b] = [memoryOf(own), all.get(memoryKey(learner, id, hold))];
  if (a === undefined || JSON.stringify(a) !== JSON.stringify(b))
    throw new WrongAnswer("a memory depends on the order of the log");
  if (inReplayOrder(log) !== log)
    throw new WrongAnswer("a log in order was sorted");
}

/** Replays a million reviews, in order as they are stored. */
export function replay(): Promise<BenchResult[]> {
  const log = madeLog();
  check(log);
  const samples = Array.from({ length: TIMES }, () => timed(log));
  return Promise.resolve([
    resultFrom({
      name: "memory: replay of a million reviews",
      unit: "ms",
      better: "lower",
      samples,
      target: 1500,
    }),
  ]);
}
