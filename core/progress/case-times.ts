/** "Which cases are slow?" as data. */
import type { AnswerWay } from "../memory/review";
import {
  type AskedCase,
  isTimed,
  type ProgressAnswer,
  usualWay,
} from "./answer-log";
import { median } from "./median";
import type { CaseTurns } from "./turning-speed";

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
  /** Its turns beside those of the learner's other cases; absent where too few were seen. */
  readonly turns?: CaseTurns;
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

/**
 * From here on a case's turns are called slow beside the others. Times that
 * vary by a fifth (the spread of their logarithm) reach it by chance in one
 * case of 50 with five answers, in one of 800 with ten (20,000 draws each).
 */
const FUMBLED = 1.25;

/**
 * What a case's turns tell: they are fumbled, slower than equally many of the
 * learner's other cases; or they are about as fast, though turning takes the
 * case over its target. Undefined where they tell nothing: too few were seen,
 * the case is within its target, or most of its time is thinking.
 */
export function turningTells(
  times: CaseTimes,
): "fumbled" | "as-others" | undefined {
  const { turns, thinking = 0, turning = 0 } = times;
  if (turns === undefined) return undefined;
  if (turns.besideOthers >= FUMBLED) return "fumbled";
  return shareOfTarget(times) > 1 && turning > thinking
    ? "as-others"
    : undefined;
}

/** Cases by how far they are from their targets, the slowest first. */
export function slowestFirst(
  times: readonly CaseTimes[],
): readonly CaseTimes[] {
  return times.toSorted((a, b) => shareOfTarget(b) - shareOfTarget(a));
}
