import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { HOLDS } from "../../../core/cases/variant";
import { localDay } from "../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../core/memory/review";
import { memoriesOf } from "../../../core/memory/schedule";
import { randomSource, shuffled } from "../../../core/random-source";
import {
  EMPTY_LOG,
  learnerLog,
  rescheduled,
  withReview,
} from "../../../renderer/state/learner-log";
import { sampleReview, TUESDAY_NINE } from "../storage/sample-review";

const HOUR = 3_600_000;

const reviews: fc.Arbitrary<readonly Review[]> = fc
  .array(
    fc.record({
      case: fc.constantFrom(...FIRST_LAYER_IDS.slice(0, 3)),
      hold: fc.constantFrom(...HOLDS),
      verdict: fc.constantFrom("right" as const, "missed" as const),
      hours: fc.integer({ min: 1, max: 100 }),
    }),
    { maxLength: 30 },
  )
  .map((told) => {
    let at = TUESDAY_NINE as number;
    return told.map(({ hours, ...rest }) => {
      at += hours * HOUR;
      return sampleReview({
        ...rest,
        at: at as Milliseconds,
        localDay: localDay(at, 0),
      });
    });
  });

const SCHEDULE = { level: 0.9 };

describe("a learner's log", () => {
  it("kept up to date review by review equals the one read as a whole, and the replay of the log", () => {
    fc.assert(
      fc.property(reviews, (log) => {
        const grown = log.reduce(
          (sofar, review) => withReview(sofar, review, SCHEDULE),
          EMPTY_LOG,
        );
        expect(grown).toEqual(learnerLog(log, SCHEDULE));
        expect(grown.memories).toEqual(memoriesOf(log, SCHEDULE));
      }),
    );
  });

  it("is the same in whatever order its answers come in, as under a clock set back", () => {
    fc.assert(
      fc.property(reviews, fc.integer(), (log, seed) => {
        const grown = shuffled(randomSource(seed), log).reduce(
          (sofar, review) => withReview(sofar, review, SCHEDULE),
          EMPTY_LOG,
        );
        const whole = learnerLog(log, SCHEDULE);
        expect(grown.answers).toEqual(whole.answers);
        expect(grown.memories).toEqual(whole.memories);
      }),
    );
  });

  it("grades Tuesday's answer anew when Monday's is entered from paper on Wednesday, each day once", () => {
    const DAY = 24 * HOUR;
    const onDay = (days: number, told: Partial<Review> = {}) => {
      const at = (TUESDAY_NINE + days * DAY) as Milliseconds;
      return sampleReview({ at, localDay: localDay(at, 0), ...told });
    };
    const { thinking, turning, ...measured } = onDay(-1);
    expect([thinking, turning]).not.toContain(undefined);
    const monday: Review = {
      ...measured,
      answerWay: "on-paper",
      verdict: "missed",
      total: 0 as Milliseconds,
      untimed: true,
    };
    const tuesday = onDay(0);
    const before = withReview(EMPTY_LOG, tuesday, SCHEDULE);
    const after = withReview(before, monday, SCHEDULE);
    expect(after.answers.map(({ recall }) => recall)).toEqual([
      "missed",
      "steady",
    ]);
    expect(after).toEqual(learnerLog([monday, tuesday], SCHEDULE));
    const [sooner] = after.memories.values();
    const [later] = before.memories.values();
    expect(sooner?.days).toBe(2);
    expect(sooner?.stability).not.toBe(later?.stability);
    // Another tick of the same Monday, as from a second sheet, counts for nothing.
    const again = withReview(
      after,
      {
        ...monday,
        id: crypto.randomUUID(),
        at: (monday.at + 1000) as Milliseconds,
        verdict: "right",
      },
      SCHEDULE,
    );
    expect(again.memories).toEqual(after.memories);
  });

  it("takes a review in once", () => {
    const review = sampleReview();
    const log = withReview(EMPTY_LOG, review, SCHEDULE);
    expect(withReview(log, review, SCHEDULE)).toBe(log);
  });

  it("brings cases back sooner at a higher level", () => {
    const log = learnerLog([sampleReview()], { level: 0.8 });
    const [low] = log.memories.values();
    const [high] = rescheduled(log, { level: 0.95 }).memories.values();
    if (low === undefined || high === undefined) throw new Error("no memory");
    expect(high.lastsUntil).toBeLessThan(low.lastsUntil);
  });
});
