import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { present } from "../../../core/invariant";
import { planDay } from "../../../core/memory/day-plan";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { EXTRA_TIMES } from "../../../core/memory/round-plan";
import { dayNumber } from "../../../core/memory/local-day";
import {
  chanceNow,
  memoriesOf,
  memoryKey,
} from "../../../core/memory/schedule";
import {
  type WeakSpot,
  weakSpots,
  weakSpotsRound,
} from "../../../core/memory/weak-spots";
import { factsOf, ids, known, KNOWN_CASES, POOL } from "./known-cases";
import { sampleReview } from "./sample-review";

interface PlannedRound {
  readonly spots: readonly WeakSpot[];
  readonly round: readonly PlannedCase[];
  readonly minutes: number;
  readonly secondsToAsk: (one: PlannedCase) => number;
}

/** Looks at rounds of any known cases, in any number of minutes. */
function everyRound(look: (planned: PlannedRound) => void): void {
  fc.assert(
    fc.property(
      KNOWN_CASES,
      fc.double({ min: 0, max: 30, noNaN: true }),
      ({ due, resting, facts, secondsToAsk }, minutes) => {
        const spots = weakSpots({ due, resting }, factsOf(facts));
        const round = weakSpotsRound(spots, { minutes, secondsToAsk });
        look({ spots, round, minutes, secondsToAsk });
      },
    ),
  );
}

describe("a round of weak spots", () => {
  const TARGETS = { minutes: 5, secondsToAsk: () => 15 };
  const slow = (count: number) =>
    weakSpots(
      { due: [], resting: POOL.slice(0, count).map((id) => known(id)) },
      factsOf(
        Object.fromEntries(POOL.map((id) => [id, { seconds: 8, chance: 1 }])),
      ),
    );

  it("asks a few of the worst four times rather than many once", () => {
    const round = weakSpotsRound(slow(8), TARGETS);
    expect(round.map(({ times }) => times)).toEqual([4, 4, 4, 4, 4]);
    expect(round.map((one) => one.case)).toEqual(ids(slow(8)).slice(0, 5));
  });

  it("asks three cases less often where four times each would leave two", () => {
    const times = (minutes: number, count = 8) =>
      weakSpotsRound(slow(count), { ...TARGETS, minutes }).map(
        (one) => one.times,
      );
    // 12, 8, 6, 4, 2 askings.
    expect(times(3)).toEqual([4, 4, 4]);
    expect(times(2)).toEqual([3, 3, 2]);
    expect(times(1.5)).toEqual([2, 2, 2]);
    expect(times(1)).toEqual([1, 1, 1, 1]);
    expect(times(0.5)).toEqual([1, 1]);
    // Where no more are weak, nothing else can stand between.
    expect(times(2, 1)).toEqual([4]);
    expect(times(0.2)).toEqual([]);
  });

  it("fits the minutes, leaves none that another asking would fit, and repeats at most four times", () => {
    everyRound(({ spots, round, minutes, secondsToAsk }) => {
      const taken = round.reduce(
        (sum, one) => sum + one.times * secondsToAsk(one),
        0,
      );
      expect(taken).toBeLessThanOrEqual(minutes * 60 + 1e-6);
      for (const { times } of round) {
        expect(times).toBeGreaterThanOrEqual(1);
        expect(times).toBeLessThanOrEqual(EXTRA_TIMES);
      }
      const asked = round.map((one) => one.case);
      expect(new Set(asked).size).toBe(asked.length);
      const left = minutes * 60 - taken;
      for (const { planned } of spots)
        if (!asked.includes(planned.case))
          expect(secondsToAsk(planned)).toBeGreaterThan(left - 1e-6);
    });
  });

  it("never asks a case less often than one that is less weak and takes no less time", () => {
    everyRound(({ spots, round, secondsToAsk }) => {
      const times = spots.map(
        ({ planned }) =>
          round.find((one) => one.case === planned.case)?.times ?? 0,
      );
      spots.forEach(({ planned }, i) => {
        spots.slice(i + 1).forEach((other, j) => {
          if (secondsToAsk(other.planned) >= secondsToAsk(planned))
            expect(times[i]).toBeGreaterThanOrEqual(times[i + 1 + j] ?? 0);
        });
      });
    });
  });

  it("never brings in a new case, and asks exactly what is due alone", () => {
    const reviews = fc.array(
      fc.record({
        id: fc.constantFrom<CaseId>("E1", "E2a", "E3", "E7", "C1", "C3"),
        day: fc.integer({ min: 0, max: 60 }),
        isMissed: fc.boolean(),
        asking: fc.constantFrom("alone", "alone", "helped", "shown"),
      }),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(
        reviews,
        fc.integer({ min: 60, max: 200 }),
        fc.integer({ min: 1, max: 30 }),
        (rows, today, minutes) => {
          const memories = memoriesOf(
            rows.map(({ id, day, isMissed, asking }, i) =>
              sampleReview(day, {
                id: `r${i}`,
                case: id,
                asking,
                verdict: isMissed ? "missed" : "right",
              }),
            ),
          );
          const day = planDay({
            learner: "ada",
            decks: STARTER_DECKS,
            hold: "up",
            memories,
            today: dayNumber(today),
          });
          const memoryFor = ({ case: id, hold }: PlannedCase) =>
            present(memories.get(memoryKey("ada", id, hold)), "it was met");
          const round = weakSpotsRound(
            weakSpots(day, {
              usualSeconds: () => 60,
              chance: (one) => chanceNow(memoryFor(one), day.today),
            }),
            { minutes, secondsToAsk: () => 5 },
          );
          // Everything is slow here: what was met is asked while minutes last.
          expect(round.length > 0).toBe(memories.size > 0);
          for (const one of round) {
            expect(one.memory).not.toBe("new");
            const isDue = memoryFor(one).lastsUntil <= today;
            expect(one.asking).toBe(isDue ? undefined : "extra");
          }
        },
      ),
    );
  });
});
