import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judge } from "../../../core/answer/judge";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { diagnose } from "../../../core/answer/diagnose";
import { applyTurns } from "../../../core/cube/held-cube";
import { parseTurns } from "../../../core/notation/parse";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { randomSource } from "../../../core/random-source";
import { diagnosisWords } from "../../../renderer/state/practise/diagnosis-words";
import { hintWords } from "../../../renderer/state/practise/hint-words";
import { missWords } from "../../../renderer/state/practise/miss-words";
import {
  afterTap,
  PAUSE_AFTER,
  RESTED,
  wantsPause,
} from "../../../renderer/state/practise/pause-advice";
import {
  rightWords,
  type SaidReview,
} from "../../../renderer/state/practise/right-words";
import {
  marksThatFit,
  roundRow,
} from "../../../renderer/state/practise/round-words";
import { nowInWords } from "../../../renderer/state/practise/now-words";
import { seconds, shownTimes } from "../../../renderer/components/time-words";
import type { LocalDay, Milliseconds } from "../../../core/memory/review";
import { type Round, startRound } from "../../../core/memory/round";

function position(id: "C1" | "C2" | "E1") {
  return randomPosition(
    randomSource(1),
    id,
    { home: 0, placed: [1, 2, 3], turnedAway: 0, seenFrom: 0 },
    "up",
  );
}

function turns(text: string) {
  const parsed = parseTurns(text);
  return parsed.ok ? parsed.value : [];
}

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
    expect(rightWords(turning, "slow", ABOUT).sentence).toBe(
      "Right, but the turning took 8.3 seconds.",
    );
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

function nowAfter(asked: Position, text: string) {
  const after = applyTurns(startOf(asked), turns(text));
  const verdict = judge(asked, after);
  if (verdict.right) throw new Error(`${text} is no miss`);
  return nowInWords(
    { position: asked, turns: turns(text), after, verdict },
    USUAL_SCHEME,
  );
}

describe("the times of an answer", () => {
  it("add up as they are shown", () => {
    fc.assert(
      fc.property(
        fc.nat(60_000),
        fc.nat(60_000),
        fc.nat(2_000),
        (thinking, turning, finishing) => {
          const total = thinking + turning + finishing;
          const shown = shownTimes(total, thinking, turning);
          const sum = shown.thinking + shown.turning + shown.finishing;
          expect(seconds(sum)).toBe(seconds(total));
          expect(Math.abs(shown.turning - turning)).toBeLessThanOrEqual(150);
          expect(shown.turning).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});

describe("the number of a case in its round", () => {
  it("stays while the case is tried once more", () => {
    const round = startRound([], {
      id: "r",
      learner: "l",
      day: 1 as LocalDay,
      seed: 1,
      now: 0,
    });
    const answered: Round = {
      ...round,
      results: [{ case: "E1", asking: "alone", outcome: "missed" }],
    };
    expect(roundRow(answered, undefined).label).toBe("1 of 1 done");
    expect(roundRow(answered, "once-more").label).toBe("1 of 1");
  });
});

describe("what is said of a missed answer", () => {
  it("is the confusion with the twin where its whole way was played", () => {
    const asked = position("C2");
    const played = turns("D' R' D R");
    const { answeredAs } = diagnose(asked, played, turnsForPosition(asked));
    expect(answeredAs?.case).toBe("C1");
    const words =
      answeredAs === undefined
        ? undefined
        : diagnosisWords(asked, answeredAs, USUAL_SCHEME);
    expect(words?.sentence).toBe(
      "You answered as if white were on the front. It is on the right.",
    );
    expect(words?.more).toContain("twins");
    // The corner is at the bottom front right: facelets 15 and 26 of the right and the front.
    expect(words?.leaders).toMatchObject({ is: 15, taken: 26 });
  });

  it("says what the cube shows where it is no known confusion", () => {
    const asked = position("E1");
    const after = applyTurns(startOf(asked), turns("F"));
    const verdict = judge(asked, after);
    if (verdict.right) throw new Error("one quarter turn is not the way");
    const said = missWords({
      position: asked,
      verdict,
      after,
      scheme: USUAL_SCHEME,
      hasTurned: true,
      shownTheWay: false,
      reported: false,
    });
    expect(said.sentence).toBe("The edge is not home yet.");
    const now = nowAfter(asked, "F");
    expect(now.piece).toContain("middle front left; white is on the left");
  });

  it("lists only what has changed, each lost piece once", () => {
    const asked = position("E1");
    const edge = "the white and green edge";
    expect(nowAfter(asked, "L")).toEqual({
      piece: "",
      rest: "No longer placed: the white and orange edge.",
    });
    expect(nowAfter(asked, "B D").rest).not.toContain(edge);
    expect(nowAfter(asked, "y").piece).toBe(
      `Nothing that counts: ${edge} is where it was. From there it takes 1 turn.`,
    );
  });

  it("says that the home moved where a middle was turned along", () => {
    // M' lifts the bottom front to the top front, and the front's middle to
    // the top.
    const now = nowAfter(position("E1"), "M'");
    expect(now.piece).toContain(
      "It stands where its home was, but its home has moved to the top back, because the middle turned.",
    );
  });
});

describe("the hints", () => {
  it("say in turn where the piece is, where it belongs and how to begin", () => {
    const asked = position("E1");
    const said = hintWords(
      asked,
      ["piece", "home", "first-turn"],
      turnsForPosition(asked),
      USUAL_SCHEME,
    );
    expect(said).toEqual([
      "It is here: bottom front; white is on the bottom.",
      "Its home is top front.",
      "Begin like this. Turn the front twice.",
    ]);
  });
});

describe("the advice to pause", () => {
  it("comes after twenty minutes of taps, and not after as long a silence", () => {
    let time = RESTED;
    for (let at = 0; at <= PAUSE_AFTER; at += 30_000) time = afterTap(time, at);
    expect(wantsPause(time)).toBe(true);
    const rested = afterTap(time, PAUSE_AFTER + 600_000);
    expect(wantsPause(rested)).toBe(false);
  });
});

describe("the marks of a long round", () => {
  it("are cut so that the current one stays in sight", () => {
    const marks = Array.from({ length: 18 }, (_, n) =>
      n < 12 ? "quick" : n === 12 ? "current" : "to-come",
    );
    const fitting = marksThatFit(marks, 9);
    expect(fitting).toHaveLength(9);
    expect(fitting).toContain("current");
  });
});
