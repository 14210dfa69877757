import "fake-indexeddb/auto";
import { afterEach, describe, expect, it, vi } from "vitest";
import { default_w } from "ts-fsrs";
import { localDay } from "../../../core/memory/local-day";
import type { Milliseconds } from "../../../core/memory/review";
import { memoryState } from "../../../core/memory/schedule";
import { todayOf } from "../../../renderer/state/practise/planned-round";
import { sampleReview } from "../storage/sample-review";
import { beginEmpty, openWindow } from "../state/open-window";
import { answer, attemptOf, practising } from "./practising";

beginEmpty();

afterEach(() => void vi.useRealTimers());

describe("practising", () => {
  it("begins a first start with the easiest edge, shown", async () => {
    const practise = await practising(await openWindow());
    expect(attemptOf(practise).item).toMatchObject({
      case: "E1",
      asking: "shown",
    });
  });

  it("plans a round by the weights that were fitted to the learner", async () => {
    const app = await openWindow();
    const learner = app.current;
    // Under these a case lasts ten times as long, and is forgotten faster once past its day.
    const weights = default_w.map((weight, i) =>
      i < 4 ? 10 * weight : i === 20 ? 0.8 : weight,
    );
    const tried = { answers: 400, isTaken: true, gain: 0.1 };
    await learner.changeSettings({
      fit: { weightsVersion: 2, weights, tried },
    });
    const at = Date.now() - 65 * 86_400_000;
    const review = sampleReview({
      learner: learner.learner.id,
      at: at as Milliseconds,
      localDay: localDay(at, 0),
    });
    await learner.acknowledge({ review });
    const memory = learner.memoryOf("E1");
    expect(memoryState(memory, learner.today)).toBe("kept");
    expect(memoryState(memory, learner.today, { weights })).toBe("fading");
    const practise = await practising(app);
    await practise.start(undefined);
    const planned = practise.round?.tracks.map((track) => track.planned);
    expect(planned?.find(({ case: id }) => id === "E1")?.memory).toBe("fading");
  });

  it("is told what today brings by who has answered before, and asked at once who has not", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openWindow();
    const first = await practising(app);
    expect(attemptOf(first).item.asking).toBe("shown");
    while (first.phase.kind !== "summary") {
      await answer(first);
      await first.next();
    }
    first.close();
    vi.setSystemTime(new Date("2030-03-08T20:00:00Z"));
    const back = await openWindow();
    const practise = await practising(back);
    expect(practise.phase.kind).toBe("today");
    const { due } = todayOf(back.current);
    expect(due.map((one) => one.case)).toContain("E1");
    await practise.start(undefined);
    expect(due.map((one) => one.case)).toContain(attemptOf(practise).item.case);
    practise.close();
  });

  it("says that nothing is due where there is no deck, and goes on all the same where there is", async () => {
    const app = await openWindow();
    await app.current.changeSettings({ decks: [] });
    const practise = await practising(app);
    expect(practise.phase.kind).toBe("today");
    await practise.startExtra();
    expect(practise.phase.kind).toBe("today");
    await app.current.changeSettings({ decks: undefined });
    await practise.startExtra();
    expect(attemptOf(practise).item.case).toBe("E1");
  });

  it("plans no more than the learner's minutes, and less the more was practised", async () => {
    const app = await openWindow();
    await app.current.changeSettings({ minutes: 5 });
    const before = todayOf(app.current);
    expect(before.seconds).toBeLessThanOrEqual(300);
    expect(before.freshHeldBy).toBe("minutes");
    const practise = await practising(app);
    await answer(practise);
    const after = todayOf(app.current);
    expect(after.seconds).toBeLessThanOrEqual(before.seconds);
  });
});
