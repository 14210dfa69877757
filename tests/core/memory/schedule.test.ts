import {
  type BindingMemoryState,
  FSRSBinding,
} from "@open-spaced-repetition/binding";
import fc from "fast-check";
import { default_w } from "ts-fsrs";
import { describe, expect, it } from "vitest";
import { dayAfter, dayNumber } from "../../../core/memory/local-day";
import { gradeLog } from "../../../core/memory/grader";
import { RECOGNISING_WAYS, type Review } from "../../../core/memory/review";
import {
  chanceNow,
  inReplayOrder,
  type Memory,
  memoriesOf,
  memoryKey,
  memoryOf,
  memoryState,
  type ScheduleSettings,
} from "../../../core/memory/schedule";
import { present } from "../../../core/invariant";
import { randomSource, shuffled } from "../../../core/random-source";
import { ms, noonOf, sampleReview } from "./sample-review";

type Kind = "missed" | "hesitant" | "clean";

const CHANGES = {
  missed: { verdict: "missed" },
  hesitant: { corrections: 1 },
  clean: {},
} as const satisfies Record<Kind, Partial<Review>>;

const KINDS = ["missed", "hesitant", "clean"] as const;

function answer(
  day: number,
  kind: Kind = "clean",
  changes: Partial<Review> = {},
): Review {
  return sampleReview(day, { ...CHANGES[kind], ...changes });
}

/** The one memory of a log. */
function theMemory(
  log: readonly Review[],
  settings: ScheduleSettings = {},
): Memory | undefined {
  return [...memoriesOf(log, settings).values()][0];
}

function memory(...reviews: readonly Review[]): Memory {
  return present(theMemory(reviews), "one of the reviews counts");
}

const aMemory: Memory = memory(answer(0));

describe("memory states", () => {
  // Source: @open-spaced-repetition/binding 0.1.2, an independent FSRS-6.
  it("agree with the independent scheduler on 10,000 random review steps", () => {
    const binding = new FSRSBinding();
    const random = randomSource(20_260_310);
    let steps = 0;
    let worst = 0;
    while (steps < 10_000) {
      const log: Review[] = [];
      let day = random.below(20_000);
      let gap = 0;
      let state: BindingMemoryState | undefined;
      for (let i = 0; i < 8; i++, steps++) {
        const grade = random.below(3);
        log.push(answer(day, KINDS[grade]));
        const next = binding.nextStates(state, 0.9, gap);
        const chosen = [next.again, next.hard, next.good][grade];
        state = present(chosen, "three grades").memory;
        const ours = memory(...log);
        worst = Math.max(
          worst,
          Math.abs(ours.stability / state.stability - 1),
          Math.abs(ours.difficulty / state.difficulty - 1),
        );
        gap = 1 + random.below(random.below(2) === 0 ? 5 : 200);
        day += gap;
      }
    }
    expect(worst).toBeLessThan(2e-5);
  }, 60_000);

  // Source: check-values, "Learning and timing", computed with the library.
  it("come back after 2, 11, 46, 163, 497 and 1346 days when always clean and on time", () => {
    const log = [answer(0)];
    const intervals = [2, 11, 46, 163, 497, 1346].map(() => {
      const { lastDay, lastsUntil } = memory(...log);
      log.push(answer(lastsUntil));
      return lastsUntil - lastDay;
    });
    expect(intervals).toEqual([2, 11, 46, 163, 497, 1346]);
  });

  // Source: check-values, "Learning and timing", R(t,S).
  it.each([
    [1, 1, 0.9],
    [1, 10, 0.6928],
    [1, 90, 0.5003],
    [10, 1, 0.9857],
    [10, 10, 0.9],
    [10, 90, 0.7031],
    [100, 30, 0.961],
    [100, 365, 0.7909],
  ])("of stability %d are known after %d days by chance %d", (s, t, chance) => {
    const known = { ...aMemory, stability: s };
    expect(chanceNow(known, dayAfter(known.lastDay, t))).toBeCloseTo(chance, 4);
  });

  it("last longer under a lower level and shorter under a higher one", () => {
    const log = [answer(0), answer(2)];
    const until = (level: number) => theMemory(log, { level })?.lastsUntil ?? 0;
    expect(until(0.8)).toBeGreaterThan(until(0.9));
    expect(until(0.9)).toBeGreaterThan(until(0.95));
  });
});

