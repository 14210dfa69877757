import "fake-indexeddb/auto";
import { afterEach, describe, expect, it, vi } from "vitest";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { present } from "../../../core/invariant";
import { beginEmpty, openWindow } from "../state/open-window";
import { answer, attemptOf, practising, stored } from "./practising";

beginEmpty();

afterEach(() => void vi.useRealTimers());

describe("practising", () => {
  it("counts an answer that lay open over the day's turn for the day it is given, as interrupted, and plans anew", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openWindow();
    const practise = await practising(app);
    for (let n = 0; n < 2; n++) {
      await answer(practise);
      await practise.next();
    }
    const begun = practise.round;
    const attempt = attemptOf(practise);
    attempt.caseShown(0);
    vi.setSystemTime(new Date("2030-03-06T18:00:00Z"));
    turnsForPosition(attempt.position).forEach((turn) =>
      attempt.turn(turn, 22 * 3_600_000),
    );
    await practise.storeAgain();
    const review = present((await stored(app)).at(-1), "it is stored");
    expect(review.interrupted).toBe(true);
    expect(review.localDay).toBe((begun?.day ?? 0) + 1);
    // Six hours later still nothing is left of yesterday's round.
    vi.setSystemTime(new Date("2030-03-07T12:00:00Z"));
    await practise.next();
    expect(practise.phase.kind).toBe("today");
    await practise.start(undefined);
    expect(practise.round?.id).not.toBe(begun?.id);
    expect(practise.round?.day).toBe((begun?.day ?? 0) + 2);
    // It was right, so E1 is met, and due again after the new ones.
    expect(practise.round?.tracks.map(({ planned }) => planned.case)).toContain(
      "E2a",
    );
  });

  it("counts answers for the round's day when the time zone changes in mid-round", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const zone = vi.spyOn(Date.prototype, "getTimezoneOffset");
    zone.mockReturnValue(0);
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    // Twelve hours east it is the next morning: 08:01 on 6 March.
    zone.mockReturnValue(-720);
    vi.setSystemTime(new Date("2030-03-05T20:01:00Z"));
    await answer(practise);
    const [before, after] = await stored(app);
    expect([before?.utcOffset, after?.utcOffset]).toEqual([0, 720]);
    expect(after?.localDay).toBe(before?.localDay);
    await practise.next();
    expect(attemptOf(practise).item.case).toBe("E1");
    expect(practise.round?.results).toHaveLength(2);
    zone.mockRestore();
  });

  it("goes on, and loses nothing, when the clock is set back in mid-round", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const { round } = practise;
    vi.setSystemTime(new Date("2030-03-03T20:00:00Z"));
    await answer(practise);
    await practise.next();
    expect(practise.round?.id).toBe(round?.id);
    const answers = await stored(app);
    expect(answers).toHaveLength(2);
    expect(new Set(answers.map(({ localDay }) => localDay)).size).toBe(1);
    practise.close();
    // The same round is taken up again, under the clock as it now is.
    const again = await practising(await openWindow());
    expect(again.round?.id).toBe(round?.id);
    again.close();
  });
});
