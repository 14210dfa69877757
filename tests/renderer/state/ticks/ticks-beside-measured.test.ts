import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { present } from "../../../../core/invariant";
import { dayAfter } from "../../../../core/memory/local-day";
import type { Milliseconds } from "../../../../core/memory/review";
import { sampleReview } from "../../storage/sample-review";
import { beginEmpty } from "../open-window";
import { DECK, kept, lastWeek, room } from "./ticks-room";

beginEmpty();

describe("a box and a measured answer of one day", () => {
  it("leave the day and the usual times to the measured one", async () => {
    const { app, ben } = await room();
    const desk = await lastWeek(app);
    const id = present(DECK.cases[0], "it has cases").case;
    // At three in the afternoon of each day, the fourth one missed.
    for (let day = 0; day < 5; day += 1) {
      const review = sampleReview({
        learner: ben.id,
        case: id,
        at: ((desk.firstDay + day) * 86_400_000 +
          15 * 3_600_000) as Milliseconds,
        localDay: dayAfter(desk.firstDay, day),
        verdict: day === 3 ? "missed" : "right",
      });
      expect((await app.current.acknowledge({ review })).ok).toBe(true);
    }
    const usualNow = () =>
      app.current.usualFor(sampleReview({ case: id, learner: ben.id }));
    const usual = usualNow();
    expect(usual).toBeGreaterThan(0);
    const told = () =>
      app.current
        .answersTo(id, "up")
        .flatMap(({ recall, review }) =>
          recall === undefined ? [] : [[review.answerWay, recall]],
        );
    const before = told();
    expect(before).toHaveLength(5);
    await desk.choose(ben);
    for (let day = 0; day < 5; day += 1) desk.tick(0, day, "right");
    expect(await kept(desk)).toBe(5);
    expect(told()).toEqual(before);
    expect(usualNow()).toBe(usual);
  });
});
