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

function position(id: "C1" | "C2" | "C3" | "C7" | "E1") {
  return randomPosition(
    randomSource(1),
    id,
    // C7's corner stands in home 1.
    {
      home: 0,
      placed: id === "C7" ? [2, 3] : [1, 2, 3],
      turnedAway: 0,
      seenFrom: 0,
    },
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

function wordsFor(
  asked: Position,
  text: string,
  taught = turnsForPosition(asked),
  withNotation = false,
) {
  const played = turns(text);
  const { explanation } = diagnose(asked, played, taught);
  const said = {
    position: asked,
    turns: played,
    scheme: USUAL_SCHEME,
    withNotation,
  };
  return explanation && diagnosisWords(said, explanation);
}

describe("what explains a missed answer", () => {
  // C3's way, source the design's first-layer.md: R' D2 R D R' D' R.
  it.each([
    ["R' D2 R D R' D'", /^Right so far, but one turn is missing at the end\.$/],
    ["R' D2 R D R' D R", /^Your sixth turn went the other way round\.$/],
    ["R' D2 R D2 R' D' R", /^Your fourth turn went too far\.$/],
    ["R' D R D R' D' R", /^Your second turn did not go far enough\.$/],
    ["R' D2 D R' D' R", /^One turn is missing after your second\.$/],
    ["D2 R D R' D' R", /^One turn is missing at the beginning\.$/],
    ["R' D2 R D L R' D' R", /^Your fifth turn is one too many\.$/],
    ["R' D2 R D R' F' R", /^Your sixth turn should have been another one\.$/],
    ["R' D2 R D2", /^Your fourth turn went too far\.$/],
    ["R' D2 R'", /^Your third turn went the other way round\.$/],
  ])("is said of %s, played for C3", (played, sentence) => {
    expect(wordsFor(position("C3"), played)?.sentence).toMatch(sentence);
  });

  it("says what was wanted, or still is, as the cube is then held", () => {
    const asked = position("C3");
    expect(wordsFor(asked, "R' D2 R D R' D'")?.more).toBe(
      "Still to come: Turn the right side up.",
    );
    expect(wordsFor(asked, "R' D2 R D R' D'", undefined, true)?.more).toBe(
      "Still to come: R. Turn the right side up.",
    );
    expect(wordsFor(asked, "R' D2 R D2")?.more).toMatch(
      /^After the right one, 3 turns are still missing\. Still to come: Turn the right side down/,
    );
    expect(wordsFor(asked, "R' D2 R'")?.more).toBe(
      "After the right one, 4 turns are still missing.",
    );
    expect(wordsFor(asked, "y F' D2 F D F' D'")?.more).toContain(
      "Turn the front so that its top goes right.",
    );
    expect(wordsFor(asked, "R' D2 D R' D' R")?.more).toBe(
      "Wanted there: Turn the right side up. All else was right.",
    );
    expect(wordsFor(asked, "R' D2 R D R' D R")?.more).toBe(
      "All else was right.",
    );
  });

  it("names homes, pieces and sides by where they are and by the learner's own colours", () => {
    const asked = position("C1");
    expect(wordsFor(asked, "y D D' R' D R")?.sentence).toBe(
      "You answered for another home: top back right.",
    );
    expect(wordsFor(asked, "D' D' R' D R")?.sentence).toBe(
      "The right turns, but it was not lined up.",
    );
    const side = wordsFor(position("C7"), "y L D L' D' R' D R");
    // Green is in front, red on the right: after y the red side is.
    expect(side?.sentence).toBe("You answered as if red faced you.");
    expect(side?.more).toBe("These turns are right with green in front.");
    expect(wordsFor(position("C7"), "R' D' R D L D' L'")?.sentence).toBe(
      "You made the way backwards.",
    );
    const slot = slotPosition();
    expect(wordsFor(slot, "U R U' R'")?.sentence).toMatch(
      /^The edge is home, but the white, .* corner left the place\.$/,
    );
    expect(wordsFor(slot, "U R U' R' U' F' U F")?.sentence).toMatch(
      /^You answered as if it were “Above the .*”\.$/,
    );
  });

  it("is nothing where no rule holds, so that what the cube shows is said", () => {
    expect(wordsFor(position("C1"), "R D2 F2 B L D")).toBeUndefined();
  });
});

function slotPosition(): Position {
  return randomPosition(
    randomSource(1),
    "second-layer-edges:DF-F",
    { home: 0, placed: [1, 2, 3], turnedAway: 0, seenFrom: 0 },
    "down",
  );
}

describe("what is said of a missed answer", () => {
  it("is the confusion with the twin where its whole way was played", () => {
    const asked = position("C2");
    const words = wordsFor(asked, "D' R' D R");
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

  it("tells of the last layer how much is not as asked, and which case it shows now", () => {
    const asked = randomPosition(
      randomSource(1),
      "last-layer-edges-turned:0101",
      { home: 0, placed: [], turnedAway: 0, seenFrom: 0 },
      "down",
    );
    const said = (text: string) => {
      const after = applyTurns(startOf(asked), turns(text));
      const verdict = judge(asked, after);
      if (verdict.right) throw new Error(`${text} is no miss`);
      const words = missWords({
        position: asked,
        verdict,
        after,
        scheme: USUAL_SCHEME,
        hasTurned: true,
        shownTheWay: false,
        reported: false,
      });
      const { piece, rest } = nowAfter(asked, text);
      return { sentence: words.sentence, piece, rest };
    };
    expect(said("U")).toMatchObject({
      sentence: "2 pieces of the last layer are not as asked yet.",
      rest: "",
    });
    expect(said("U").piece).toMatch(/^It is still the same case: “/);
    expect(said("R").rest).toBe("No longer placed: 5 pieces.");
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
