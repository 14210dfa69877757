/**
 * What went wrong in an answer: where it left every known way, and the one
 * explanation of it.
 *
 * The rules are tried one after the other, and the first that holds is given.
 * Their order says which of several explanations of the same turns is the
 * better one: a guess that blames the wrong confusion teaches it, so what
 * claims less about what the learner saw comes first.
 *
 * 1. The right turns cut short near their end, or not lined up: nothing was
 *    seen wrongly.
 * 2. Another piece, or another home: the cube itself shows it.
 * 3. One turn of a known way wrong in its layer, missing or too many: a slip
 *    of the hand claims nothing about the eye. Another layer turned than the
 *    way's waits until 5: there a whole way, turn for turn, is the better
 *    evidence.
 * 4. A whole way of something else: the twin, another side, the inverse,
 *    another case. Nearest first: a mirror is mistaken more often than a case
 *    that looks like nothing in common.
 * 5. A known way hardly begun, one turn of it made with another layer, or
 *    hardly begun with the last turn wrong: that is two things at once.
 * 6. No known way fits. Then the same again by what the answer does to the
 *    cube, in the same order, at the end one turn that would have made it
 *    right, and what was lost.
 */
import { waysOf } from "../cases/case-table";
import type { Position } from "../cases/position";
import type { Turn } from "../cube/turns";
import { type Departure, departure } from "./departure";
import {
  linedUpWrongly,
  stoppedAfterSlip,
  stoppedEarly,
  stoppedNearTheEnd,
} from "./explain-beginning";
import {
  anotherHomeByEffect,
  inverseByEffect,
  oneTurnByEffect,
  otherCaseByEffect,
  otherSideByEffect,
  othersLost,
  twinByEffect,
  wrongPieceByEffect,
} from "./explain-effect";
import { oneTurnOfWay } from "./explain-one-turn";
import { wholeCubeTurnOfWay } from "./explain-whole-cube-turn";
import {
  anotherHomeByWay,
  inverseByWay,
  otherCaseByWay,
  otherCaseLinedUpWrongly,
  otherSideByWay,
  twinByWay,
  wrongPieceByWay,
} from "./explain-whole-way";
import type { Explanation } from "./explanation";
import { GivenLine } from "./given-line";
import type { WaySource } from "./known-ways";

/** What is known of an answer. Both absent: it is right. */
export interface Diagnosis {
  readonly leftWay?: Departure;
  readonly explanation?: Explanation;
}

type Rule = (given: GivenLine) => Explanation | undefined;

const RULES: readonly Rule[] = [
  stoppedNearTheEnd,
  linedUpWrongly,
  wrongPieceByWay,
  anotherHomeByWay,
  (given) => oneTurnOfWay(given, ["reversed", "amount", "missing", "extra"]),
  twinByWay,
  otherSideByWay,
  inverseByWay,
  otherCaseByWay,
  stoppedEarly,
  (given) => oneTurnOfWay(given, ["another-layer"]),
  stoppedAfterSlip,
  wholeCubeTurnOfWay,
  wrongPieceByEffect,
  anotherHomeByEffect,
  twinByEffect,
  otherSideByEffect,
  inverseByEffect,
  otherCaseByEffect,
  otherCaseLinedUpWrongly,
  oneTurnByEffect,
  othersLost,
];

/**
 * Explains an answer that is not right.
 *
 * Shape: `turns` are those that stood at the end, as the learner made them
 *        from `startOf(position)`; `way` is the one taught for the position;
 *        `source` tells the ways of every case.
 */
export function diagnose(
  position: Position,
  turns: readonly Turn[],
  way: readonly Turn[],
  source: WaySource = waysOf,
): Diagnosis {
  const given = new GivenLine(position, turns, way, source);
  if (given.isRight(given.after)) return {};
  const explanation = explained(given);
  const followed = isOfSomethingElse(explanation)
    ? given.rightLines.slice(0, 1)
    : given.rightLines;
  const leftWay = departure(given, followed);
  return { ...(leftWay === undefined ? {} : { leftWay }), explanation };
}

/**
 * Whether the answer followed a way of something else from its first turn:
 * what that shares with the ways of the case is chance, and where it left them
 * is told from the taught one.
 */
function isOfSomethingElse({ kind }: Explanation): boolean {
  return (
    kind === "twin" ||
    kind === "other-side" ||
    kind === "inverse" ||
    kind === "other-case" ||
    kind === "wrong-piece" ||
    kind === "another-home"
  );
}

function explained(given: GivenLine): Explanation {
  for (const rule of RULES) {
    const explanation = rule(given);
    if (explanation !== undefined) return explanation;
  }
  return { kind: "unexplained" };
}
