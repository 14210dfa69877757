import "fake-indexeddb/auto";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { Milliseconds } from "../../../core/memory/review";
import { PractiseState } from "../../../renderer/state/practise.svelte";
import { sampleReview } from "../storage/sample-review";
import { beginEmpty, openWindow } from "../state/open-window";
import { foundAtOnce } from "../state/sheets/found-at-once";
import { answer, attemptOf, practising, stored } from "./practising";

beginEmpty();

afterEach(() => void vi.useRealTimers());

describe("practising", () => {
  it("has on the desk in the end what was asked for last, however fast", async () => {
    const practise = new PractiseState({
      learner: (await openWindow()).current,
      findSetUp: foundAtOnce,
      still: () => true,
    });
    await Promise.all([practise.open(undefined), practise.open("C3")]);
    expect(attemptOf(practise).item.case).toBe("C3");
  });

  it("asks weak spots beside the schedule: the memory of a case that rests stays as it was", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openWindow();
    // E1 took forty seconds where eight are wanted.
    await app.current.acknowledge({
      review: sampleReview({
        learner: app.current.learner.id,
        case: "E1",
        at: Date.now() as Milliseconds,
        localDay: app.current.today,
        total: 40_000 as Milliseconds,
      }),
    });
    const before = app.current.memoryOf("E1");
    const practise = await practising(app);
    await practise.start("weak-spots");
    expect(attemptOf(practise).item).toMatchObject({
      case: "E1",
      asking: "extra",
    });
    vi.setSystemTime(new Date("2030-03-05T20:01:00Z"));
    await answer(practise);
    expect((await stored(app)).at(-1)).toMatchObject({ asking: "extra" });
    expect(app.current.memoryOf("E1")).toEqual(before);
    // Nothing else was ever met: nothing else is weak.
    expect(practise.round?.tracks).toHaveLength(1);
  });

  it("leaves a round of weak spots where it was begun: today can be reached past it", async () => {
    const app = await openWindow();
    await app.current.acknowledge({
      review: sampleReview({
        learner: app.current.learner.id,
        case: "E1",
        total: 40_000 as Milliseconds,
      }),
    });
    const practise = await practising(app);
    await practise.open("weak-spots");
    const begun = practise.round?.id;
    expect(attemptOf(practise).item.case).toBe("E1");
    await practise.open(undefined);
    expect(practise.phase.kind).toBe("today");
    await practise.open("weak-spots");
    expect(practise.round?.id).toBe(begun);
  });

  it("keeps the round under way when one case is practised, and comes back to it", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const first = practise.round?.id;
    const before = attemptOf(practise).position;
    await practise.open("C1");
    expect(practise.round?.id).not.toBe(first);
    expect(attemptOf(practise).item.case).toBe("C1");
    await practise.open(undefined);
    expect(practise.round?.id).toBe(first);
    expect(attemptOf(practise).position).toEqual(before);
    // The other one waits in its turn.
    await practise.open("C1");
    while (practise.phase.kind !== "summary")
      if (practise.phase.kind === "case") await practise.skip();
      else await practise.next();
    expect(practise.phase.waiting).toBe(true);
    await practise.open(undefined);
    expect(practise.round?.id).toBe(first);
  });
});
