import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CaseId, FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { stageOfCase } from "../../../core/cases/case-table";
import { holdFor } from "../../../core/cases/hold-in-stage";
import type { Deck, DeckCeiling } from "../../../core/deck/deck";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { daysAfterTaught } from "../../../core/memory/catch-up";
import { planDay } from "../../../core/memory/day-plan";
import { dayNumber } from "../../../core/memory/local-day";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import type { Review } from "../../../core/memory/review";
import {
  chanceNow,
  memoriesOf,
  memoryKey,
} from "../../../core/memory/schedule";
import {
  planToday,
  type TodayInput,
  type TodayPlan,
} from "../../../core/memory/today";
import { sampleReview } from "./sample-review";

const DECKS = STARTER_DECKS.slice(0, 3);

function input(
  log: readonly Review[],
  today: number,
  changes: Partial<TodayInput> = {},
): TodayInput {
  return {
    learner: "ada",
    decks: DECKS,
    hold: "up",
    memories: memoriesOf(log),
    today: dayNumber(today),
    minutes: 10,
    practised: 0,
    // A minute for a new case, ten seconds for a known one.
    secondsFor: ({ memory, times }) => (memory === "new" ? 60 : 10 * times),
    ...changes,
  };
}

function plan(...args: Parameters<typeof input>): TodayPlan {
  return planToday(input(...args));
}

function ids(cases: readonly PlannedCase[]): CaseId[] {
  return cases.map((c) => c.case);
}

function met(id: CaseId, day: number, changes: Partial<Review> = {}): Review {
  return sampleReview(day, { id: `${id}-${day}`, case: id, ...changes });
}

/** Every case met on one day. */
const ALL_MET = FIRST_LAYER_IDS.map((id) => met(id, 0));

