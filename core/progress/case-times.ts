/** "Which cases are slow?" as data. */
import type { AnswerWay } from "../memory/review";
import {
  type AskedCase,
  isTimed,
  type ProgressAnswer,
  usualWay,
} from "./answer-log";
import { median } from "./median";

/** How many of the last answers tell how fast a case goes. */
export const LAST_TIMED = 5;

/** How long a case takes of late. Units: milliseconds, but for the target. */
export interface CaseTimes extends AskedCase {
  readonly answerWay: AnswerWay;
  /** How many answers this is taken from, at most `LAST_TIMED`. */
  readonly answers: number;
  /** The middle one of the last answers by its whole time, with its own parts: they add up. */
  readonly total: number;
  readonly thinking?: number;
  readonly turning?: number;
  /** The median thinking time of the same answers; absent where none has it. */
  readonly usualThinking?: number;
  /** How many times as long its turns take as equally many turns of the learner's other cases; absent where too few were seen. */
  readonly turnsBesideOthers?: number;
  /** What the newest answer was to take. Units: seconds. */
  readonly target: number;
}

/**
 * How long a case takes of late, in the way it is usually answered; undefined
 * before the first answer whose time counts.
 *
 * Shape: `answers` are those to one case, oldest first.
 */
export function caseTimes(
  answers: readonly ProgressAnswer[],
): CaseTimes | undefined {
  const timed = answers.filter(isTimed);
  const answerWay = usualWay(timed);
  const last = timed
    .filter((answer) => answer.answerWay === answerWay)
    .slice(-LAST_TIMED);
  const newest = last.at(-1);
  const sorted = last.toSorted((a, b) => a.total - b.total);
  const middle = sorted[Math.floor((sorted.length - 1) / 2)];
  if (newest === undefined || middle === undefined) return undefined;
  const { total, thinking, turning } = middle;
  const usualThinking = median(last.flatMap((answer) => answer.thinking ?? []));
  return {
    case: newest.case,
    hold: newest.hold,
    answerWay: newest.answerWay,
    answers: last.length,
    total,
    ...(thinking === undefined ? {} : { thinking }),
    ...(turning === undefined ? {} : { turning }),
    ...(usualThinking === undefined ? {} : { usualThinking }),
    target: newest.target,
  };
}

/** How many times its target a case takes: over 1 is slow. */
export function shareOfTarget({
  total,
  target,
}: Pick<CaseTimes, "total" | "target">): number {
  return total / (target * 1000);
}

/** Cases by how far they are from their targets, the slowest first. */
export function slowestFirst(
  times: readonly CaseTimes[],
): readonly CaseTimes[] {
  return times.toSorted((a, b) => shareOfTarget(b) - shareOfTarget(a));
}
