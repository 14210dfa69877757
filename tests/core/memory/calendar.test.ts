/**
 * What the calendar does to a learner's days: the plan and the memory over
 * logs whose days are computed from instants and offsets, as the window does.
 */
import { FSRSBinding } from "@open-spaced-repetition/binding";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { present } from "../../../core/invariant";
import { type DayPlan, planDay } from "../../../core/memory/day-plan";
import { localDay } from "../../../core/memory/local-day";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import type { LocalDay, Review } from "../../../core/memory/review";
import {
  chanceNow,
  type Memory,
  memoriesOf,
  memoryKey,
} from "../../../core/memory/schedule";
import { randomSource, shuffled } from "../../../core/random-source";
import { ms, sampleReview } from "./sample-review";

/** The offset that a time is written with. Units: minutes east of UTC. */
function offsetOf(time: string): number {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(time) ?? [];
  if (sign === undefined) throw new Error(`${time} has no offset`);
  const east = Number(hours) * 60 + Number(minutes);
  return sign === "-" ? -east : east;
}

/** The learner's day at a time with its offset. */
function dayAt(time: string): LocalDay {
  return localDay(Date.parse(time), offsetOf(time));
}

/** An answer of a case asked alone, at a time with its offset. */
function answered(
  id: CaseId,
  time: string,
  changes: Partial<Review> = {},
): Review {
  return sampleReview(0, {
    id: `${id} ${time}`,
    case: id,
    at: ms(Date.parse(time)),
    utcOffset: offsetOf(time),
    localDay: dayAt(time),
    ...changes,
  });
}

const MET: readonly CaseId[] = ["E1", "E2a", "E2b"];

/** The plan that somebody sees who opens the window at a time. */
function planAt(time: string, log: readonly Review[]): DayPlan {
  return planDay({
    learner: "ada",
    decks: STARTER_DECKS,
    hold: "up",
    memories: memoriesOf(log),
    today: dayAt(time),
    only: (id) => MET.includes(id),
  });
}

function ids(cases: readonly PlannedCase[]): CaseId[] {
  return cases.map((one) => one.case);
}

function memoryIn(log: readonly Review[], id: CaseId): Memory {
  const memory = memoriesOf(log).get(memoryKey("ada", id, "up"));
  return present(memory, `${id} was met`);
}

/** What the independent scheduler remembers after clean answers so many days apart. */
function independently(gaps: readonly number[]) {
  const binding = new FSRSBinding();
  const first = binding.nextStates(undefined, 0.9, 0).good.memory;
  return present(
    gaps.reduce(
      (state, gap) => binding.nextStates(state, 0.9, gap).good.memory,
      first,
    ),
    "a good answer leaves a memory",
  );
}

// That clean answers come back after 2 days and then after 11 is published:
// check-values, "Learning and timing".
describe("two weeks off", () => {
  const before = [
    answered("E1", "2026-03-02T20:00+01:00"),
    answered("E1", "2026-03-04T20:00+01:00"),
    answered("E2a", "2026-03-04T20:05+01:00"),
  ];

  it("leave each case due once, the surest last, and their first answer counts as one day after the whole gap", () => {
    expect(ids(planAt("2026-03-05T20:00+01:00", before).due)).toEqual([]);
    const back = planAt("2026-03-18T20:00+01:00", before);
    expect(ids(back.due)).toEqual(["E2a", "E1"]);
    expect(ids(back.fresh)).toEqual(["E2b"]);
    expect(back.resting).toEqual([]);

    const after = [
      ...before,
      answered("E1", "2026-03-18T20:01+01:00"),
      answered("E2a", "2026-03-18T20:02+01:00"),
    ];
    const wanted = { E1: [2, 14], E2a: [14] } as const;
    for (const id of ["E1", "E2a"] as const) {
      const ours = memoryIn(after, id);
      const theirs = independently(wanted[id]);
      // Two implementations in floating point: see `schedule.test.ts`.
      expect(ours.stability / theirs.stability).toBeCloseTo(1, 4);
      expect(ours.difficulty / theirs.difficulty).toBeCloseTo(1, 4);
    }
    const rest = planAt("2026-03-18T21:00+01:00", after);
    expect(rest.due).toEqual([]);
    expect(new Set(ids(rest.resting))).toEqual(new Set(["E1", "E2a"]));
  });
});