describe("today", () => {
  it("fills the minutes with what is due, the most sunken first, and says what waits", () => {
    // 33 cases of ten seconds each; two minutes have room for twelve.
    const today = plan(ALL_MET, 9, { minutes: 2 });
    const all = planDay(input(ALL_MET, 9)).due;
    expect(FIRST_LAYER_IDS).toHaveLength(all.length);
    expect(ids(today.due)).toEqual(ids(all.slice(0, 12)));
    expect(ids(today.waiting)).toEqual(ids(all.slice(12)));
    expect(today.seconds).toBe(120);
    expect(today.waitingSeconds).toBe(10 * (all.length - 12));
    expect(today.fresh).toEqual([]);
  });

  it("says how many of those that wait would be forgotten by tomorrow", () => {
    const { waiting, forgottenTomorrow } = plan(ALL_MET, 9, { minutes: 2 });
    const memories = memoriesOf(ALL_MET);
    const expected = waiting.reduce((sum, one) => {
      const memory = memories.get(memoryKey("ada", one.case, one.hold));
      return sum + 1 - (memory ? chanceNow(memory, dayNumber(10)) : 0);
    }, 0);
    expect(forgottenTomorrow).toBeCloseTo(expected);
    expect(forgottenTomorrow).toBeGreaterThan(1);
    expect(plan(ALL_MET, 9).forgottenTomorrow).toBe(0);
  });

  it("is less the more was practised already, and nothing once the minutes are over", () => {
    const part = plan(ALL_MET, 9, { minutes: 2, practised: 65 });
    expect(part.due).toHaveLength(5);
    const over = plan(ALL_MET, 9, { minutes: 2, practised: 120 });
    expect([over.due.length, over.fresh.length, over.seconds]).toEqual([
      0, 0, 0,
    ]);
  });

  it("has room for one case however long it takes", () => {
    const today = plan(ALL_MET, 9, { minutes: 5, secondsFor: () => 1000 });
    expect(today.due).toHaveLength(1);
    const secondsFor = ({ memory }: PlannedCase) =>
      memory === "new" ? 1000 : 10;
    const begun = (practised: number) =>
      plan([], 0, { minutes: 5, secondsFor, practised }).fresh.length;
    expect([begun(0), begun(10)]).toEqual([1, 0]);
  });

  it("brings new cases in the decks' order while they fit, but none before what is due", () => {
    const fresh = plan([], 0);
    expect(ids(fresh.fresh)).toEqual(
      ids(planDay(input([], 0)).fresh.slice(0, 10)),
    );
    expect(fresh.freshHeldBy).toBe("minutes");
    expect(fresh.freshWaiting).toBe(FIRST_LAYER_IDS.length - 10);
    const log = [met("E1", 0), met("E2a", 0)];
    const both = plan(log, 9, { minutes: 2 });
    expect(ids(both.due)).toHaveLength(2);
    expect(both.fresh).toHaveLength(1);
    const short = plan(ALL_MET.slice(0, 20), 9, { minutes: 2 });
    expect([short.waiting.length, short.fresh.length]).toEqual([8, 0]);
    // Room for most of a new one is left, but a due one waits.
    const due = plan(ALL_MET.slice(0, 20), 9, {
      minutes: 2,
      secondsFor: ({ memory }) => (memory === "new" ? 60 : 70),
    });
    expect([due.due.length, due.fresh.length]).toEqual([1, 0]);
  });

  it("brings no more new cases than the coming days can bear", () => {
    // New cases are cheap today and dear later: what comes back decides.
    const secondsFor = ({ memory }: PlannedCase) => (memory === "new" ? 1 : 50);
    const today = plan([], 0, { minutes: 5, secondsFor });
    const back = daysAfterTaught(dayNumber(0), 7, { settings: {} });
    const bearable = Math.min(
      ...Array.from({ length: 7 }, (_, i) => {
        const times = back.filter((day) => day <= i + 1).length;
        return times === 0
          ? Infinity
          : Math.floor((300 * (i + 1)) / (50 * times));
      }),
    );
    expect(today.fresh).toHaveLength(bearable);
    expect(today.freshHeldBy).toBe("coming-days");
    // What rests until then counts as well.
    const resting = FIRST_LAYER_IDS.slice(10, 14).map((id) => met(id, 0));
    const fewer = plan(resting, 1, { minutes: 5, secondsFor });
    expect(fewer.fresh.length).toBeLessThan(bearable);
  });

  it("counts a class's ceiling in what new cases bring", () => {
    const deck = (
      id: string,
      cases: readonly CaseId[],
      ceiling?: DeckCeiling,
    ): Deck => ({
      id,
      name: id,
      description: "",
      newPerRound: 2,
      cases: cases.map((one) => ({ case: one, target: 8 })),
      ...(ceiling === undefined ? {} : { ceiling }),
    });
    // Six rest until the day after tomorrow, and fill that day.
    const resting = FIRST_LAYER_IDS.slice(0, 6);
    const log = resting.map((id) => met(id, 0));
    const secondsFor = ({ memory }: PlannedCase) => (memory === "new" ? 1 : 50);
    const brought = (ceiling?: DeckCeiling) =>
      plan(log, 0, {
        decks: [
          deck("class", FIRST_LAYER_IDS.slice(6), ceiling),
          deck("own", resting),
        ],
        minutes: 5,
        secondsFor,
      }).fresh.length;
    const daily = { everyDays: 1, until: "2027-03-30" };
    expect(daysAfterTaught(dayNumber(0), 2, { settings: {} })).toEqual([1]);
    expect(
      daysAfterTaught(dayNumber(0), 2, { ceiling: daily, settings: {} }),
    ).toEqual([1, 2]);
    expect([brought(), brought(daily)]).toEqual([6, 3]);
  });

  it("says no reason where no new case waits", () => {
    const today = plan(ALL_MET, 1, { minutes: 15 });
    expect(today).not.toHaveProperty("freshHeldBy");
    expect(today.freshWaiting).toBe(0);
  });

  it("keeps a deck's ceiling even where the minutes are short", () => {
    const weekly: Deck = {
      id: "class",
      name: "class",
      description: "",
      newPerRound: 2,
      cases: [{ case: "C1", target: 8 }],
      // Day 20,907 is 30 March 2027 (days since 1 January 1970).
      ceiling: { everyDays: 7, until: "2027-03-30" },
    };
    const from = 20_800;
    const log = [
      // Known for months by now, and still asked every week.
      ...[0, 2, 8, 30, 60].map((n) => met("C1", from + n)),
      ...["E1", "E2a", "E3"].map((id) => met(id as CaseId, from + 60)),
    ];
    const today = plan(log, from + 67, {
      decks: [...DECKS, weekly].toReversed(),
      minutes: 10 / 60,
    });
    expect(ids(today.due)).toEqual(["C1"]);
    expect(ids(today.waiting)).toHaveLength(3);
  });
});

