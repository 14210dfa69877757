/**
 * Weeks of practice, day by day: rounds cut from today's plan and answered, as
 * the window does, by somebody who knows everything and takes their time.
 */
import { describe, expect, it } from "vitest";
import { areAlike } from "../../../core/cases/alike";
import type { CaseId } from "../../../core/cases/case-ids";
import { FIRST_COURSE } from "../../../core/deck/starter-decks";
import { dayNumber } from "../../../core/memory/local-day";
import type { Review } from "../../../core/memory/review";
import {
  answerItem,
  currentItem,
  startRound,
} from "../../../core/memory/round";
import { planRound } from "../../../core/memory/round-plan";
import { memoriesOf } from "../../../core/memory/schedule";
import { secondsPractised, timeNeeded } from "../../../core/memory/time-needed";
import { planToday } from "../../../core/memory/today";
import { ms, noonOf, sampleReview } from "./sample-review";

interface Learner {
  readonly minutes: number;
  /** Units: seconds. */
  readonly answer: number;
  readonly between: number;
}

interface Practice {
  /** The share of each day's minutes that was practised, as long as new cases were left. */
  readonly shares: readonly number[];
  /** The cases first met, round by round of each day. */
  readonly met: readonly (readonly (readonly CaseId[])[])[];
}

function practise(learner: Learner, days: number): Practice {
  let log: readonly Review[] = [];
  const shares: number[] = [];
  const met: CaseId[][][] = [];
  for (let day = 0; day < days; day++) {
    const today = dayNumber(day);
    let at = noonOf(day) as number;
    const metToday: CaseId[][] = [];
    let freshWaits = true;
    for (let round = 0; round < 40; round++) {
      const plan = planToday({
        learner: "ada",
        decks: FIRST_COURSE,
        hold: "up",
        memories: memoriesOf(log),
        today,
        minutes: learner.minutes,
        practised: secondsPractised(log, today),
        secondsFor: timeNeeded(log, "on-screen").toAsk,
        areAlike,
      });
      const planned = planRound(plan, { areAlike });
      freshWaits = plan.freshWaiting > 0;
      if (planned.length === 0) break;
      metToday.push(
        planned.flatMap((one) => (one.memory === "new" ? [one.case] : [])),
      );
      let asked = startRound(planned, {
        id: "round",
        learner: "ada",
        day: today,
        seed: day,
        now: at,
      });
      for (let item; (item = currentItem(asked)) !== undefined;) {
        at += 1000 * (learner.between + learner.answer);
        const review = sampleReview(day, {
          id: `${at}`,
          case: item.case,
          hold: item.hold,
          asking: item.asking,
          at: ms(at),
          total: ms(1000 * learner.answer),
          target: item.target,
        });
        log = [...log, review];
        asked = answerItem(asked, review, "steady");
      }
    }
    met.push(metToday);
    if (freshWaits)
      shares.push(secondsPractised(log, today) / (60 * learner.minutes));
  }
  return { shares, met };
}

const LEARNERS: Readonly<Record<string, Learner>> = {
  "quick, fifteen minutes": { minutes: 15, answer: 5, between: 6 },
  "slow, five minutes": { minutes: 5, answer: 30, between: 10 },
  "slow, with a cube in the hands, five minutes": {
    minutes: 5,
    answer: 25,
    between: 30,
  },
};

describe.each(Object.entries(LEARNERS))("three weeks, %s", (_, learner) => {
  const { shares, met } = practise(learner, 21);

  it("fill the minutes as long as there is something new", () => {
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    expect(mean).toBeGreaterThan(0.8);
    expect(mean).toBeLessThan(1.4);
  });

  it("never bring two look-alikes in one round", () => {
    for (const rounds of met)
      for (const round of rounds)
        for (const [i, one] of round.entries())
          for (const other of round.slice(i + 1))
            expect(areAlike(one, other), `${one} ${other}`).toBe(false);
  });
});
