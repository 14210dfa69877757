/**
 * How long planning a day takes that has 500 cases to choose from: what fits
 * the minutes, the catch-up played through, and a round with its look-alikes
 * apart. Cold is the first plan of a program, which finds the look-alikes.
 */
import { areAlike } from "../../core/cases/alike";
import { casesOfStage, stageOfCase } from "../../core/cases/case-table";
import { holdFor } from "../../core/cases/hold-in-stage";
import { STAGES } from "../../core/cases/stage";
import type { Deck } from "../../core/deck/deck";
import { dayAfter, dayNumber } from "../../core/memory/local-day";
import { planRound } from "../../core/memory/round-plan";
import { type Memory, memoryKey } from "../../core/memory/schedule";
import { planToday } from "../../core/memory/today";
import { randomSource } from "../../core/random-source";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const CASES = 500;
const MET = 400;
const TIMES = 20;
const TODAY = dayNumber(20_500);
const LEARNER = "ada";

/** The first cases of all stages, the large sets cut off. */
const DECK: Deck = {
  id: "bench",
  name: "bench",
  description: "",
  newPerRound: 3,
  cases: STAGES.flatMap((stage) => casesOfStage(stage).slice(0, 100))
    .slice(0, CASES)
    .map(({ id }) => ({ case: id, target: 8 })),
};

/** Memories of the first of them: last asked up to two months ago, and made to last one to sixty days. */
function memories(): ReadonlyMap<string, Memory> {
  const random = randomSource(3);
  return new Map(
    DECK.cases.slice(0, MET).map(({ case: id }) => {
      const hold = holdFor(stageOfCase(id), "up");
      const lastDay = dayAfter(TODAY, -random.below(60));
      const stability = 1 + random.below(60);
      const memory: Memory = {
        learner: LEARNER,
        case: id,
        hold,
        stability,
        difficulty: 5,
        lastDay,
        lastsUntil: dayAfter(lastDay, stability),
        missedLast: false,
        days: 1 + random.below(5),
      };
      return [memoryKey(LEARNER, id, hold), memory] as const;
    }),
  );
}

/** Measures planning a day and cutting a round from it, cold once and then warm. */
export function plan(): Promise<BenchResult[]> {
  const known = memories();
  const planOnce = (): number => {
    const start = performance.now();
    const today = planToday({
      learner: LEARNER,
      decks: [DECK],
      hold: "up",
      memories: known,
      today: TODAY,
      minutes: 20,
      practised: 0,
      secondsFor: ({ memory }) => (memory === "new" ? 60 : 15),
    });
    const round = planRound(today, { areAlike });
    const time = performance.now() - start;
    const asked = today.due.length + today.waiting.length;
    if (asked === 0 || today.waiting.length === 0 || round.length === 0)
      throw new WrongAnswer(
        `${asked} due, ${today.waiting.length} of them waiting, ${round.length} in the round`,
      );
    return time;
  };
  const shared = { unit: "ms", better: "lower", target: 50 } as const;
  const cold = planOnce();
  const warm = Array.from({ length: TIMES }, planOnce);
  return Promise.resolve([
    resultFrom({ ...shared, name: "plan of 500 cases: cold", samples: [cold] }),
    resultFrom({ ...shared, name: "plan of 500 cases", samples: warm }),
  ]);
}