describe("after two weeks away", () => {
  // Thirty cases learnt over ten days, then nothing for a fortnight.
  const log = FIRST_LAYER_IDS.slice(0, 30).flatMap((id, i) =>
    [0, 1, 3].map((n) => met(id, Math.floor(i / 3) + n)),
  );
  const back = 13 + 14;

  it("a catch-up fits the minutes", () => {
    const today = plan(log, back, { minutes: 2 });
    // The first were due a fortnight before the last.
    expect(today.longestOverdue).toBeGreaterThanOrEqual(7);
    expect(today.due.length + today.waiting.length).toBeGreaterThan(20);
    expect(today.seconds).toBeLessThanOrEqual(120);
    expect(today.fresh).toEqual([]);
  });

  it("it is over on the day that was said, day after day of the same minutes", () => {
    const minutes = 2;
    const { caughtUpIn } = plan(log, back, { minutes });
    let answered = log;
    let days = 0;
    for (; days < 30; days++) {
      const today = plan(answered, back + days, { minutes });
      if (today.waiting.length === 0) break;
      answered = [
        ...answered,
        ...today.due.map((one) => met(one.case, back + days)),
      ];
    }
    expect(days).toBeGreaterThan(0);
    expect(Math.abs(days - (caughtUpIn ?? Infinity))).toBeLessThanOrEqual(1);
  });

  it("it has no end where a deck wants more each day than fits", () => {
    const daily: Deck = {
      id: "class",
      name: "class",
      description: "",
      newPerRound: 2,
      cases: FIRST_LAYER_IDS.slice(0, 11).map((id) => ({
        case: id,
        target: 8,
      })),
      ceiling: { everyDays: 1, until: "2027-03-30" },
    };
    const answered = daily.cases.map((one) => met(one.case, 20));
    // Eleven cases of forty seconds a day, and five minutes.
    const today = plan(answered, 21, {
      decks: [daily],
      minutes: 5,
      secondsFor: () => 40,
    });
    expect(today.waiting.length).toBeGreaterThan(0);
    expect(today.caughtUpIn).toBeUndefined();
  });

  it("it has no end in sight where the minutes are too few", () => {
    // Seventy cases, and time for one of them a day.
    const cases = STARTER_DECKS.flatMap((deck) => deck.cases).slice(0, 70);
    const many = cases.map((one) =>
      met(one.case, 0, { hold: holdFor(stageOfCase(one.case), "up") }),
    );
    const today = plan(many, 20, {
      decks: STARTER_DECKS,
      minutes: 1,
      secondsFor: () => 55,
    });
    expect(today.due.length + today.waiting.length).toBeGreaterThan(61);
    expect(today.caughtUpIn).toBeUndefined();
  });
});

describe("any day", () => {
  it("fits its minutes, asks what is due before what is new, and forgets no case", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.constantFrom(...FIRST_LAYER_IDS),
            fc.integer({ min: 0, max: 40 }),
            fc.constantFrom<"right" | "missed">("right", "missed"),
          ),
          { maxLength: 60 },
        ),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 600 }),
        fc.integer({ min: 3, max: 40 }),
        (answers, minutes, practised, seconds) => {
          const log = answers.map(([id, day, verdict], i) =>
            met(id, day, { id: `${i}`, verdict }),
          );
          const secondsFor = ({ memory }: PlannedCase) =>
            memory === "new" ? 5 * seconds : seconds;
          const today = plan(log, 41, { minutes, practised, secondsFor });
          const day = planDay(input(log, 41));
          const left = Math.max(0, minutes * 60 - practised);
          // One new case may run over by two thirds of its time.
          const longest = left + (2 / 3) * 5 * seconds;
          expect(today.seconds).toBeLessThanOrEqual(
            Math.max(longest, 5 * seconds),
          );
          expect(ids([...today.due, ...today.waiting])).toEqual(ids(day.due));
          expect(today.fresh.length + today.freshWaiting).toBe(
            day.fresh.length,
          );
          if (today.waiting.length > 0) expect(today.fresh).toEqual([]);
        },
      ),
    );
  });
});
