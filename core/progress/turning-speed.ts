/**
 * How fast a learner turns: the track beside memory. Knowing a case and
 * turning it fast are learnt at different speeds, and a way of ten turns takes
 * longer than one of three however well it goes, so a turning time is split:
 * speed × (a + b·turns), with a and b of the learner and the way of answering,
 * and a speed of each case. A speed tells a fumbled way from a long one.
 *
 * a and b are those of the learner's other cases: among a few cases a fumbled
 * one would move the line, and be measured against itself.
 *
 * The line is the median of slopes between pairs, which a quarter of idle or
 * fumbled times cannot move; turning times are never far below the usual, only
 * above.
 *
 * Source: Theil 1950, Sen 1968 (the line).
 */
import type { CaseId } from "../cases/case-ids";
import type { AnswerWay } from "../memory/review";
import { type AnswerList, isTimed, type LoggedAnswer } from "./answer-log";
import { median } from "./median";

/** The turning of one way of answering. Units: milliseconds. */
export interface TurningLine {
  readonly start: number;
  readonly eachTurn: number;
}

/** So many of the newest answers are looked back at: about two months of daily practice. */
const LOOKED_AT = 2000;

/** How many of the last answers to other cases the line is laid through. */
const LINE_OVER = 60;

/** How many of the last answers to a case its speed is the median of. */
const SPEED_OVER = 10;

/** Fewer than so many answers to other cases say nothing of a line. */
const LEAST_FOR_LINE = 10;

/** Fewer than so many other cases are no measure either: they may be all of one length. */
const LEAST_CASES = 3;

/** Fewer than so many of a case say nothing of its speed: one may be fumbled by chance, and so may two. */
const LEAST_FOR_SPEED = 5;

interface Turned {
  readonly case: CaseId;
  readonly turns: number;
  /** Units: milliseconds. */
  readonly time: number;
}

/** The turning of a right answer on one's own without correction or interruption; undefined where it was not seen. */
function turnedOf(answer: LoggedAnswer): Turned | undefined {
  const { turning, committedTurns: turns } = answer;
  if (turning === undefined || turning <= 0 || turns < 2) return undefined;
  if (!isTimed(answer) || answer.corrections > 0) return undefined;
  return { case: answer.case, turns, time: turning };
}

function medianOf(values: readonly number[]): number {
  return median(values) ?? 0;
}

function lineThrough(times: readonly Turned[]): TurningLine {
  const slopes = times.flatMap((a, i) =>
    times
      .slice(i + 1)
      .flatMap((b) =>
        a.turns === b.turns ? [] : [(a.time - b.time) / (a.turns - b.turns)],
      ),
  );
  const perTurn = medianOf(times.map(({ time, turns }) => time / turns));
  // All ways equally long: nothing tells a start from a turn.
  const slope = slopes.length === 0 ? perTurn : medianOf(slopes);
  const eachTurn = Math.min(perTurn, Math.max(0, slope));
  const start = medianOf(
    times.map(({ time, turns }) => time - eachTurn * turns),
  );
  return { start: Math.max(0, start), eachTurn };
}

/** The turns of a case beside those of the learner's other cases. */
export interface CaseTurns {
  /** How many it usually takes, to the nearest whole. */
  readonly usual: number;
  /** How many times as long they take as equally many of the others: 1 as they do, above it slower. */
  readonly besideOthers: number;
}

/** The turning of one learner, from their answers. Repeats in a round count: they are turned like any other. */
export class TurningSpeed {
  /** Of the answers that are looked back at, the newest first. */
  readonly #turned = new Map<AnswerWay, Turned[]>();

  /** Shape: `log` is one learner's, in the order of replay. */
  constructor(log: AnswerList) {
    const from = Math.max(0, log.length - LOOKED_AT);
    for (let place = log.length - 1; place >= from; place--) {
      const answer = log.at(place);
      const turned = answer === undefined ? undefined : turnedOf(answer);
      if (answer === undefined || turned === undefined) continue;
      const own = this.#turned.get(answer.answerWay);
      if (own === undefined) this.#turned.set(answer.answerWay, [turned]);
      else own.push(turned);
    }
  }

  /** How the learner turns all cases but one in a way of answering; undefined with fewer than ten answers to them, or fewer than three of them. */
  lineBeside(id: CaseId, way: AnswerWay): TurningLine | undefined {
    const others = (this.#turned.get(way) ?? [])
      .filter((turned) => turned.case !== id)
      .slice(0, LINE_OVER);
    const cases = new Set(others.map((turned) => turned.case));
    const isEnough =
      others.length >= LEAST_FOR_LINE && cases.size >= LEAST_CASES;
    return isEnough ? lineThrough(others) : undefined;
  }

  /**
   * A case's turns beside those of the learner's other cases. Undefined with
   * fewer than five answers to the case, or too few to others.
   *
   * Shape: `answers` are those to one case, oldest first.
   */
  turnsOf(
    answers: readonly LoggedAnswer[],
    way: AnswerWay,
  ): CaseTurns | undefined {
    const own: Turned[] = [];
    for (let i = answers.length - 1; i >= 0 && own.length < SPEED_OVER; i--) {
      const answer = answers[i];
      if (answer?.answerWay !== way) continue;
      const turned = turnedOf(answer);
      if (turned !== undefined) own.push(turned);
    }
    const [any] = own;
    if (any === undefined || own.length < LEAST_FOR_SPEED) return undefined;
    const line = this.lineBeside(any.case, way);
    if (line === undefined) return undefined;
    const { start, eachTurn } = line;
    return {
      usual: Math.round(medianOf(own.map(({ turns }) => turns))),
      besideOthers: medianOf(
        own.map(({ turns, time }) => time / (start + eachTurn * turns)),
      ),
    };
  }
}