describe("what counts as recall", () => {
  it("is only an answer asked alone", () => {
    for (const asking of ["shown", "helped", "again", "extra"] as const)
      expect(theMemory([answer(0, "clean", { asking })])).toBeUndefined();
    for (const answerWay of RECOGNISING_WAYS)
      expect(theMemory([answer(0, "clean", { answerWay })])).toBeUndefined();
  });

  it("is the first of a day: whatever comes later that day changes nothing", () => {
    const later = (n: number, kind: Kind) =>
      answer(2, kind, { id: `review-2-${n}`, at: ms(noonOf(2) + n) });
    for (const first of KINDS) {
      const log = [answer(0), answer(2, first)];
      const more = KINDS.map((kind, n) => later(n + 1, kind));
      expect(memory(...log, ...more)).toEqual(memory(...log));
    }
  });

  it("begins as a miss does where the case was shown that day, and is not called one", () => {
    const shown = answer(0, "clean", {
      id: "review-0-",
      asking: "shown",
      at: ms(noonOf(0) - 1),
    });
    const taught = memory(shown, answer(0));
    const missed = memory(answer(0, "missed"));
    expect(taught).toEqual({ ...missed, missedLast: false });
    expect(memoryState(taught, dayNumber(0))).toBe("settling");
    expect(chanceNow(taught, dayNumber(1))).toBeLessThan(0.8);
    expect(memoryState(taught, dayNumber(7))).toBe("settling");
    expect(memoryState(taught, dayNumber(8))).toBe("fading");
  });

  it("counts a quick answer as steady until the weights are the learner's own", () => {
    const usual = [0, 1, 2, 3, 4].map((day) => answer(day));
    const next = (thinking: number) =>
      answer(5, "clean", { thinking: ms(thinking) });
    const both = (settings: ScheduleSettings) =>
      [2667, 400].map((thinking) =>
        theMemory([...usual, next(thinking)], settings),
      );
    const log = [...usual, next(400)];
    expect(gradeLog(log).at(-1)?.outcome).toBe("quick");
    const [steady, quick] = both({});
    expect(quick).toEqual(steady);
    const [ownSteady, ownQuick] = both({ weights: [...default_w] });
    expect(ownSteady).toEqual(steady);
    expect(ownQuick?.stability).toBeGreaterThan(ownSteady?.stability ?? 0);
  });

  it("counts the day after as a day of its own, one day apart", () => {
    const twoDays = memory(answer(0), answer(1));
    expect(twoDays.days).toBe(2);
    expect(twoDays.lastDay).toBe(1);
    expect(twoDays.stability).not.toBe(memory(answer(0)).stability);
    expect(twoDays.stability).not.toBe(memory(answer(0), answer(2)).stability);
  });

  it("takes the stored local day, not the instant, as the day", () => {
    // A round that began before three in the morning is answered on after it.
    const after = answer(1, "clean", { at: noonOf(1) });
    const sameRound = { ...after, localDay: dayNumber(0) };
    expect(memory(answer(0), sameRound).days).toBe(1);
    expect(memory(answer(0), after).days).toBe(2);
  });
});

