/** Answers and the words that explain them, for the tests of what is said of one. */
import type { Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { diagnose } from "../../../core/answer/diagnose";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { randomSource } from "../../../core/random-source";
import { diagnosisWords } from "../../../renderer/state/practise/diagnosis-words";
import { turnsOf } from "../../core/notation/turns-of";

/** A random position of a first-layer case, the first layer on top, its home the reference's. */
export function position(id: "C1" | "C2" | "C3" | "C7" | "E1") {
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

/** What explains an answer to a position; `undefined` where no rule holds. */
export function wordsFor(
  asked: Position,
  text: string,
  taught = turnsForPosition(asked),
  withNotation = false,
) {
  const played = turnsOf(text);
  const { explanation } = diagnose(asked, played, taught);
  const said = {
    position: asked,
    turns: played,
    scheme: USUAL_SCHEME,
    withNotation,
  };
  return explanation && diagnosisWords(said, explanation);
}
