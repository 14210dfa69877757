import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caseFrequency } from "../../../core/cases/case-frequency";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { lastLayerTradeTitle } from "../../../core/cases/last-layer-words";
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
  type CaseFacts,
  lossAt,
  type WeakSpot,
  weakSpots,
  weakSpotsRound,
} from "../../../core/memory/weak-spots";
import { sampleReview } from "./sample-review";

function known(id: CaseId, target = 4): PlannedCase {
  return {
    case: id,
    hold: "up",
    deck: "d",
    target,
    memory: "kept",
    times: 1,
  };
}

function named(
  title: string,
  stage: "last-layer-turned" | "last-layer-placed",
): CaseId {
  const found = casesOfStage(stage).find(({ id }) => {
    const entry = caseEntry(id);
    return (
      entry.group === "last-layer" && lastLayerTradeTitle(entry.shows) === title
    );
  });
  return present(found, `${title} is a case`).id;
}

/** What a case takes and how likely it is known, by case. */
type Facts = Readonly<
  Record<string, { readonly seconds?: number; readonly chance: number }>
>;

function factsOf(facts: Facts, level = 0.9): CaseFacts {
  return {
    usualSeconds: ({ case: id }) => facts[id]?.seconds,
    chance: ({ case: id }) => facts[id]?.chance ?? 1,
    level,
  };
}

function ids(cases: readonly { readonly planned: PlannedCase }[]): CaseId[] {
  return cases.map(({ planned }) => planned.case);
}

describe("a weak spot", () => {
  it("costs what it takes too long, as often as it is met", () => {
    const [spot] = weakSpots(
      { due: [], resting: [known("E1", 4)] },
      factsOf({ E1: { seconds: 6.5, chance: 0.96 } }),
    );
    const met = 4 * (1 / 24 + 1 / 22 + 1 / 20 + 1 / 18);
    expect(spot?.time).toBeCloseTo(met * 2.5, 12);
    expect(spot?.certainty).toBe(0);
  });

  it("costs three targets each time that it is forgotten more than wanted", () => {
    const [spot] = weakSpots(
      { due: [known("E1", 4)], resting: [] },
      factsOf({ E1: { chance: 0.7 } }, 0.95),
    );
    expect(spot?.time).toBe(0);
    expect(spot?.certainty).toBeCloseTo(caseFrequency("E1") * 0.25 * 12, 12);
  });

  it("is none where nothing is lost: known as surely as wanted, in time or of unknown time", () => {
    const facts = factsOf({
      E1: { seconds: 4, chance: 0.9 },
      E3: { chance: 0.97 },
    });
    expect(
      weakSpots({ due: [known("E1")], resting: [known("E3")] }, facts),
    ).toEqual([]);
    const round = { minutes: 20, secondsToAsk: () => 10 };
    expect(weakSpotsRound([], round)).toEqual([]);
  });

  // Common practice: T comes up in 1 solve of 18 and H in 1 of 72, so that the
  // same two seconds are worth four times as much.
  it("that solves meet more often comes first, though another be slower", () => {
    const t = named("PLL T", "last-layer-placed");
    const h = named("PLL H", "last-layer-placed");
    const resting = [known(h), known(t)];
    const slow = (seconds: number) => ({ seconds, chance: 1 });
    expect(
      ids(
        weakSpots(
          { due: [], resting },
          factsOf({ [t]: slow(6), [h]: slow(11) }),
        ),
      ),
    ).toEqual([t, h]);
    // Seven and a half seconds at H make up for under two at T.
    expect(
      ids(
        weakSpots(
          { due: [], resting },
          factsOf({ [t]: slow(5.8), [h]: slow(11.5) }),
        ),
      ),
    ).toEqual([h, t]);
  });

  // Common practice: with the cross placed a corner lies in the bottom layer
  // far more often than above its home but twisted.
  it("of a beginner is the corner in the bottom before the one twisted at home", () => {
    const facts = factsOf({
      C1: { seconds: 15, chance: 0.9 },
      C4: { seconds: 22, chance: 0.9 },
    });
    const resting = [known("C4", 12), known("C1", 8)];
    expect(ids(weakSpots({ due: [], resting }, facts))).toEqual(["C1", "C4"]);
  });

  it("that is due is asked alone, and any other beyond the schedule", () => {
    const facts = factsOf({
      E1: { seconds: 9, chance: 0.8 },
      E3: { seconds: 9, chance: 0.95 },
    });
    const spots = weakSpots(
      { due: [known("E1")], resting: [known("E3")] },
      facts,
    );
    expect(spots.map(({ planned }) => [planned.case, planned.asking])).toEqual([
      ["E1", undefined],
      ["E3", "extra"],
    ]);
  });
});

const POOL: readonly CaseId[] = [
  "E1",
  "E3",
  "E7",
  "E8a",
  "C1",
  "C4",
  "C6",
  "S1",
  named("PLL T", "last-layer-placed"),
  named("PLL H", "last-layer-placed"),
  named("OLL 21", "last-layer-turned"),
];