describe("a journey east", () => {
  // From Berlin at eight in the evening to eight in the morning in Tokyo, four
  // hours later and on one UTC day.
  it("makes the next morning there the next day, and what is due by the days there", () => {
    const log = [answered("E1", "2026-03-02T20:00+01:00")];
    const landed = [...log, answered("E1", "2026-03-03T08:00+09:00")];
    expect(memoryIn(landed, "E1").days).toBe(2);
    expect(memoryIn(landed, "E1").stability).toBeCloseTo(
      independently([1]).stability,
      3,
    );
    // One instant: already the fourth there, still the third at home.
    expect(ids(planAt("2026-03-04T03:00+09:00", log).due)).toEqual(["E1"]);
    expect(ids(planAt("2026-03-03T19:00+01:00", log).due)).toEqual([]);
  });
});

describe("a journey west", () => {
  // From Tokyo at eight in the morning to the evening before in Los Angeles,
  // five hours later.
  const log = [
    answered("E1", "2026-03-01T20:00+09:00"),
    answered("E1", "2026-03-03T08:00+09:00"),
  ];
  const arrived = "2026-03-02T20:00-08:00";

  it("to the day before asks nothing twice, and an answer there counts for the day already reached", () => {
    expect(dayAt(arrived)).toBe(memoryIn(log, "E1").lastDay - 1);
    const plan = planAt(arrived, log);
    expect(ids(plan.due)).toEqual([]);
    expect(ids(plan.resting)).toEqual(["E1"]);
    expect(chanceNow(memoryIn(log, "E1"), plan.today)).toBe(1);

    const right = [...log, answered("E1", arrived)];
    expect(memoryIn(right, "E1")).toEqual(memoryIn(log, "E1"));
    const again = [...right, answered("E1", "2026-03-03T09:00-08:00")];
    expect(memoryIn(again, "E1")).toEqual(memoryIn(log, "E1"));
    const next = [...again, answered("E1", "2026-03-04T09:00-08:00")];
    expect(memoryIn(next, "E1").days).toBe(3);

    const missed = [...log, answered("E1", arrived, { verdict: "missed" })];
    expect(memoryIn(missed, "E1")).toEqual(memoryIn(log, "E1"));
  });
});

describe("the night the clocks go forward", () => {
  // Central Europe, 29 March 2026: 01:59+01:00 is followed by 03:00+02:00.
  it("is a day of 23 hours like any other: what is due in two days is due two mornings on", () => {
    const log = [answered("E1", "2026-03-28T23:30+01:00")];
    expect(ids(planAt("2026-03-29T23:30+02:00", log).due)).toEqual([]);
    expect(ids(planAt("2026-03-30T02:59+02:00", log).due)).toEqual([]);
    // 48 hours from the beginning of the first day would be an hour later.
    expect(ids(planAt("2026-03-30T03:00+02:00", log).due)).toEqual(["E1"]);
    // A minute apart, and yet on both sides of three in the morning.
    const overnight = [
      answered("E1", "2026-03-29T01:59+01:00"),
      answered("E1", "2026-03-29T03:00+02:00"),
    ];
    expect(memoryIn(overnight, "E1").days).toBe(2);
  });
});

