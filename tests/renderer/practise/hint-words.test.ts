import { describe, expect, it } from "vitest";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { hintWords } from "../../../renderer/state/practise/hint-words";
import { position } from "./explained";

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
