import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import type { Deck } from "../../../core/deck/deck";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { type DayPlan, planDay } from "../../../core/memory/day-plan";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { planRound } from "../../../core/memory/round-plan";
import { dayNumber } from "../../../core/memory/local-day";
import type { Review } from "../../../core/memory/review";
import { memoriesOf } from "../../../core/memory/schedule";
import { currentItem, startRound } from "../../../core/memory/round";
import { present } from "../../../core/invariant";
import { sampleReview } from "./sample-review";

/** The three decks of the first layer. */
const FIRST_LAYER_DECKS = STARTER_DECKS.slice(0, 3);

function plan(
  log: readonly Review[],
  today: number,
  changes: { decks?: readonly Deck[]; only?: (id: CaseId) => boolean } = {},
): DayPlan {
  return planDay({
    learner: "ada",
    decks: FIRST_LAYER_DECKS,
    hold: "up",
    memories: memoriesOf(log),
    today: dayNumber(today),
    ...changes,
  });
}

function ids(cases: readonly PlannedCase[]): CaseId[] {
  return cases.map((c) => c.case);
}

function met(id: CaseId, day: number, changes: Partial<Review> = {}): Review {
  return sampleReview(day, { id: `${id}-${day}`, case: id, ...changes });
}

describe("a day", () => {
  it("begins with every case new, in the decks' order", () => {
    const day = plan([], 0);
    expect(ids(day.fresh).slice(0, 4)).toEqual(["E1", "E2a", "E2b", "E3"]);
    expect(day.fresh).toHaveLength(FIRST_LAYER_IDS.length);
    expect(day.due).toEqual([]);
    expect(day.resting).toEqual([]);
  });

  it("gives a case back on the day it lasts until, and not the day before", () => {
    const log = [met("E1", 0)];
    const until = present(
      [...memoriesOf(log).values()][0],
      "it was met",
    ).lastsUntil;
    expect(until).toBe(2);
    expect(ids(plan(log, 1).due)).toEqual([]);
    expect(ids(plan(log, 1).resting)).toEqual(["E1"]);
    expect(ids(plan(log, 2).due)).toEqual(["E1"]);
    expect(ids(plan(log, 9).due)).toEqual(["E1"]);
  });

  it("puts what is fading first, then what is least likely to be known", () => {
    const log = [
      met("E1", 5),
      met("E2a", 0),
      met("E2b", 3),
      met("E3", 8, { verdict: "missed" }),
    ];
    expect(ids(plan(log, 9).due)).toEqual(["E3", "E2a", "E2b", "E1"]);
  });

  it("keeps one memory of a case in two decks, and takes the target from the first", () => {
    const deck = (id: string, target: number): Deck => ({
      id,
      name: id,
      description: "",
      cases: [{ case: "E1", target }],
      newPerRound: 2,
    });
    const decks = [deck("mine", 3), deck("other", 5)];
    const { due } = plan([met("E1", 0, { deck: "other" })], 5, { decks });
    expect(due).toHaveLength(1);
    expect(due[0]).toMatchObject({ case: "E1", deck: "mine", target: 3 });
  });

  it("does not mix up holds, nor learners", () => {
    const log = [
      met("E1", 0, { hold: "down" }),
      met("E2a", 0, { learner: "ben" }),
    ];
    expect(plan(log, 9).due).toEqual([]);
  });

  it("keeps to the cases asked for", () => {
    const day = plan([met("E1", 0)], 9, { only: (id) => id.startsWith("C") });
    expect(day.due).toEqual([]);
    expect(ids(day.fresh)[0]).toBe("C1");
  });
});