describe("the night the clocks go back", () => {
  // Central Europe, 25 October 2026: 02:59+02:00 is followed by 02:00+01:00.
  it("is a day of 25 hours like any other: an hour that comes twice belongs to it both times", () => {
    const log = [answered("E1", "2026-10-23T20:00+02:00")];
    expect(ids(planAt("2026-10-25T02:59+02:00", log).due)).toEqual([]);
    expect(ids(planAt("2026-10-25T02:59+01:00", log).due)).toEqual([]);
    expect(ids(planAt("2026-10-25T03:00+01:00", log).due)).toEqual(["E1"]);
    const first = answered("E1", "2026-10-25T02:30+02:00");
    const second = "2026-10-25T02:30+01:00";
    expect(memoryIn([first, answered("E1", second)], "E1")).toEqual(
      memoryIn([first], "E1"),
    );
    const missed = answered("E1", second, { verdict: "missed" });
    expect(memoryIn([first, missed], "E1").missedLast).toBe(false);
    expect(memoryIn([first, missed], "E1").days).toBe(1);
  });
});

describe("a clock set back", () => {
  // It ran a month ahead, and then was put right.
  it("loses nothing that was answered before, and plans everything else by the right day", () => {
    const ahead = answered("E1", "2026-04-02T20:00+02:00");
    const log = [
      answered("E2a", "2026-03-01T20:00+01:00"),
      ahead,
      answered("E2b", "2026-03-03T20:00+01:00"),
    ];
    expect(memoryIn(log, "E1")).toEqual(memoryIn([ahead], "E1"));
    const plan = planAt("2026-03-03T20:05+01:00", log);
    expect(ids(plan.due)).toEqual(["E2a"]);
    expect(new Set(ids(plan.resting))).toEqual(new Set(["E1", "E2b"]));
    expect(plan.fresh).toEqual([]);
    for (const id of MET) {
      const chance = chanceNow(memoryIn(log, id), plan.today);
      expect(chance, id).toBeGreaterThan(0.8);
      expect(chance, id).toBeLessThanOrEqual(1);
    }
    // Answered again by the right clock, it is a day before the other.
    const again = [...log, answered("E1", "2026-03-03T20:10+01:00")];
    expect(memoryIn(again, "E1").lastDay).toBe(ahead.localDay);
    expect(memoryIn(again, "E1").days).toBe(2);
    expect(ids(planAt("2026-03-05T20:00+01:00", again).due)).toEqual([
      "E2a",
      "E2b",
    ]);
  });
});

describe("logs of two machines", () => {
  const HOUR = 3_600_000;
  const START = Date.parse("2026-03-01T00:00Z");
  /** The answers of a machine, in its own zone. */
  const machine = (name: string, utcOffset: number) =>
    fc
      .array(
        fc.record({
          id: fc.constantFrom(...MET),
          hours: fc.integer({ min: 0, max: 60 * 24 }),
          isMissed: fc.boolean(),
        }),
        { maxLength: 25 },
      )
      .map((rows) =>
        rows.map(({ id, hours, isMissed }, i) => {
          const at = START + hours * HOUR;
          return sampleReview(0, {
            id: `${name} ${i}`,
            case: id,
            at: ms(at),
            utcOffset,
            localDay: localDay(at, utcOffset),
            verdict: isMissed ? "missed" : "right",
          });
        }),
      );

  it("make one plan and one memory of each case, in whatever order and however often they were merged", () => {
    fc.assert(
      fc.property(
        machine("berlin", 60),
        machine("tokyo", 540),
        fc.integer(),
        (berlin, tokyo, seed) => {
          const random = randomSource(seed);
          const union = [...berlin, ...tokyo];
          const merged = shuffled(random, [...union, ...tokyo]);
          const today = "2026-05-03T12:00+02:00";
          expect(memoriesOf(merged)).toEqual(memoriesOf(union));
          const plan = planAt(today, merged);
          expect(plan).toEqual(planAt(today, union));
          const planned = [...plan.due, ...plan.resting, ...plan.fresh];
          expect(ids(planned).toSorted()).toEqual(MET.toSorted());
          // Both machines' days count, each once.
          for (const id of MET) {
            const own = union.filter((review) => review.case === id);
            if (own.length === 0) continue;
            const days = new Set(own.map((review) => review.localDay));
            const { days: counted, lastDay } = memoryIn(merged, id);
            expect(counted).toBeLessThanOrEqual(days.size);
            expect(lastDay).toBe(Math.max(...days));
          }
        },
      ),
    );
  });
});
