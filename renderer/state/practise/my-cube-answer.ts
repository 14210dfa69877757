/** What an attempt on the learner's own cube comes to, from what they report. */
import { type AnswerEvent, measureAnswer } from "../../../core/answer/measure";
import { targetsOf } from "../../../core/cases/constraint";
import { knownAfterAnswer } from "../../../core/cases/known-layer";
import { type Position, startOf } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { Hint } from "../../../core/memory/review";
import type { GivenAnswer } from "./given-answer";
import type { Report } from "./my-cube-stage";

/**
 * The answer on a learner's own cube: the app saw none of its turns. Reported
 * is what the learner said of the cube; that they asked to be shown the way, or
 * left an answer, the app saw itself.
 */
export function myCubeAnswer(
  position: Position,
  report: Report,
  events: readonly AnswerEvent[],
  hints: readonly Hint[],
  reported: boolean,
): GivenAnswer {
  const measured = measureAnswer(events, { hold: startOf(position).hold });
  return {
    verdict:
      report !== "not-done"
        ? { right: true }
        : {
            right: false,
            pieceState: "elsewhere",
            lost: { corners: [], edges: [] },
            missing: targetsOf(position),
          },
    measured: {
      ...measured,
      corrections: measured.corrections + (report === "corrected" ? 1 : 0),
    },
    hints,
    turns: [],
    reported,
    shownTheWay: hints.includes("whole-way"),
  };
}

/**
 * What is known of the cube after a report: what was asked for is done, and
 * how the rest was turned nobody saw.
 */
export function cubeAfterReport(
  position: Position,
  report: Report,
): PartlyKnownCubies | undefined {
  return report === "not-done" ? undefined : knownAfterAnswer(position);
}