const KNOWN_CASES = fc
  .uniqueArray(
    fc.record({
      id: fc.constantFrom(...POOL),
      target: fc.double({ min: 1, max: 40, noNaN: true }),
      seconds: fc.option(fc.double({ min: 0.5, max: 90, noNaN: true }), {
        nil: undefined,
      }),
      chance: fc.double({ min: 0.05, max: 1, noNaN: true }),
      isDue: fc.boolean(),
      secondsToAsk: fc.double({ min: 3, max: 120, noNaN: true }),
    }),
    { selector: ({ id }) => id, minLength: 1 },
  )
  .map((rows) => ({
    rows,
    facts: Object.fromEntries(
      rows.map(({ id, seconds, chance }) => [
        id,
        { ...(seconds === undefined ? {} : { seconds }), chance },
      ]),
    ),
    due: rows
      .filter(({ isDue }) => isDue)
      .map(({ id, target }) => known(id, target)),
    resting: rows
      .filter(({ isDue }) => !isDue)
      .map(({ id, target }) => known(id, target)),
    secondsToAsk: ({ case: id }: PlannedCase) =>
      present(
        rows.find((row) => row.id === id),
        "only these are asked",
      ).secondsToAsk,
  }));

function spotOf(spots: readonly WeakSpot[], id: CaseId): WeakSpot | undefined {
  return spots.find(({ planned }) => planned.case === id);
}

/** How many spots come before a case; all of them where it is none. */
function placeOf(spots: readonly WeakSpot[], id: CaseId): number {
  const place = ids(spots).indexOf(id);
  return place < 0 ? spots.length : place;
}

describe("the ranking of weak spots", () => {
  const level = 0.9;

  it("is by what they cost, and leaves out what costs nothing and nothing else", () => {
    fc.assert(
      fc.property(KNOWN_CASES, ({ due, resting, facts, rows }) => {
        const spots = weakSpots({ due, resting }, factsOf(facts, level));
        const costs = spots.map(lossAt);
        expect(costs).toEqual(costs.toSorted((a, b) => b - a));
        const lossy = rows.filter(
          ({ seconds = 0, target, chance }) =>
            seconds > target || chance < level,
        );
        expect(new Set(ids(spots))).toEqual(new Set(lossy.map(({ id }) => id)));
      }),
    );
  });

  it("never puts a case lower when it gets slower, or less sure, or more is wanted", () => {
    const more = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(KNOWN_CASES, more, (drawn, share) => {
        const { due, resting, facts, rows } = drawn;
        const [first] = rows;
        if (first === undefined) return;
        const { id, seconds = 0, chance } = first;
        const ranked = (changed: Facts[string], wanted = level) =>
          weakSpots(
            { due, resting },
            factsOf({ ...facts, [id]: changed }, wanted),
          );
        const before = ranked({ seconds, chance });
        const cost = (spots: readonly WeakSpot[]) => {
          const spot = spotOf(spots, id);
          return spot === undefined ? 0 : lossAt(spot);
        };
        const slower = ranked({ seconds: seconds + 30 * share, chance });
        expect(cost(slower)).toBeGreaterThanOrEqual(cost(before));
        expect(placeOf(slower, id)).toBeLessThanOrEqual(placeOf(before, id));
        const unsure = ranked({ seconds, chance: chance * (1 - share) });
        expect(cost(unsure)).toBeGreaterThanOrEqual(cost(before));
        expect(placeOf(unsure, id)).toBeLessThanOrEqual(placeOf(before, id));
        const wanted = ranked({ seconds, chance }, level + 0.07 * share);
        expect(cost(wanted)).toBeGreaterThanOrEqual(cost(before));
      }),
    );
  });

  it("puts what is met more often before what is otherwise the same", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...POOL), { minLength: 2 }),
        fc.double({ min: 0.1, max: 0.99, noNaN: true }),
        fc.double({ min: 4.1, max: 60, noNaN: true }),
        (cases, chance, seconds) => {
          const facts = factsOf(
            Object.fromEntries(cases.map((id) => [id, { seconds, chance }])),
          );
          const resting = cases.map((id) => known(id));
          const often = ids(weakSpots({ due: [], resting }, facts)).map(
            caseFrequency,
          );
          expect(often).toHaveLength(cases.length);
          expect(often).toEqual(often.toSorted((a, b) => b - a));
        },
      ),
    );
  });
});

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
    fc.assert(
      fc.property(
        KNOWN_CASES,
        fc.double({ min: 0, max: 30, noNaN: true }),
        ({ due, resting, facts, secondsToAsk }, minutes) => {
          const spots = weakSpots({ due, resting }, factsOf(facts));
          const round = weakSpotsRound(spots, { minutes, secondsToAsk });
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
        },
      ),
    );
  });

  it("never asks a case less often than one that is less weak and takes no less time", () => {
    fc.assert(
      fc.property(
        KNOWN_CASES,
        fc.double({ min: 0, max: 30, noNaN: true }),
        ({ due, resting, facts, secondsToAsk }, minutes) => {
          const spots = weakSpots({ due, resting }, factsOf(facts));
          const round = weakSpotsRound(spots, { minutes, secondsToAsk });
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
        },
      ),
    );
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
