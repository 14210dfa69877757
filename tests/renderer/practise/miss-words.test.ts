import { describe, expect, it } from "vitest";
import { judge } from "../../../core/answer/judge";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { applyTurns } from "../../../core/cube/held-cube";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { randomSource } from "../../../core/random-source";
import { missWords } from "../../../renderer/state/practise/miss-words";
import { nowInWords } from "../../../renderer/state/practise/now-words";
import { turnsOf } from "../../core/notation/turns-of";
import { position, wordsFor } from "./explained";

function nowAfter(asked: Position, text: string) {
  const after = applyTurns(startOf(asked), turnsOf(text));
  const verdict = judge(asked, after);
  if (verdict.right) throw new Error(`${text} is no miss`);
  return nowInWords(
    { position: asked, turns: turnsOf(text), after, verdict },
    USUAL_SCHEME,
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
    const after = applyTurns(startOf(asked), turnsOf("F"));
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
      const after = applyTurns(startOf(asked), turnsOf(text));
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
