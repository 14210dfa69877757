import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caseFrequency } from "../../../core/cases/case-frequency";
import type { CaseId } from "../../../core/cases/case-ids";
import {
  lossAt,
  type WeakSpot,
  weakSpots,
  weakSpotsRound,
} from "../../../core/memory/weak-spots";
import {
  type Facts,
  factsOf,
  ids,
  known,
  KNOWN_CASES,
  named,
  POOL,
} from "./known-cases";

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
