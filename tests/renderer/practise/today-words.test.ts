import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { dayNumber } from "../../../core/memory/local-day";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import type { MemoryState } from "../../../core/memory/schedule";
import type { TodayPlan } from "../../../core/memory/today";
import {
  aboutMinutes,
  awayWords,
  freshWords,
  leftToday,
  todayParts,
  todayTitle,
  waitingWords,
} from "../../../renderer/state/practise/today-words";

function cases(
  count: number,
  memory: MemoryState = "settling",
): readonly PlannedCase[] {
  return FIRST_LAYER_IDS.slice(0, count).map((id) => ({
    case: id,
    hold: "up",
    deck: "d",
    target: 8,
    memory,
    times: 1,
  }));
}

/** A Thursday. */
const TODAY = dayNumber(Date.parse("2026-11-26T00:00:00Z") / 86_400_000);

function plan(changes: Partial<TodayPlan> = {}): TodayPlan {
  return {
    today: TODAY,
    due: [],
    fresh: [],
    heldBack: 0,
    resting: [],
    nextDue: undefined,
    newPerRound: 2,
    practised: 0,
    seconds: 0,
    waiting: [],
    waitingSeconds: 0,
    forgottenTomorrow: 0,
    caughtUpIn: 0,
    freshWaiting: 0,
    longestOverdue: 0,
    ...changes,
  };
}

describe("today in words", () => {
  it("says how much there is and how long it takes", () => {
    const day = plan({
      due: cases(12),
      fresh: cases(2, "new"),
      seconds: 540,
    });
    expect(todayTitle(day, 15)).toBe("Today: 14 cases, about 9 minutes.");
    expect(todayParts(day)).toEqual(["12 come back", "2 are new"]);
    expect(leftToday(day, 15)).toBe(
      "Left for today: 14 cases, about 9 minutes.",
    );
    const one = plan({ due: cases(1, "fading"), seconds: 20 });
    expect(todayTitle(one, 15)).toBe("Today: 1 case, about a minute.");
    expect(todayParts(one)).toEqual(["1 comes back"]);
    const fading = plan({ due: [...cases(3), ...cases(2, "fading")] });
    expect(todayParts(fading)).toEqual(["5 come back, 2 of them fading"]);
    expect(todayParts(plan({ due: cases(3, "fading") }))).toEqual([
      "3 come back, all of them fading",
    ]);
    expect(todayParts(plan({ due: cases(2, "fading") }))).toEqual([
      "2 come back, both of them fading",
    ]);
  });

  it("says what waits, what that costs, and until when", () => {
    const day = plan({
      due: cases(5),
      waiting: cases(9),
      waitingSeconds: 360,
      forgottenTomorrow: 2.7,
      caughtUpIn: 2,
    });
    expect(waitingWords(day, 10)).toBe(
      "9 more are due and wait until tomorrow: about 6 minutes. You would then probably know 6 of the 9. With 10 minutes a day nothing waits any more from about Saturday on.",
    );
    expect(waitingWords(plan(), 10)).toBeUndefined();
    const one = plan({
      waiting: cases(1),
      waitingSeconds: 20,
      forgottenTomorrow: 0.25,
      caughtUpIn: 1,
    });
    expect(waitingWords(one, 5)).toBe(
      "1 more is due and waits until tomorrow: about a minute. Tomorrow the chance you’d know it is 75 in 100. With 5 minutes a day nothing waits any more from about tomorrow on.",
    );
    expect(
      waitingWords(plan({ waiting: cases(3), caughtUpIn: undefined }), 5),
    ).toContain("something will wait for two months");
  });

  it("tells minutes that are over from a day on which nothing is due", () => {
    const over = { practised: 14 * 60 };
    expect(todayTitle(plan({ ...over, waiting: cases(2) }), 15)).toBe(
      "Today’s 15 minutes are over.",
    );
    expect(todayTitle(plan({ ...over, freshWaiting: 3 }), 15)).toBe(
      "Today’s 15 minutes are over.",
    );
    expect(todayTitle(plan(over), 15)).toBe("Nothing is due today.");
    expect(leftToday(plan(), 15)).toBe("Nothing is due today.");
    const short = plan({
      practised: 13 * 60,
      freshWaiting: 3,
      freshHeldBy: "minutes",
    });
    expect(todayTitle(short, 15)).toBe("Nothing is due today.");
    expect(freshWords(short, 15)).toBe(
      "What is left of your 15 minutes is too short for a new case.",
    );
  });

  it("welcomes back who was away for a week or more while something was due", () => {
    const since = (days: number) => dayNumber(TODAY - days);
    const due = { due: cases(3), longestOverdue: 12 };
    expect(awayWords(plan(due), since(14))).toBe(
      "It is 14 days since you last practised: what has sunk furthest comes first.",
    );
    expect(awayWords(plan({ ...due, waiting: cases(1) }), since(14))).toContain(
      "Nothing new comes while something waits",
    );
    expect(awayWords(plan(due), since(6))).toBeUndefined();
    expect(awayWords(plan(due), undefined)).toBeUndefined();
    // Nothing was due in between.
    expect(
      awayWords(plan({ due: cases(3), longestOverdue: 1 }), since(40)),
    ).toBeUndefined();
  });

  it("says why new cases wait", () => {
    expect(
      freshWords(plan({ freshWaiting: 4, freshHeldBy: "coming-days" }), 15),
    ).toContain("next days");
    expect(
      freshWords(
        plan({ due: cases(3), freshWaiting: 4, freshHeldBy: "minutes" }),
        15,
      ),
    ).toContain("more room");
    expect(
      freshWords(plan({ fresh: cases(1, "new"), freshWaiting: 4 }), 15),
    ).toBeUndefined();
  });

  it("rounds a time to whole minutes, one at least", () => {
    expect([10, 89, 91, 600].map(aboutMinutes)).toEqual([
      "about a minute",
      "about a minute",
      "about 2 minutes",
      "about 10 minutes",
    ]);
  });
});
