/**
 * What a whole answer should take, by the way of answering.
 *
 * A deck says it for a cube in the hands. Turning the screen's cube takes a
 * beginner about as long; who writes an answer turns nothing, but sees nothing
 * turn either and has to find every letter. The factor is ours, to be replaced
 * by each learner's own baselines.
 */
import type { AnswerWay } from "./review";

const FACTOR: Readonly<Record<AnswerWay, number>> = {
  "on-screen": 1,
  "my-cube": 1,
  "write-it": 1.5,
  // Nothing is turned, but there are up to four choices to look at.
  "which-is-it": 1,
  "find-it": 1,
  "where-is-home": 1,
  // Written on paper, but done with a cube in the hands.
  "on-paper": 1,
};

/** The target of an answer given in a certain way. Units: seconds, for the whole answer; `target` is the deck's. */
export function answerTarget(target: number, answerWay: AnswerWay): number {
  return target * FACTOR[answerWay];
}