describe("a log", () => {
  const reviews = fc
    .array(
      fc.record({
        learner: fc.constantFrom("ada", "ben"),
        case: fc.constantFrom("E1", "E2a", "C1"),
        hold: fc.constantFrom("up", "down"),
        kind: fc.constantFrom(...KINDS),
        day: fc.integer({ min: 0, max: 400 }),
        at: fc.integer({ min: 0, max: 500 }),
        asking: fc.constantFrom("alone", "alone", "alone", "again", "helped"),
        interrupted: fc.boolean(),
      }),
      { maxLength: 60 },
    )
    .map((rows) =>
      rows.map(({ kind, day, at, ...row }, i) =>
        answer(day, kind, {
          ...row,
          id: `id-${i}`,
          at: ms(at),
        }),
      ),
    );

  it("makes the same memories in whatever order it was merged, twice or not", () => {
    fc.assert(
      fc.property(reviews, fc.integer(), (log, seed) => {
        const merged = shuffled(randomSource(seed), [...log, ...log]);
        expect(memoriesOf(merged)).toEqual(memoriesOf(log));
        expect(inReplayOrder(merged)).toEqual(inReplayOrder(log));
      }),
    );
  });

  it("keeps the memories of learners, cases and holds apart", () => {
    fc.assert(
      fc.property(reviews, (log) => {
        const graded = gradeLog(inReplayOrder(log));
        for (const [key, one] of memoriesOf(log)) {
          const own = graded.filter(
            ({ review: r }) => memoryKey(r.learner, r.case, r.hold) === key,
          );
          expect(memoryOf(own)).toEqual(one);
        }
      }),
    );
  });

  // The reviews above have instants and days at odds, as after a clock set back.
  it("never breaks on a clock set back, and never loses a day already reached", () => {
    fc.assert(
      fc.property(reviews, (log) => {
        for (const one of memoriesOf(log).values()) {
          expect(one.stability).toBeGreaterThan(0);
          expect(one.difficulty).toBeGreaterThanOrEqual(1);
          expect(one.difficulty).toBeLessThanOrEqual(10);
          expect(one.lastsUntil).toBeGreaterThan(one.lastDay);
          expect(chanceNow(one, dayNumber(-5))).toBe(1);
        }
      }),
    );
    const back = [
      answer(10, "clean", { at: ms(1), id: "a" }),
      answer(3, "clean", { at: ms(2), id: "b" }),
    ];
    expect(memory(...back).lastDay).toBe(10);
  });
});

describe("the state of a memory", () => {
  it("is new without one", () => {
    expect(memoryState(undefined, dayNumber(0))).toBe("new");
  });

  it("is settling under 14 days and kept from 14 on", () => {
    const lasting = (days: number) => ({
      ...aMemory,
      stability: days,
      lastsUntil: dayAfter(aMemory.lastDay, days),
    });
    expect(memoryState(lasting(13), aMemory.lastDay)).toBe("settling");
    expect(memoryState(lasting(14), aMemory.lastDay)).toBe("kept");
  });

  it("is fading after a miss, until a day that counts goes right", () => {
    const missed = [answer(0), answer(2, "missed")];
    expect(memoryState(memory(...missed), dayNumber(2))).toBe("fading");
    expect(memoryState(memory(...missed, answer(3)), dayNumber(3))).toBe(
      "settling",
    );
  });

  it("is fading once the chance has sunk more than 0.1 below the level", () => {
    // R(t, 10): 0.9 at 10 days; 0.8 is passed between 34 and 35 (the curve).
    const ten = {
      ...aMemory,
      stability: 10,
      lastsUntil: dayAfter(aMemory.lastDay, 10),
    };
    const days = Array.from({ length: 60 }, (_, n) =>
      dayAfter(aMemory.lastDay, n),
    );
    const firstFading = days.find((d) => memoryState(ten, d) === "fading");
    const firstBelow = days.find((d) => chanceNow(ten, d) < 0.8);
    expect(firstFading).toBe(firstBelow);
    expect(chanceNow(ten, dayAfter(aMemory.lastDay, 10))).toBeCloseTo(0.9, 6);
    expect(memoryState(ten, dayAfter(aMemory.lastDay, 11))).toBe("settling");
  });
});
