import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../core/memory/local-day";
import type { Memory } from "../../../core/memory/schedule";
import { untilWords } from "../../../renderer/state/practise/until-words";

const TODAY = dayNumber(20_000);

function after(lastsUntil: number, told: { comesAgain?: boolean } = {}) {
  const memory: Memory = {
    learner: "ada",
    case: "C1",
    hold: "up",
    stability: 3,
    difficulty: 5,
    lastDay: dayNumber(19_980),
    lastsUntil: dayNumber(lastsUntil),
    missedLast: false,
    days: 2,
  };
  return untilWords({
    before: memory,
    after: memory,
    state: "settling",
    today: TODAY,
    comesAgain: false,
    isMissed: false,
    asking: "alone",
    ...told,
  });
}

describe("until when a case should last", () => {
  it("is a day to come after an answer that counts", () => {
    expect(after(20_001).line).toBe("Should last until tomorrow.");
  });

  it("is never a day that has passed: asked beside the schedule, a due case stays due", () => {
    expect(after(19_990).line).toBe("It is still due today.");
    expect(after(19_990, { comesAgain: true }).line).toBe(
      "You will see it again in this round.",
    );
  });
});
