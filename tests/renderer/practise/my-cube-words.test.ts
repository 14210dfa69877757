import { describe, expect, it } from "vitest";
import { STAGES } from "../../../core/cases/stage";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { askWords } from "../../../renderer/state/practise/ask-words";
import { myCubeWords } from "../../../renderer/state/practise/my-cube-words";
import { asked, EDGE, firstOf, PAIR } from "./asked";

describe("the words of my cube", () => {
  it("name the other pairs that are placed", () => {
    const words = (count: number) =>
      myCubeWords(asked(PAIR, {}, count), USUAL_SCHEME);
    expect(words(2)).toMatchObject({
      prompt: "Bring the white, green and red corner and its edge home.",
      placed: "Already placed: the white cross and two other pairs.",
      when: "when it is home",
      done: "the corner and the edge are home, and nothing else lost",
      lost: "I lost my cross",
    });
    expect(words(0).placed).toBe("Already placed: the white cross.");
  });

  it("name the other edges of the middle that are placed", () => {
    expect(myCubeWords(asked(EDGE, {}, 1), USUAL_SCHEME)).toMatchObject({
      prompt: "Bring the green and red edge home.",
      placed:
        "Already placed: the white layer and one other edge of the middle.",
      done: "the edge is home, and nothing else lost",
      lost: "I lost my first layer",
    });
  });

  it.each(STAGES)("ask what a question of %s asks", (stage) => {
    const position = asked(firstOf(stage));
    expect(myCubeWords(position, USUAL_SCHEME)).toMatchObject(
      askWords(position, USUAL_SCHEME),
    );
  });
});
