/**
 * How fast a learner turns: the track beside memory. Knowing a case and
 * turning it fast are learnt at different speeds, and a way of ten turns takes
 * longer than one of three however well it goes, so a turning time is split:
 * speed × (a + b·turns), with a and b of the learner and the way of answering,
 * and a speed of each case.
 *
 * The line is the median of slopes between pairs, which a quarter of idle or
 * fumbled times cannot move; turning times are never far below the usual, only
 * above.
 *
 * Source: Theil 1950, Sen 1968 (the line).
 */
import type { CaseId } from "../cases/case-ids";
import { RecentValues } from "./baseline";
import { gradeOf } from "./grade";
import type { AnswerWay, Review } from "./review";

/** What of a review the track reads. */
export type TurnedReview = Pick<
  Review,
  | "learner"
  | "case"
  | "answerWay"
  | "asking"
  | "interrupted"
  | "verdict"
  | "corrections"
  | "hints"
  | "thinking"
  | "turning"
  | "turns"
>;

/** The turning of one way of answering. Units: milliseconds. */
export interface TurningLine {
  readonly start: number;
  readonly eachTurn: number;
}

/** How many of the last answers the line is laid through. */
const LINE_OVER = 60;

/** How many of the last of a case its speed is the median of. */
const SPEED_OVER = 10;

/** Fewer than so many say nothing of a line. */
const LEAST_FOR_LINE = 5;

interface Turned {
  readonly case: CaseId;
  /** Turns from the first that commits to the last. */
  readonly turns: number;
  /** Units: milliseconds. */
  readonly time: number;
}

/** The turning of a right answer without correction or interruption; undefined where it was not seen. */
function turnedOf(review: TurnedReview): Turned | undefined {
  const { thinking, turning } = review;
  if (thinking === undefined || turning === undefined || turning <= 0)
    return undefined;
  if (review.interrupted || review.asking === "shown") return undefined;
  if (gradeOf(review) !== "clean") return undefined;
  const turns = review.turns.filter(({ at }) => at >= thinking).length;
  return turns < 2 ? undefined : { case: review.case, turns, time: turning };
}

function medianOf(values: readonly number[]): number {
  const recent = new RecentValues(values.length);
  for (const value of values) recent.add(value);
  return recent.median();
}

function lineThrough(times: readonly Turned[]): TurningLine | undefined {
  if (times.length < LEAST_FOR_LINE) return undefined;
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

/** The turning of one learner, from their answers. Repeats in a round count: they are turned like any other. */
export class TurningSpeed {
  readonly #lines = new Map<AnswerWay, TurningLine>();
  readonly #speeds = new Map<AnswerWay, Map<CaseId, number>>();

  /** Shape: `log` is one learner's, in the order of replay. */
  constructor(log: readonly TurnedReview[]) {
    const byWay = new Map<AnswerWay, Turned[]>();
    for (const review of log) {
      const turned = turnedOf(review);
      if (turned === undefined) continue;
      const own = byWay.get(review.answerWay);
      if (own === undefined) byWay.set(review.answerWay, [turned]);
      else own.push(turned);
    }
    for (const [way, times] of byWay) {
      const line = lineThrough(times.slice(-LINE_OVER));
      if (line === undefined) continue;
      this.#lines.set(way, line);
      this.#speeds.set(way, speedsBeside(line, times));
    }
  }

  /** The learner's line in a way of answering; undefined with fewer than five answers. */
  line(way: AnswerWay): TurningLine | undefined {
    return this.#lines.get(way);
  }

  /** How long the case's turns take against the line: 1 as the others, above it slower. Undefined where it was not turned. */
  speedOf(id: CaseId, way: AnswerWay): number | undefined {
    return this.#speeds.get(way)?.get(id);
  }

  /** How long so many turns of a case should take, as the line says where the case was not turned yet. Units: milliseconds. */
  expected(id: CaseId, way: AnswerWay, turns: number): number | undefined {
    const line = this.#lines.get(way);
    if (line === undefined) return undefined;
    const { start, eachTurn } = line;
    return (this.speedOf(id, way) ?? 1) * (start + eachTurn * turns);
  }
}

function speedsBeside(
  { start, eachTurn }: TurningLine,
  times: readonly Turned[],
): Map<CaseId, number> {
  const recent = new Map<CaseId, RecentValues>();
  for (const { case: id, turns, time } of times) {
    const own = recent.get(id) ?? new RecentValues(SPEED_OVER);
    own.add(Math.log(time / (start + eachTurn * turns)));
    recent.set(id, own);
  }
  return new Map(
    Array.from(recent, ([id, own]) => [id, Math.exp(own.median())]),
  );
}
