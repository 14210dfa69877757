import { describe, expect, it } from "vitest";
import {
  rightWords,
  type SaidReview,
} from "../../../renderer/state/practise/right-words";
import type { Milliseconds } from "../../../core/memory/review";

function review(more: Partial<SaidReview>): SaidReview {
  return {
    asking: "alone",
    total: 9300 as Milliseconds,
    thinking: 6100 as Milliseconds,
    turning: 3200 as Milliseconds,
    target: 8,
    corrections: 0,
    hints: [],
    interrupted: false,
    ...more,
  };
}

const ABOUT = {
  lookFirst: "Look first at which side white is on.",
  lastTurn: undefined,
};

describe("what is said of a right answer", () => {
  it("names what took the time", () => {
    // The look's own example: 6.1 s thinking, 3.2 s turning, target 8 s.
    expect(rightWords(review({}), "slow", ABOUT)).toEqual({
      sentence: "Right, but it took 6.1 seconds to see what it was.",
      more: "Your turning is already quick. Look first at which side white is on.",
    });
    const turning = review({
      thinking: 1000 as Milliseconds,
      turning: 8300 as Milliseconds,
    });
    // Known as surely as ever: turning has a track of its own.
    expect(rightWords(turning, "steady", ABOUT).sentence).toBe(
      "Right, but the turning took 8.3 seconds.",
    );
    expect(rightWords(turning, "slow", ABOUT).sentence).toBe(
      "Right, but it took 1.0 seconds to see what it was.",
    );
    expect(rightWords(review({}), "steady", ABOUT).sentence).toBe(
      "Right, in 9.3 seconds.",
    );
  });

  it("says against what an answer was slow: the learner's own usual time", () => {
    const usual = { ...ABOUT, usual: 2400 };
    expect(rightWords(review({}), "slow", usual).more).toBe(
      `You usually take 2.4 seconds. Your turning is already quick. ${ABOUT.lookFirst}`,
    );
    // A cube in the hands without the middle tap: only the whole is known.
    const whole: SaidReview = {
      asking: "alone",
      total: 9300 as Milliseconds,
      target: 8,
      corrections: 0,
      hints: [],
      interrupted: false,
    };
    expect(rightWords(whole, "slow", usual).more).toBe(
      "You usually take 2.4 seconds. The same case comes back until it goes by itself.",
    );
    expect(rightWords(whole, "slow", ABOUT).more).toContain(
      "The target is 8 seconds.",
    );
    // Of few answers the usual may lie above.
    expect(
      rightWords(review({}), "slow", { ...ABOUT, usual: 6000 }).more,
    ).not.toContain("usually");
  });

  it("says which turn is left, before what helps on", () => {
    const lastTurn = "One more turn lines everything up. Turn the top twice.";
    const said = (outcome: "quick" | "slow") =>
      rightWords(review({}), outcome, { ...ABOUT, lastTurn }).more;
    expect(said("quick")).toBe(lastTurn);
    expect(said("slow")).toBe(
      `${lastTurn} Your turning is already quick. ${ABOUT.lookFirst}`,
    );
  });

  it("says that it was corrected, hinted or interrupted", () => {
    const said = (more: Partial<SaidReview>) =>
      rightWords(review(more), "steady", ABOUT).sentence;
    expect(said({ corrections: 1 })).toBe(
      "Right, after you corrected yourself.",
    );
    expect(said({ hints: ["piece"] })).toBe("Right, with a hint.");
    expect(said({ interrupted: true })).toBe("Right.");
  });
});