describe("what a deck asks for", () => {
  const deckOf = (changes: Partial<Deck>): Deck => ({
    id: "mine",
    name: "mine",
    description: "",
    newPerRound: 2,
    cases: [
      { case: "C1", target: 20 },
      { case: "E1", target: 8 },
      { case: "E2a", target: 8 },
    ],
    ...changes,
  });

  it("is its order of stages, whatever the order of the column", () => {
    const decks = [
      deckOf({ stages: ["first-layer-edges", "first-layer-corners"] }),
    ];
    expect(ids(plan([], 0, { decks }).fresh)).toEqual(["E1", "E2a", "C1"]);
    expect(ids(plan([], 0, { decks: [deckOf({})] }).fresh)[0]).toBe("C1");
  });

  it("is how many new cases come into a round, or that none do", () => {
    const many = [deckOf({ newPerRound: 3 })];
    expect(planRound(plan([], 0, { decks: many }))).toHaveLength(3);
    const none = deckOf({ newPerRound: 0 });
    const day = plan([], 0, { decks: [none, ...FIRST_LAYER_DECKS] });
    // The first deck's three cases wait; the others' still come.
    expect(day.heldBack).toBe(3);
    expect(ids(day.fresh)[0]).toBe("E2b");
    expect(planRound(plan([], 0, { decks: [none] }))).toEqual([]);
  });

  it("is its hold before the learner's own, with a memory of its own", () => {
    const decks = [deckOf({ hold: "down" })];
    const log = [met("E1", 0), met("C1", 0, { hold: "down" })];
    const { fresh, due } = plan(log, 30, { decks });
    expect(ids(due)).toEqual(["C1"]);
    expect(ids(fresh)).toEqual(["E1", "E2a"]);
    expect(new Set(fresh.map(({ hold }) => hold))).toEqual(new Set(["down"]));
  });

  it("asks every case at least so often up to a day, and then leaves it to the memory", () => {
    const log = Array.from({ length: 6 }, (_, n) =>
      met("E1", 20_700 + 8 * n * n),
    );
    const last = 20_700 + 8 * 25;
    const until = present(
      [...memoriesOf(log).values()][0],
      "it was met",
    ).lastsUntil;
    expect(until).toBeGreaterThan(last + 20);
    // Day 20,907 is 30 March 2027 (days since 1 January 1970).
    const decks = [deckOf({ ceiling: { everyDays: 7, until: "2027-03-30" } })];
    expect(ids(plan(log, last + 6, { decks }).due)).toEqual([]);
    expect(plan(log, last + 6, { decks }).nextDue).toBe(last + 7);
    expect(ids(plan(log, last + 7, { decks }).due)).toEqual(["E1"]);
    const over = [deckOf({ ceiling: { everyDays: 8, until: "2027-03-30" } })];
    expect(ids(plan(log, last + 10, { decks: over }).due)).toEqual([]);
  });

  it("goes with each case into the round, and decides how it is asked", () => {
    const choice = {
      placed: 0,
      home: "anywhere",
      lining: "turned-away",
      pieces: "unmarked",
      answerWays: ["my-cube"],
    } as const;
    const decks = [
      deckOf({ cases: [{ case: "C1", target: 20, note: "look", ...choice }] }),
    ];
    const planned = planRound(plan([], 0, { decks }));
    expect(planned[0]?.choice).toEqual(choice);
    const items = Array.from({ length: 40 }, (_, seed) =>
      currentItem(
        startRound(planned, {
          id: "r",
          learner: "ada",
          day: dayNumber(0),
          seed,
          now: 0,
        }),
      ),
    );
    expect(items.every((item) => item?.variant.placed.length === 0)).toBe(true);
    // A new case would have its home in front and its piece lined up.
    const seen = new Set(items.map((item) => item?.variant.seenFrom));
    const turned = new Set(items.map((item) => item?.variant.turnedAway));
    expect([seen.size, turned.size]).toEqual([4, 4]);
    expect(items[0]?.choice).toEqual(choice);
    for (const placed of [1, 2, 3] as const) {
      const asked = planRound(
        plan([], 0, {
          decks: [deckOf({ cases: [{ case: "C1", target: 20, placed }] })],
        }),
      );
      const begun = { id: "r", learner: "ada", day: dayNumber(0), now: 0 };
      const item = currentItem(startRound(asked, { ...begun, seed: 1 }));
      expect(item?.variant.placed).toHaveLength(placed);
    }
    expect(plan([], 0).fresh[0]).not.toHaveProperty("choice");
  });
});
