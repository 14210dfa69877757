import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { type DayPlan, planDay } from "../../../core/memory/day-plan";
import { dayNumber } from "../../../core/memory/local-day";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import type { Review } from "../../../core/memory/review";
import { startRound } from "../../../core/memory/round";
import { planRound, ROUND_SIZE } from "../../../core/memory/round-plan";
import { memoriesOf } from "../../../core/memory/schedule";
import { sampleReview } from "./sample-review";

function plan(
  log: readonly Review[],
  today: number,
  only: (id: CaseId) => boolean = () => true,
): DayPlan {
  return planDay({
    learner: "ada",
    decks: STARTER_DECKS.slice(0, 3),
    hold: "up",
    memories: memoriesOf(log),
    today: dayNumber(today),
    only,
  });
}

function ids(cases: readonly PlannedCase[]): CaseId[] {
  return cases.map((c) => c.case);
}

function met(id: CaseId, day: number, changes: Partial<Review> = {}): Review {
  return sampleReview(day, { id: `${id}-${day}`, case: id, ...changes });
}

describe("a planned round", () => {
  const dayOf = (due: number, fresh: number, newPerRound = 3): DayPlan => {
    const cases = (from: number, n: number, memory: "new" | "settling") =>
      FIRST_LAYER_IDS.slice(from, from + n).map((id) => ({
        case: id,
        hold: "up" as const,
        deck: "d",
        target: 8,
        memory,
        times: 1,
      }));
    return {
      today: dayNumber(0),
      due: cases(0, due, "settling"),
      fresh: cases(due, fresh, "new"),
      heldBack: 0,
      resting: [],
      nextDue: undefined,
      newPerRound,
    };
  };
  const counts = (cases: readonly PlannedCase[]) => ({
    due: cases.filter((c) => c.memory !== "new").length,
    fresh: cases.filter((c) => c.memory === "new").length,
  });

  it("has three new edges at first, or two new corners", () => {
    expect(ids(planRound(plan([], 0)))).toEqual(["E1", "E2a", "E2b"]);
    const corners = plan([], 0, (id) => id.startsWith("C"));
    expect(ids(planRound(corners))).toEqual(["C1", "C2"]);
  });

  it("lets what is due go before what is new", () => {
    expect(counts(planRound(dayOf(20, 10)))).toEqual({ due: 12, fresh: 0 });
    expect(counts(planRound(dayOf(8, 10)))).toEqual({ due: 8, fresh: 1 });
    expect(counts(planRound(dayOf(4, 10)))).toEqual({ due: 4, fresh: 2 });
    expect(counts(planRound(dayOf(0, 10)))).toEqual({ due: 0, fresh: 3 });
  });

  it("warms up with a due case and mixes new ones in", () => {
    expect(ids(planRound(dayOf(4, 10)))).toEqual([
      "E1",
      "E4a",
      "E2a",
      "E2b",
      "E4b",
      "E3",
    ]);
  });

  it("has about as many answers asked alone as wanted, and every case once", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 15 }),
        fc.integer({ min: 0, max: 15 }),
        fc.constantFrom(2, 3),
        (due, fresh, newPerRound) => {
          const cases = planRound(dayOf(due, fresh, newPerRound));
          expect(new Set(ids(cases)).size).toBe(cases.length);
          const round = startRound(cases, {
            id: "r",
            learner: "ada",
            day: dayNumber(0),
            seed: due,
            now: 0,
          });
          const alone = round.tracks
            .flatMap((track) => track.steps)
            .filter((step) => step.asking === "alone");
          expect(alone.length).toBeLessThanOrEqual(ROUND_SIZE);
          if (due >= ROUND_SIZE || (due === 0 && fresh >= 3))
            expect(alone.length).toBeGreaterThanOrEqual(8);
        },
      ),
    );
  });

  it("is empty on a day that is done, and then practises more only on demand", () => {
    const only = (id: CaseId) => id === "E1" || id === "E2a";
    const log = [met("E1", 0), met("E2a", 0)];
    const done = plan(log, 1, only);
    expect(planRound(done)).toEqual([]);
    const extra = planRound(done, { extra: true });
    expect(extra.map((c) => `${c.case} ${c.times}`)).toEqual(["E1 4", "E2a 4"]);
  });
});

describe("look-alikes", () => {
  /** Twins, and cases in one place that face otherwise. Source: `first-layer.md`. */
  const LIKE: readonly (readonly CaseId[])[] = [
    ["E1", "E3"],
    ["E2a", "E2b", "E4a", "E4b"],
    ["C1", "C2", "C3"],
    ["C4", "C5"],
  ];
  const areAlike = (a: CaseId, b: CaseId) =>
    LIKE.some((group) => group.includes(a) && group.includes(b));

  it("are never met in one round", () => {
    expect(ids(planRound(plan([], 0), { areAlike }))).toEqual([
      "E1",
      "E2a",
      "E7",
    ]);
    const twins = plan([], 0, (id) => id === "C4" || id === "C5");
    expect(ids(planRound(twins, { areAlike }))).toEqual(["C4"]);
  });

  it("do not follow one another in it while one of them is young", () => {
    const log = [met("E1", 0), met("E2a", 0)];
    const only = (id: CaseId) => /^E[1-3]/.test(id);
    const round = ids(planRound(plan(log, 9, only), { areAlike }));
    expect(round.toSorted()).toEqual(["E1", "E2a", "E2b", "E3"]);
    round.forEach((id, i) => {
      const next = round[i + 1];
      expect(next !== undefined && areAlike(id, next), round.join()).toBe(
        false,
      );
    });
  });
});
